/**
 * The shape of `case.json`, format `standfast-case`, version 1.
 *
 * The shape says what kind of value stands where. Whether the values make sense together (a crown base above the
 * tree's top, a needle that misses the stem) is looked at in `check/`. Nearly everything may be missing, because a
 * person saves half-done work in the field; what the engine cannot do without is asked for by `engineInput`.
 *
 * A field that was not measured is left out; `null` is taken as left out.
 */
import {
  CONSEQUENCES,
  FAILURE_LIKELIHOODS,
  IMPACT_LIKELIHOODS,
  OCCUPANCIES,
  PROTECTIONS,
  SURFACE_STATES,
} from '@standfast/engine';
import { z } from 'zod';

/** The newest version of the file this program reads, and the one it writes. */
export const CASE_VERSION = 1;
export const CASE_FORMAT = 'standfast-case';

export const CROWN_SHAPES = [
  'ellipse',
  'dome',
  'cone',
  'paraboloid',
  'rectangle',
  'rhombus',
  'inverted-cone',
] as const;
export const EUROCODE_TERRAINS = ['0', 'I', 'II', 'III', 'IV'] as const;
export const ASCE_EXPOSURES = ['B', 'C', 'D'] as const;
export const WIND_CODES = ['EN 1991-1-4', 'ASCE 7-22', 'ASCE 7-16'] as const;

export const SOILS = ['unknown', 'free-draining', 'poor'] as const;
export const PARTS_OF_TREE = ['whole tree', 'limb'] as const;

export const REPORT_UNITS = ['metric', 'us'] as const;
export const REPORT_PAPERS = ['a4', 'letter'] as const;
/** By their codes (ISO 639-1). */
export const REPORT_LANGUAGES = ['en', 'fr'] as const;

/** The trade's words, from the least to the greatest. Another word for the occupancy is kept and warned of. */
export { CONSEQUENCES, FAILURE_LIKELIHOODS, IMPACT_LIKELIHOODS, OCCUPANCIES, PROTECTIONS };

/** Signs a person is offered to choose from; any other word is accepted. */
export const SIGN_KINDS = [
  'fruiting body',
  'cavity',
  'old wound',
  'crack',
  'seam',
  'bulge',
  'loose bark',
  'included bark',
  'frass',
  'ants',
  'borer holes',
  'sap flow',
  'dead limb',
  'thin crown',
  'lean',
  'root cut',
  'soil crack',
  'soil heave',
] as const;

type ObjectBuilder = typeof z.object;

function optional<T extends z.ZodType>(schema: T) {
  return z.preprocess((value) => (value === null ? undefined : value), schema.optional());
}

function list<T extends z.ZodType>(schema: T) {
  return z.preprocess((value) => (value === null ? undefined : value), z.array(schema).default([]));
}

