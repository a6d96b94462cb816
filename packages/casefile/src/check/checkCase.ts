/**
 * Whether what was recorded makes sense: numbers that can be, names used once, a crown below the tree's top, needles
 * that enter the wood. Looks at the case file alone; the traces are looked at when they are read.
 */
import { checkFelled, checkOutline, InputFault } from '@standfast/engine';
import {
  type CaseDrilling,
  type CaseFile,
  type CaseFlare,
  type CaseSection,
  OCCUPANCIES,
} from '../schema/schema.ts';
import { checkAzimuth, wrapAzimuth } from './azimuth.ts';
import { checkDecision } from './decision.ts';
import { addFault, addNotice, type Findings, noFindings } from './findings.ts';
import { engineFelled, engineOutline, meanDiameterMm } from './outline.ts';
import { checkRange, RANGES } from './ranges.ts';
import { checkReport } from './report.ts';
import { checkRoots } from './roots.ts';

/** A section's mean diameter over the stem's at breast height, where it is likely a slip when outside. */
const USUAL_TAPER: readonly [number, number] = [0.5, 3];

/** Needle headings steeper than this off the radial or the horizontal are questioned, degrees. */
const UNUSUAL_ANGLE_DEG = 60;

/** The felled outline's mean diameter over the standing one's, where the two are hardly the same section outside. */
const SAME_SECTION: readonly [number, number] = [0.8, 1.25];

/** Radii further apart than this leave the outline between them to guessing, degrees. */
const WIDEST_GAP_DEG = 75;

/** Every fault that stops an assessment and every notice, in the order of the file. */
export function checkCase(caseFile: CaseFile): Findings {
  const findings = noFindings();
  checkVisit(findings, caseFile);
  checkTree(findings, caseFile);
  checkSite(findings, caseFile);
  checkIds(findings, caseFile.sections, 'sections');
  checkIds(findings, caseFile.flares, 'flares');
  caseFile.sections.forEach((section, i) => {
    checkSection(findings, caseFile, section, `sections[${i}]`);
  });
  caseFile.flares.forEach((flare, i) => {
    checkFlare(findings, flare, `flares[${i}]`);
  });
  checkSharedTraces(findings, caseFile);
  checkSigns(findings, caseFile);
  checkTargets(findings, caseFile);
  checkRoots(findings, caseFile);
  checkDecision(findings, caseFile);
  checkReport(findings, caseFile);
  return findings;
}

function checkVisit(findings: Findings, { visitedOn, place }: CaseFile): void {
  const year = visitedOn === undefined ? undefined : Number(visitedOn.slice(0, 4));
  if (year !== undefined && (year < 1980 || year > 2100)) {
    addNotice(findings, 'caution', 'visitedOn', `the visit is dated ${visitedOn}: is the year right?`);
  }
  if (place?.latitude !== undefined && Math.abs(place.latitude) > 90) {
    addFault(findings, 'place.latitude', `is ${place.latitude}: a latitude runs from -90 to 90 degrees`);
  }
  if (place?.longitude !== undefined && Math.abs(place.longitude) > 180) {
    addFault(findings, 'place.longitude', `is ${place.longitude}: a longitude runs from -180 to 180 degrees`);
  }
}

