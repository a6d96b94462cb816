/**
 * Marks that would cover each other are drawn as one. The worst risk is placed first and gathers what lies within a
 * mark's breadth of it, so no worse tree is ever hidden behind a better one.
 */
import type { PlanePoint } from './plane.ts';

export interface Placed extends PlanePoint {
  /** 0 is the worst. */
  riskPlace: number;
}

export interface Cluster {
  x: number;
  y: number;
  /** Places in the list of what was gathered, the worst first. */
  members: number[];
}

/**
 * @param gapM least distance of two marks, in metres of the plane
 * @returns every point in exactly one cluster; the seed's place is the cluster's
 */
export function clustered(points: readonly Placed[], gapM: number): Cluster[] {
  const order = points.map((_, i) => i).sort((a, b) => points[a]!.riskPlace - points[b]!.riskPlace || a - b);
  const clusters: Cluster[] = [];
  /** Clusters whose seed lies in each square of the gap's breadth. */
  const squares = new Map<string, Cluster[]>();
  for (const i of order) {
    const { x, y } = points[i]!;
    const [column, row] = [Math.floor(x / gapM), Math.floor(y / gapM)];
    let home: Cluster | null = null;
    let nearest = gapM * gapM;
    for (let c = column - 1; c <= column + 1; c++) {
      for (let r = row - 1; r <= row + 1; r++) {
        for (const cluster of squares.get(`${c} ${r}`) ?? []) {
          const distance = (cluster.x - x) ** 2 + (cluster.y - y) ** 2;
          if (distance < nearest) [home, nearest] = [cluster, distance];
        }
      }
    }
    if (home) {
      home.members.push(i);
      continue;
    }
    const cluster = { x, y, members: [i] };
    clusters.push(cluster);
    const key = `${column} ${row}`;
    const here = squares.get(key);
    if (here) here.push(cluster);
    else squares.set(key, [cluster]);
  }
  return clusters;
}

/** The gap in metres for a scale: it changes in steps, so that clusters hold while one zooms a little. */
export function gapFor(scale: number, gapPx: number): number {
  const step = 2 ** (Math.floor(2 * Math.log2(scale)) / 2);
  return gapPx / step;
}