/** The schema with one way of building objects: `looseObject` keeps unknown fields, `strictObject` reports them. */
function schemaWith(object: ObjectBuilder) {
  const text = z.string();
  const number = z.number();
  const positive = z.number().positive();
  const name = z.string().trim().min(1);

  const outline = z.discriminatedUnion('kind', [
    object({ kind: z.literal('circle'), diameterMm: positive }),
    object({ kind: z.literal('ellipse'), longMm: positive, shortMm: positive, longAxisDeg: number }),
    object({
      kind: z.literal('radii'),
      radii: z.array(object({ azimuthDeg: number, radiusMm: positive })),
    }),
    object({ kind: z.literal('polygon'), points: z.array(z.tuple([number, number])) }),
  ]);

  const rings = z.array(z.array(z.tuple([number, number])));
  const felled = object({
    unsound: rings,
    incipient: optional(rings),
    outline: optional(outline),
    source: optional(text),
    photo: optional(name),
    note: optional(text),
  });

  const drilling = object({
    id: name,
    azimuthDeg: number,
    offRadialDeg: optional(number),
    downDeg: optional(number),
    trace: optional(name),
    photo: optional(name),
    note: optional(text),
  });

  const siteCommon = {
    basicWindReturnYears: optional(positive),
    basicWindSource: optional(text),
    soil: optional(z.enum(SOILS)),
  };

  const judgement = <Words extends readonly [string, ...string[]]>(words: Words) =>
    optional(object({ value: z.enum(words), reason: optional(text) }));

  return object({
    format: z.literal(CASE_FORMAT),
    version: z.literal(CASE_VERSION),
    invented: optional(z.boolean()),
    title: optional(text),
    purpose: optional(text),
    client: optional(object({ name: optional(text), address: optional(text) })),
    assessor: optional(object({ name: optional(text), credential: optional(text), firm: optional(text) })),
    visitedOn: optional(z.iso.date()),
    weather: optional(text),
    earlier: optional(name),
    place: optional(
      object({ name: optional(text), latitude: optional(number), longitude: optional(number) }),
    ),
    instrument: optional(
      object({
        name: optional(text),
        serialNumber: optional(text),
        calibratedOn: optional(z.iso.date()),
        needleLengthMm: optional(positive),
      }),
    ),
    tree: object({
      label: optional(text),
      species: optional(text),
      stemDiameterMm: optional(positive),
      heightM: optional(positive),
      leanDeg: optional(number),
      leanTowardDeg: optional(number),
      crown: optional(
        object({
          baseHeightM: optional(z.number().min(0)),
          widthM: optional(positive),
          shape: optional(z.enum(CROWN_SHAPES)),
          inLeaf: optional(z.boolean()),
        }),
      ),
    }),
    site: optional(
      z.discriminatedUnion('windCode', [
        object({
          windCode: z.literal('EN 1991-1-4'),
          basicWindSpeedMs: optional(positive),
          terrain: optional(z.enum(EUROCODE_TERRAINS)),
          ...siteCommon,
        }),
        object({
          windCode: z.enum(['ASCE 7-22', 'ASCE 7-16']),
          basicWindSpeedMs: optional(positive),
          exposure: optional(z.enum(ASCE_EXPOSURES)),
          ...siteCommon,
        }),
      ]),
    ),
    sections: list(
      object({
        id: name,
        heightM: z.number().min(0),
        outline,
        barkMm: optional(z.number().min(0)),
        opening: optional(object({ azimuthDeg: number, widthMm: positive })),
        surface: optional(
          z.array(
            object({ fromDeg: number, toDeg: number, state: z.enum(SURFACE_STATES), note: optional(text) }),
          ),
        ),
        drillings: list(drilling),
        felled: optional(felled),
        note: optional(text),
      }),
    ),
    flares: list(
      object({
        id: name,
        azimuthDeg: number,
        widthMm: optional(positive),
        heightMm: optional(positive),
        drillings: list(drilling),
        note: optional(text),
      }),
    ),
    signs: list(
      object({
        kind: name,
        where: optional(text),
        note: optional(text),
        photo: optional(name),
        azimuthDeg: optional(number),
        heightM: optional(z.number().min(0)),
      }),
    ),
    targets: list(
      object({
        what: name,
        occupancy: optional(text),
        distanceM: optional(z.number().min(0)),
        directionDeg: optional(number),
        protection: optional(z.enum(PROTECTIONS)),
        consequence: optional(z.enum(CONSEQUENCES)),
        partOfTree: optional(z.enum(PARTS_OF_TREE)),
        note: optional(text),
      }),
    ),
    staticTests: optional(
      z.array(object({ directionDeg: number, momentNm: positive, tiltDeg: positive, note: optional(text) })),
    ),
    rootCuts: optional(
      z.array(
        object({
          azimuthDeg: number,
          distanceM: z.number().min(0),
          widthDeg: optional(positive),
          depthM: optional(z.number().min(0)),
          year: optional(z.number().int()),
          note: optional(text),
        }),
      ),
    ),
    rootSpace: optional(
      z.array(
        object({
          azimuthDeg: number,
          distanceM: z.number().min(0),
          widthDeg: optional(positive),
          what: optional(text),
        }),
      ),
    ),
    timeFrameYears: optional(positive),
    decision: optional(
      object({
        likelihoodOfFailure: judgement(FAILURE_LIKELIHOODS),
        byTarget: optional(
          z.array(
            object({
              target: name,
              partOfTree: optional(z.enum(PARTS_OF_TREE)),
              likelihoodOfFailure: judgement(FAILURE_LIKELIHOODS),
              likelihoodOfImpact: judgement(IMPACT_LIKELIHOODS),
              consequences: judgement(CONSEQUENCES),
            }),
          ),
        ),
        by: optional(text),
        on: optional(z.iso.date()),
        note: optional(text),
      }),
    ),
    advice: optional(
      z.array(
        object({
          option: name,
          chosen: optional(z.boolean()),
          cost: optional(text),
          dueOn: optional(z.iso.date()),
          note: optional(text),
        }),
      ),
    ),
    notes: optional(text),
    report: optional(
      object({
        units: optional(z.enum(REPORT_UNITS)),
        paper: optional(z.enum(REPORT_PAPERS)),
        letterhead: optional(object({ lines: optional(z.array(text)), logo: optional(name) })),
        signature: optional(
          object({
            image: optional(name),
            name: optional(text),
            place: optional(text),
            signedOn: optional(z.iso.date()),
          }),
        ),
        struck: optional(z.array(name)),
        added: optional(
          z.array(object({ after: name, text: name, by: optional(text), on: optional(z.iso.date()) })),
        ),
        reduced: optional(
          z.array(
            object({
              photo: name,
              originalSha256: z.string().regex(/^[0-9a-f]{64}$/),
              originalBytes: positive,
            }),
          ),
        ),
        language: optional(z.enum(REPORT_LANGUAGES)),
        wording: optional(z.record(name, text)),
      }),
    ),
  });
}

