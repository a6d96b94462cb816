/**
 * Which drag group a tree belongs to, and how its crown's drag coefficient falls with speed.
 *
 * The coefficient stands on the still-air silhouette and falls as a power of the speed (Vogel's exponent) between the
 * lowest and the highest speed tested; it is held constant outside them, never extrapolated (Vollsinger et al. 2005,
 * Rudnicki et al. 2004, Mayhead 1973; groups and bands are proposals of this project, see drag.csv).
 */
import { constant } from './constants.ts';
import { type DragRow, drag, type GeneraRow, genera, type Status } from './tables.generated.ts';

export interface DragGroup {
  name: string;
  kind: 'broadleaf' | 'conifer' | 'unknown';
  /** Whether the crown keeps its leaves in winter. */
  evergreen: boolean;
  cd: number;
  cdLow: number;
  cdHigh: number;
  /** Standard deviation of ln(cd), taking low and high as the 5 % and 95 % points. */
  logSd: number;
  exponent: number;
  referenceMs: number;
  topTestedMs: number;
  source: string;
  status: Status;
}

const Z95 = 1.6448536269514722;
const rowOf = new Map<string, Readonly<DragRow>>(drag.map((row) => [row.dragGroup, row]));
const genusOf = new Map<string, Readonly<GeneraRow>>(genera.map((row) => [row.genus, row]));

/** The drag group of a genus; an unknown genus (or null) gets the whole span. */
export function dragGroupFor(genus: string | null): DragGroup {
  const known = genus === null ? undefined : genusOf.get(genus);
  const row = rowOf.get(known?.dragGroup ?? 'unknown');
  if (!row) throw new Error(`genera.csv names the drag group "${known?.dragGroup}", which drag.csv has not`);
  return {
    name: row.dragGroup,
    kind: known ? (known.kind === 'conifer' ? 'conifer' : 'broadleaf') : 'unknown',
    evergreen: known?.evergreen === 'yes',
    cd: row.cd,
    cdLow: row.cdLow,
    cdHigh: row.cdHigh,
    logSd: Math.log(row.cdHigh / row.cdLow) / (2 * Z95),
    exponent: row.exponent,
    referenceMs: row.referenceMs,
    topTestedMs: row.topTestedMs,
    source: row.source,
    status: row.status,
  };
}

/** The crown's drag coefficient at a gust speed, m/s, in leaf or bare. */
export function dragCoefficient(group: DragGroup, inLeaf: boolean, gustMs: number): number {
  const held = Math.min(Math.max(gustMs, constant('least drag speed').value), group.topTestedMs);
  const bare = !inLeaf;
  const exponent = bare ? constant('leaf-off drag exponent').value : group.exponent;
  const atReference = bare ? group.cd * constant('leaf-off drag factor').value : group.cd;
  return atReference * (held / group.referenceMs) ** exponent;
}
