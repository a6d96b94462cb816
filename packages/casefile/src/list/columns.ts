/** The columns of a work list. docs/guide/list.md is held to these names, units and meanings by a test. */

/** What a column holds: text, a number in the unit given, a day `2026-05-14`, or one of the trade's words. */
export interface ListColumn {
  name: string;
  unit: string;
  meaning: string;
}

export const LIST_COLUMNS = [
  { name: 'case', unit: 'text', meaning: 'where the case is: path below the folder, or its id in the app' },
  { name: 'status', unit: 'word', meaning: '`assessed` or `not assessed`' },
  { name: 'label', unit: 'text', meaning: 'label of the tree' },
  { name: 'species', unit: 'text', meaning: 'botanical name as recorded' },
  { name: 'client', unit: 'text', meaning: 'name of the client' },
  { name: 'place', unit: 'text', meaning: 'name of the place' },
  { name: 'latitude', unit: '° north', meaning: 'WGS 84; empty without a position' },
  { name: 'longitude', unit: '° east', meaning: 'WGS 84; empty without a position' },
  { name: 'invented', unit: 'word', meaning: '`yes` for an invented tree, else empty' },
  { name: 'visitedOn', unit: 'day', meaning: 'day of the visit' },
  {
    name: 'risk',
    unit: 'word',
    meaning:
      'highest risk over the targets that counts: the assessor’s word where there is one, else the suggestion; empty without a target',
  },
  { name: 'riskSuggested', unit: 'word', meaning: 'the same by the suggestions alone' },
  {
    name: 'riskStanding',
    unit: 'word',
    meaning: '`suggested`, `confirmed in part`, `confirmed` or `overridden` by the assessor',
  },
  { name: 'riskTarget', unit: 'text', meaning: 'the target that this risk is of' },
  {
    name: 'likelihoodOfFailure',
    unit: 'word',
    meaning: 'of the whole tree within the time frame, as it counts',
  },
  { name: 'likelihoodSuggested', unit: 'word', meaning: 'the same as suggested' },
  { name: 'governingMode', unit: 'word', meaning: '`breakage` or `uprooting`: the mode that governs' },
  {
    name: 'governingDirectionDeg',
    unit: '°',
    meaning: 'direction the tree would go, clockwise from north',
  },
  { name: 'safetyP05', unit: 'ratio', meaning: 'governing safety, lower bound (5 %)' },
  { name: 'safetyP50', unit: 'ratio', meaning: 'governing safety, middle estimate' },
  { name: 'safetyP95', unit: 'ratio', meaning: 'governing safety, upper bound (95 %)' },
  { name: 'timeFrameYears', unit: 'years', meaning: 'time frame of likelihood and chance' },
  {
    name: 'chanceOfFailure',
    unit: 'share',
    meaning: 'chance of failure within the time frame, over all draws',
  },
  { name: 'chanceP05', unit: 'share', meaning: 'lower bound (5 %) of that chance, for not knowing the tree' },
  { name: 'chanceP95', unit: 'share', meaning: 'upper bound (95 %) of that chance' },
  {
    name: 'advice',
    unit: 'text',
    meaning: 'options chosen in the case, parted by `; `; without a choice the best suggested one',
  },
  { name: 'adviceStanding', unit: 'word', meaning: '`chosen` or `suggested`' },
  { name: 'advicePriority', unit: 'word', meaning: '`first`, `advised`, `possible` or `not advised`' },
  {
    name: 'adviceDueOn',
    unit: 'day',
    meaning: 'earliest day by which that advice is due; empty without a visit date or when it has none',
  },
  { name: 'reinspectionDueOn', unit: 'day', meaning: 'day by which to look again' },
  { name: 'dueOn', unit: 'day', meaning: 'the earlier of the two: what the list is sorted by within a risk' },
  { name: 'seriousNotices', unit: 'count', meaning: 'serious notices of the assessment' },
  { name: 'cautions', unit: 'count', meaning: 'cautions of the assessment' },
  { name: 'faults', unit: 'text', meaning: 'why a case could not be assessed, parted by ` | `' },
  {
    name: 'contentSha256',
    unit: 'text',
    meaning: 'hash of the case’s files, by which a second run knows it again; empty from the app',
  },
  { name: 'engineVersion', unit: 'text', meaning: 'engine that assessed it' },
  { name: 'seed', unit: 'number', meaning: 'seed of the draws' },
  { name: 'draws', unit: 'count', meaning: 'number of draws' },
] as const satisfies readonly ListColumn[];

export type ListColumnName = (typeof LIST_COLUMNS)[number]['name'];

export const LIST_COLUMN_NAMES: readonly ListColumnName[] = LIST_COLUMNS.map(({ name }) => name);
