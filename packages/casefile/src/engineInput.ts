/**
 * From the case file and its traces to what the engine takes: what was not recorded gets a stated default where a
 * default is harmless, and is asked for where it is not. Nothing of this is written back to the file.
 */
import type {
  CaseInput,
  CrownInput,
  DrillingInput,
  FlareInput,
  Notice,
  SectionInput,
  SiteInput,
  TargetInput,
  Trace,
} from '@standfast/engine';
import { throwFaults } from './caseFaults.ts';
import { wrapAzimuth } from './check/azimuth.ts';
import { addFault, addNotice, type Findings, noFindings } from './check/findings.ts';
import { engineFelled, engineOutline } from './check/outline.ts';
import type {
  CaseDrilling,
  CaseFile,
  CaseFlare,
  CaseSection,
  CaseSite,
  CaseTarget,
} from './schema/schema.ts';

/** Values taken where nothing was recorded; each use is told to the reader. */
export const DEFAULTS = {
  /** Bark, mm: a middle value for grown broadleaves (judgement). */
  barkMm: 15,
  /** Width and height of a flare as a share of the stem's diameter (judgement). */
  flareShareOfStem: 0.3,
  crownShape: 'ellipse',
  inLeaf: true,
} as const;

/**
 * The engine's input from a case file.
 *
 * @param traces the traces read, by the path each drilling names; a drilling without one is left out with a caution.
 * @throws InputFault or CaseFaults naming every field that an assessment cannot do without.
 */
export function engineInput(
  caseFile: CaseFile,
  traces: ReadonlyMap<string, Trace>,
): { input: CaseInput; notices: Notice[] } {
  const findings = noFindings();
  const tree = treeInput(findings, caseFile);
  const site = siteInput(findings, caseFile.site);
  if (caseFile.sections.length === 0) {
    addFault(findings, 'sections', 'has no section: record at least one, with its height and outline');
  }
  const sections = caseFile.sections.map((section) => sectionInput(findings, section, traces));
  const flares = caseFile.flares.map((flare) => flareInput(findings, flare, tree.stemDiameterMm, traces));
  if (caseFile.sections.length > 0 && sections.every((section) => section.drillings.length === 0)) {
    addNotice(
      findings,
      'serious',
      'sections',
      'no section has a drilling with a trace: its soundness rests on general belief alone.',
    );
  }
  throwFaults(findings.faults);
  const input: CaseInput = {
    tree,
    site,
    sections,
    flares,
    signs: caseFile.signs.map(({ kind, where, note, photo, azimuthDeg, heightM }) => ({
      kind,
      where,
      note,
      photo,
      azimuthDeg: azimuthDeg === undefined ? undefined : wrapAzimuth(azimuthDeg),
      heightM,
    })),
    targets: caseFile.targets.map(targetInput),
    staticTests: caseFile.staticTests?.map(({ directionDeg, momentNm, tiltDeg }) => ({
      directionDeg: wrapAzimuth(directionDeg),
      momentNm,
      tiltDeg,
    })),
    rootCuts: caseFile.rootCuts?.map(({ azimuthDeg, distanceM, widthDeg, depthM, year }) => ({
      azimuthDeg: wrapAzimuth(azimuthDeg),
      distanceM,
      widthDeg,
      depthM,
      year,
    })),
    rootSpace: caseFile.rootSpace?.map(({ azimuthDeg, distanceM, widthDeg, what }) => ({
      azimuthDeg: wrapAzimuth(azimuthDeg),
      distanceM,
      widthDeg,
      what,
    })),
    timeFrameYears: caseFile.timeFrameYears,
    decision: caseFile.decision,
    advice: caseFile.advice,
    ...(caseFile.visitedOn === undefined ? {} : { visitedOn: caseFile.visitedOn }),
  };
  return { input, notices: findings.notices };
}

/** A target; an occupancy not stated, or in words not known, is told of by the assessment. */
function targetInput(target: CaseTarget): TargetInput {
  const { what, occupancy, distanceM, directionDeg, protection, consequence, partOfTree } = target;
  return {
    what,
    occupancy,
    distanceM,
    directionDeg: directionDeg === undefined ? undefined : wrapAzimuth(directionDeg),
    protection,
    consequence,
    partOfTree,
  };
}

/** A default that was taken, told to the reader. */
function tell(findings: Findings, where: string, text: string): void {
  addNotice(findings, 'note', where, text);
}

/** The value, or 0 with a fault that says what to do when it is missing. */
function needed(findings: Findings, value: number | undefined, path: string, remedy: string): number {
  if (value === undefined) addFault(findings, path, `is missing: ${remedy}`);
  return value ?? 0;
}

function treeInput(findings: Findings, { tree }: CaseFile): CaseInput['tree'] {
  if (!tree.species?.trim()) {
    addNotice(
      findings,
      'caution',
      'tree.species',
      'was not recorded: wood values are taken wide, for any species.',
    );
  }
  if (tree.leanDeg === undefined)
    tell(findings, 'tree.leanDeg', 'was not recorded: the stem is taken as upright.');
  return {
    label: tree.label ?? '',
    species: tree.species?.trim() ?? '',
    stemDiameterMm: needed(
      findings,
      tree.stemDiameterMm,
      'tree.stemDiameterMm',
      'measure the stem over bark at breast height, in millimetres',
    ),
    heightM: needed(findings, tree.heightM, 'tree.heightM', "measure the tree's height in metres"),
    leanDeg: tree.leanDeg ?? 0,
    leanTowardDeg: wrapAzimuth(tree.leanTowardDeg ?? 0),
    crown: crownInput(findings, tree.crown ?? {}),
  };
}