function checkTree(findings: Findings, { tree }: CaseFile): void {
  checkRange(
    findings,
    tree.stemDiameterMm,
    RANGES.stemDiameterMm,
    'tree.stemDiameterMm',
    'tree.stemDiameterMm',
  );
  checkRange(findings, tree.heightM, RANGES.heightM, 'tree.heightM', 'tree.heightM');
  checkRange(findings, tree.leanDeg, RANGES.leanDeg, 'tree.leanDeg', 'tree.leanDeg');
  checkRange(findings, tree.crown?.widthM, RANGES.crownWidthM, 'tree.crown.widthM', 'tree.crown.widthM');
  if (tree.leanTowardDeg !== undefined) {
    checkAzimuth(findings, tree.leanTowardDeg, 'tree.leanTowardDeg', 'tree.leanTowardDeg');
  } else if (tree.leanDeg !== undefined && tree.leanDeg > 0) {
    addFault(
      findings,
      'tree.leanTowardDeg',
      `is missing while leanDeg is ${tree.leanDeg}: give the direction the stem leans towards, degrees clockwise from north`,
    );
  }
  const { heightM, crown } = tree;
  if (heightM === undefined || crown === undefined) return;
  if (crown.baseHeightM !== undefined && crown.baseHeightM >= heightM) {
    addFault(
      findings,
      'tree.crown.baseHeightM',
      `is ${crown.baseHeightM} m, but the tree is ${heightM} m high: the crown must begin below the tree's top`,
    );
  }
  if (crown.widthM !== undefined && crown.widthM > 2 * heightM) {
    addNotice(
      findings,
      'caution',
      'tree.crown.widthM',
      `the crown is ${crown.widthM} m wide on a tree ${heightM} m high: is that right?`,
    );
  }
  if (tree.stemDiameterMm !== undefined) {
    const slenderness = (heightM * 1000) / tree.stemDiameterMm;
    if (slenderness > 150 || slenderness < 3) {
      addNotice(
        findings,
        'caution',
        'tree',
        `a stem of ${tree.stemDiameterMm} mm on a tree ${heightM} m high is unusual: check both and their units.`,
      );
    }
  }
}

function checkSite(findings: Findings, { site }: CaseFile): void {
  if (!site) return;
  const range = site.windCode === 'EN 1991-1-4' ? RANGES.meanWindMs : RANGES.gustWindMs;
  checkRange(findings, site.basicWindSpeedMs, range, 'site.basicWindSpeedMs', 'site.basicWindSpeedMs');
  checkRange(
    findings,
    site.basicWindReturnYears,
    RANGES.returnYears,
    'site.basicWindReturnYears',
    'site.basicWindReturnYears',
  );
}

function checkIds(findings: Findings, items: readonly { id: string }[], path: string): void {
  const first = new Map<string, number>();
  items.forEach(({ id }, i) => {
    const before = first.get(id);
    if (before === undefined) first.set(id, i);
    else {
      addFault(
        findings,
        `${path}[${i}].id`,
        `is ${JSON.stringify(id)}, which ${path}[${before}] is called already: give it a name of its own`,
      );
    }
  });
}

function checkSection(findings: Findings, { tree }: CaseFile, section: CaseSection, path: string): void {
  const place = `sections.${section.id}`;
  const before = findings.faults.length;
  checkRange(findings, section.heightM, RANGES.sectionHeightM, `${path}.heightM`, place);
  if (tree.heightM !== undefined && section.heightM >= tree.heightM) {
    addFault(
      findings,
      `${path}.heightM`,
      `is ${section.heightM} m, but the tree is ${tree.heightM} m high: a section lies below the top`,
    );
  }
  checkRange(findings, section.barkMm, RANGES.barkMm, `${path}.barkMm`, `${place}.barkMm`);
  if (checkSectionOutline(findings, section, path)) {
    const acrossMm = meanDiameterMm(section.outline);
    checkRange(findings, acrossMm, RANGES.outlineAcrossMm, `${path}.outline`, `${place}.outline`);
    if (section.barkMm !== undefined && section.barkMm >= acrossMm / 4) {
      addFault(
        findings,
        `${path}.barkMm`,
        `is ${section.barkMm} mm on a stem ${Math.round(acrossMm)} mm across: bark that thick leaves no stem; check both units`,
      );
    }
    const taper = tree.stemDiameterMm === undefined ? 1 : acrossMm / tree.stemDiameterMm;
    if (taper < USUAL_TAPER[0] || taper > USUAL_TAPER[1]) {
      addNotice(
        findings,
        'caution',
        `${place}.outline`,
        `the section is ${Math.round(acrossMm)} mm across and the stem ${tree.stemDiameterMm} mm at breast height: check both and their units.`,
      );
    }
  }
  if (findings.faults.length === before) checkFelledSection(findings, section, path);
  if (section.opening) {
    checkAzimuth(findings, section.opening.azimuthDeg, `${path}.opening.azimuthDeg`, `${place}.opening`);
    const roundMm = Math.PI * meanDiameterMm(section.outline);
    if (section.opening.widthMm > roundMm) {
      addFault(
        findings,
        `${path}.opening.widthMm`,
        `is ${section.opening.widthMm} mm on a stem ${Math.round(roundMm)} mm round: give the opening's width along the bark`,
      );
    }
  }
  section.surface?.forEach((arc, i) => {
    for (const end of ['fromDeg', 'toDeg'] as const)
      checkAzimuth(findings, arc[end], `${path}.surface[${i}].${end}`, `${place}.surface`);
  });
  checkIds(findings, section.drillings, `${path}.drillings`);
  section.drillings.forEach((drilling, i) => {
    checkNeedle(
      findings,
      drilling,
      `${path}.drillings[${i}]`,
      `${place}.drillings.${drilling.id}`,
      'section',
    );
  });
}