/** The name of every field of the format, wherever it stands. */
export const knownFields: ReadonlySet<string> = collectFields();

function collectFields(): Set<string> {
  const names = new Set<string>();
  schemaWith(((shape: z.ZodRawShape) => {
    for (const name of Object.keys(shape)) names.add(name);
    return z.object(shape);
  }) as ObjectBuilder);
  return names;
}

/** Reads a case and keeps every field it does not know. */
export const caseSchema = schemaWith(z.looseObject as unknown as ObjectBuilder);

/** Reads a case and reports every field it does not know. */
export const strictCaseSchema = schemaWith(z.strictObject as unknown as ObjectBuilder);

/**
 * What a person recorded of one tree on one visit. The lists are always there (empty when nothing was recorded);
 * everything else may be missing. Units are in the names; azimuths and directions are degrees clockwise from north.
 */
export type CaseFile = z.output<typeof caseSchema>;

export type CaseTree = CaseFile['tree'];
export type CaseCrown = NonNullable<CaseTree['crown']>;
export type CaseSite = NonNullable<CaseFile['site']>;
export type CaseSection = CaseFile['sections'][number];
export type CaseOutline = CaseSection['outline'];
export type CaseSurfaceArc = NonNullable<CaseSection['surface']>[number];
export type CaseFelled = NonNullable<CaseSection['felled']>;
export type CaseFlare = CaseFile['flares'][number];
export type CaseDrilling = CaseSection['drillings'][number];
export type CaseSign = CaseFile['signs'][number];
export type CaseTarget = CaseFile['targets'][number];
export type CaseStaticTest = NonNullable<CaseFile['staticTests']>[number];
export type CaseRootCut = NonNullable<CaseFile['rootCuts']>[number];
export type CaseRootBarrier = NonNullable<CaseFile['rootSpace']>[number];
export type CaseDecision = NonNullable<CaseFile['decision']>;
export type CaseTargetJudgement = NonNullable<CaseDecision['byTarget']>[number];
/** How the report is to read: letterhead, signature, what the assessor struck and added, language and wording. */
export type CaseReport = NonNullable<CaseFile['report']>;
export type CaseAddedText = NonNullable<CaseReport['added']>[number];
export type CaseAdviceChoice = NonNullable<CaseFile['advice']>[number];