function crownInput(findings: Findings, crown: NonNullable<CaseFile['tree']['crown']>): CrownInput {
  if (crown.shape === undefined) {
    tell(findings, 'tree.crown.shape', `was not recorded: taken as ${DEFAULTS.crownShape}.`);
  }
  if (crown.inLeaf === undefined) tell(findings, 'tree.crown.inLeaf', 'was not recorded: taken as in leaf.');
  return {
    baseHeightM: needed(
      findings,
      crown.baseHeightM,
      'tree.crown.baseHeightM',
      'measure how high above ground the crown begins, in metres',
    ),
    widthM: needed(
      findings,
      crown.widthM,
      'tree.crown.widthM',
      "measure the crown's greatest width in metres",
    ),
    shape: crown.shape ?? DEFAULTS.crownShape,
    inLeaf: crown.inLeaf ?? DEFAULTS.inLeaf,
  };
}

function siteInput(findings: Findings, site: CaseSite | undefined): SiteInput {
  if (site?.windCode === 'EN 1991-1-4' || site === undefined) {
    if (!site) {
      addFault(
        findings,
        'site',
        'is missing: write windCode, basicWindSpeedMs, and terrain (EN 1991-1-4) or exposure (ASCE 7-22)',
      );
    } else if (site.terrain === undefined) {
      addFault(findings, 'site.terrain', 'is missing: write "0", "I", "II", "III" or "IV" of EN 1991-1-4');
    }
    return {
      windCode: 'EN 1991-1-4',
      basicWindSpeedMs: site
        ? needed(
            findings,
            site.basicWindSpeedMs,
            'site.basicWindSpeedMs',
            'write the basic wind velocity of the national annex, a 10-minute mean in m/s',
          )
        : 0,
      terrain: site?.terrain ?? 'II',
      ...groundOf(site),
    };
  }
  if (site.exposure === undefined) {
    addFault(findings, 'site.exposure', 'is missing: write "B", "C" or "D" of ASCE 7');
  }
  return {
    windCode: site.windCode,
    basicWindSpeedMs: needed(
      findings,
      site.basicWindSpeedMs,
      'site.basicWindSpeedMs',
      'write the 3-second gust at 10 m over exposure C, in m/s',
    ),
    exposure: site.exposure ?? 'C',
    ...groundOf(site),
  };
}

/** Soil and return period, where they were recorded. */
function groundOf(site: CaseSite | undefined): Pick<SiteInput, 'soil' | 'basicWindReturnYears'> {
  return {
    ...(site?.soil === undefined ? {} : { soil: site.soil }),
    ...(site?.basicWindReturnYears === undefined ? {} : { basicWindReturnYears: site.basicWindReturnYears }),
  };
}

function sectionInput(
  findings: Findings,
  section: CaseSection,
  traces: ReadonlyMap<string, Trace>,
): SectionInput {
  const place = `sections.${section.id}`;
  if (section.barkMm === undefined) {
    addNotice(
      findings,
      'note',
      `${place}.barkMm`,
      `was not recorded: taken as ${DEFAULTS.barkMm} mm, a middle value.`,
    );
  }
  return {
    id: section.id,
    heightM: section.heightM,
    outline: engineOutline(section.outline),
    barkMm: section.barkMm ?? DEFAULTS.barkMm,
    ...(section.opening === undefined
      ? {}
      : {
          opening: {
            azimuthDeg: wrapAzimuth(section.opening.azimuthDeg),
            widthMm: section.opening.widthMm,
          },
        }),
    ...(section.surface === undefined
      ? {}
      : {
          surface: section.surface.map(({ fromDeg, toDeg, state }) => ({
            fromDeg: wrapAzimuth(fromDeg),
            toDeg: wrapAzimuth(toDeg),
            state,
          })),
        }),
    drillings: drillingInputs(findings, section.drillings, place, traces),
    ...(section.felled ? { felled: engineFelled(section.felled) } : {}),
  };
}

function flareInput(
  findings: Findings,
  flare: CaseFlare,
  stemDiameterMm: number,
  traces: ReadonlyMap<string, Trace>,
): FlareInput {
  const place = `flares.${flare.id}`;
  const taken = Math.round(DEFAULTS.flareShareOfStem * stemDiameterMm);
  for (const side of ['widthMm', 'heightMm'] as const) {
    if (flare[side] === undefined) {
      addNotice(
        findings,
        'caution',
        `${place}.${side}`,
        `was not measured: taken as ${taken} mm, ${100 * DEFAULTS.flareShareOfStem} % of the stem's diameter.`,
      );
    }
  }
  return {
    id: flare.id,
    azimuthDeg: wrapAzimuth(flare.azimuthDeg),
    widthMm: flare.widthMm ?? taken,
    heightMm: flare.heightMm ?? taken,
    drillings: drillingInputs(findings, flare.drillings, place, traces),
  };
}

function drillingInputs(
  findings: Findings,
  drillings: readonly CaseDrilling[],
  place: string,
  traces: ReadonlyMap<string, Trace>,
): DrillingInput[] {
  return drillings.flatMap(({ id, azimuthDeg, offRadialDeg, downDeg, trace: path }) => {
    const trace = path === undefined ? undefined : traces.get(path);
    if (!trace) {
      addNotice(
        findings,
        'caution',
        `${place}.drillings.${id}`,
        path === undefined
          ? 'has no trace yet: it is left out.'
          : `its trace ${path} was not read: it is left out.`,
      );
      return [];
    }
    return [
      {
        id,
        azimuthDeg: wrapAzimuth(azimuthDeg),
        offRadialDeg: offRadialDeg ?? 0,
        downDeg: downDeg ?? 0,
        trace,
      },
    ];
  });
}