/** What was traced after felling; looked at once the standing section is without fault. */
function checkFelledSection(findings: Findings, section: CaseSection, path: string): void {
  const { felled } = section;
  if (!felled) return;
  try {
    checkFelled(engineFelled(felled), engineOutline(section.outline), `case.json: ${path}.felled`);
  } catch (error) {
    if (!(error instanceof InputFault)) throw error;
    findings.faults.push(error);
    return;
  }
  if (!felled.outline) return;
  const share = meanDiameterMm(felled.outline) / meanDiameterMm(section.outline);
  if (share < SAME_SECTION[0] || share > SAME_SECTION[1]) {
    addNotice(
      findings,
      'caution',
      `sections.${section.id}.felled.outline`,
      `the felled section is ${Math.round(meanDiameterMm(felled.outline))} mm across and the standing one ${Math.round(meanDiameterMm(section.outline))} mm: were both taken at the same height, and in millimetres?`,
    );
  }
}

/** True when the outline can be used. */
function checkSectionOutline(findings: Findings, section: CaseSection, path: string): boolean {
  const { outline } = section;
  const before = findings.faults.length;
  if (outline.kind === 'radii') {
    outline.radii.forEach(({ azimuthDeg }, i) => {
      checkAzimuth(
        findings,
        azimuthDeg,
        `${path}.outline.radii[${i}].azimuthDeg`,
        `sections.${section.id}.outline`,
      );
    });
  }
  if (findings.faults.length > before) return false;
  if (outline.kind === 'radii') questionGaps(findings, outline.radii, `sections.${section.id}.outline`);
  try {
    checkOutline(engineOutline(outline), `case.json: ${path}.outline`);
    return true;
  } catch (error) {
    if (!(error instanceof InputFault)) throw error;
    findings.faults.push(error);
    return false;
  }
}

/** Between radii far apart the outline is a guess. */
function questionGaps(findings: Findings, radii: readonly { azimuthDeg: number }[], place: string): void {
  const azimuths = radii.map(({ azimuthDeg }) => wrapAzimuth(azimuthDeg)).sort((a, b) => a - b);
  const gaps = azimuths.map((azimuth, i) => (azimuths[i + 1] ?? azimuths[0]! + 360) - azimuth);
  const widest = gaps.indexOf(Math.max(...gaps));
  if (radii.length > 0 && gaps[widest]! > WIDEST_GAP_DEG) {
    addNotice(
      findings,
      'caution',
      place,
      `no radius was measured from ${azimuths[widest]} to ${wrapAzimuth(azimuths[widest]! + gaps[widest]!)} degrees: the outline there is guessed.`,
    );
  }
}

function checkFlare(findings: Findings, flare: CaseFlare, path: string): void {
  const place = `flares.${flare.id}`;
  checkAzimuth(findings, flare.azimuthDeg, `${path}.azimuthDeg`, place);
  checkRange(findings, flare.widthMm, RANGES.flareSizeMm, `${path}.widthMm`, `${place}.widthMm`);
  checkRange(findings, flare.heightMm, RANGES.flareSizeMm, `${path}.heightMm`, `${place}.heightMm`);
  checkIds(findings, flare.drillings, `${path}.drillings`);
  flare.drillings.forEach((drilling, i) => {
    checkNeedle(findings, drilling, `${path}.drillings[${i}]`, `${place}.drillings.${drilling.id}`, 'flare');
  });
}

function checkNeedle(
  findings: Findings,
  drilling: CaseDrilling,
  path: string,
  place: string,
  at: 'section' | 'flare',
): void {
  const { azimuthDeg, offRadialDeg = 0, downDeg = 0 } = drilling;
  checkAzimuth(findings, azimuthDeg, `${path}.azimuthDeg`, place);
  if (!(Math.abs(offRadialDeg) < 90)) {
    addFault(
      findings,
      `${path}.offRadialDeg`,
      `is ${offRadialDeg}: a needle 90 degrees or more off the radial does not enter the stem; ` +
        'give its heading clockwise from the line to the pith, seen from above',
    );
  } else if (Math.abs(offRadialDeg) > UNUSUAL_ANGLE_DEG) {
    addNotice(
      findings,
      'caution',
      place,
      `the needle heads ${offRadialDeg} degrees off the radial: is that right?`,
    );
  }
  const steepest = at === 'flare' ? 88 : 85;
  if (!(Math.abs(downDeg) <= steepest)) {
    addFault(
      findings,
      `${path}.downDeg`,
      `is ${downDeg}: a needle in a ${at} runs at most ${steepest} degrees below (or, negative, above) the horizontal`,
    );
  } else if (at === 'section' && Math.abs(downDeg) > UNUSUAL_ANGLE_DEG) {
    addNotice(
      findings,
      'caution',
      place,
      `the needle runs ${downDeg} degrees below the horizontal: is that right?`,
    );
  }
}

/** Two drillings that read one file are nearly always a slip of copying. */
function checkSharedTraces(findings: Findings, caseFile: CaseFile): void {
  const usedBy = new Map<string, string>();
  for (const { drilling, place } of drillingsOf(caseFile)) {
    if (drilling.trace === undefined) continue;
    const before = usedBy.get(drilling.trace);
    if (before === undefined) usedBy.set(drilling.trace, place);
    else {
      addNotice(
        findings,
        'serious',
        place,
        `reads the same trace as ${before} (${drilling.trace}): one of the two is probably a slip.`,
      );
    }
  }
}

/** Every drilling of a case with its place in words and its path in the file, sections first. */
export function drillingsOf(
  caseFile: CaseFile,
): { drilling: CaseDrilling; place: string; path: string; at: 'section' | 'flare' }[] {
  return [
    ...caseFile.sections.flatMap((section, i) =>
      section.drillings.map((drilling, j) => ({
        drilling,
        place: `sections.${section.id}.drillings.${drilling.id}`,
        path: `sections[${i}].drillings[${j}]`,
        at: 'section' as const,
      })),
    ),
    ...caseFile.flares.flatMap((flare, i) =>
      flare.drillings.map((drilling, j) => ({
        drilling,
        place: `flares.${flare.id}.drillings.${drilling.id}`,
        path: `flares[${i}].drillings[${j}]`,
        at: 'flare' as const,
      })),
    ),
  ];
}

function checkSigns(findings: Findings, { signs }: CaseFile): void {
  signs.forEach(({ azimuthDeg }, i) => {
    if (azimuthDeg !== undefined) {
      checkAzimuth(findings, azimuthDeg, `signs[${i}].azimuthDeg`, `signs[${i}]`);
    }
  });
}

function checkTargets(findings: Findings, { targets, tree }: CaseFile): void {
  targets.forEach(({ what, occupancy, distanceM, directionDeg }, i) => {
    checkRange(findings, distanceM, RANGES.distanceM, `targets[${i}].distanceM`, `targets[${i}]`);
    if (directionDeg !== undefined) {
      checkAzimuth(findings, directionDeg, `targets[${i}].directionDeg`, `targets[${i}]`);
    }
    if (distanceM !== undefined && tree.heightM !== undefined && distanceM > 1.5 * tree.heightM) {
      addNotice(
        findings,
        'note',
        `targets[${i}]`,
        `${what} is ${distanceM} m away, beyond the reach of a tree ${tree.heightM} m high.`,
      );
    }
    if (occupancy !== undefined && !(OCCUPANCIES as readonly string[]).includes(occupancy)) {
      addNotice(
        findings,
        'note',
        `targets[${i}]`,
        `occupancy ${JSON.stringify(occupancy)} is kept, but is none of ${OCCUPANCIES.join(', ')}: it counts as not stated.`,
      );
    }
  });
}
