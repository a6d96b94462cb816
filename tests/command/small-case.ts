/** A small case of sound wood, written to disk, to be spoilt in one way by each test. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { CaseBag } from '@standfast/casefile';

/** Rows of a trace through bark and sound wood with rings, every half millimetre. */
export function soundRows(lengthMm = 220): string[] {
  const rows: string[] = [];
  for (let depth = 0; depth <= lengthMm; depth += 0.5) {
    const wood = depth > 15;
    // Rings 4 mm apart, and a ripple without a period, so that no two drillings need be the same.
    const ripple = 4 * Math.sin((2 * Math.PI * depth) / 4) + 1.5 * Math.sin(depth * 7.3 + depth * depth);
    const level = depth < 3 ? 0.5 : wood ? 42 + 0.02 * depth + ripple : 9 + 0.4 * ripple;
    rows.push(`${depth.toFixed(1)},${level.toFixed(2)}`);
  }
  return rows;
}

export const traceText = (rows: string[]) => `depth_mm,resistance\n${rows.join('\n')}\n`;

/** The case file of the small case, as plain JSON. */
export function caseJson() {
  const drilling = (id: string, azimuthDeg: number) => ({
    id,
    azimuthDeg,
    offRadialDeg: 0,
    downDeg: 0,
    trace: `traces/${id}.csv`,
  });
  return {
    format: 'standfast-case',
    version: 1,
    client: { name: 'Test client' },
    assessor: { name: 'Test assessor', credential: 'none' },
    visitedOn: '2026-05-14',
    tree: {
      label: 'T1',
      species: 'Tilia americana',
      stemDiameterMm: 600,
      heightM: 18,
      leanDeg: 0,
      leanTowardDeg: 0,
      crown: { baseHeightM: 4, widthM: 9, shape: 'ellipse', inLeaf: true },
    },
    site: { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'III' } as Record<string, unknown>,
    sections: [
      {
        id: 's1',
        heightM: 0.4,
        outline: { kind: 'circle', diameterMm: 640 } as Record<string, unknown>,
        barkMm: 15,
        drillings: [drilling('d1', 0), drilling('d2', 90), drilling('d3', 180), drilling('d4', 270)],
      },
    ],
    flares: [],
    signs: [],
    targets: [{ what: 'path', occupancy: 'frequent', distanceM: 6, directionDeg: 90 }],
  };
}

/** The text of its traces, by path. */
export function caseTraces(): Record<string, string> {
  return Object.fromEntries(
    ['d1', 'd2', 'd3', 'd4'].map((id) => [`traces/${id}.csv`, traceText(soundRows())]),
  );
}

/** The files of a case, by path; `json` may be any text. */
export function bagOf(json: unknown, traces: Record<string, string> = caseTraces()): CaseBag {
  const text = typeof json === 'string' ? json : JSON.stringify(json, null, 2);
  const encoder = new TextEncoder();
  return new Map(
    Object.entries({ 'case.json': text, ...traces }).map(([name, value]) => [name, encoder.encode(value)]),
  );
}

/** Writes a case folder. */
export function writeCase(folder: string, json: unknown, traces?: Record<string, string>): void {
  for (const [name, bytes] of bagOf(json, traces)) {
    const file = path.join(folder, name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, bytes);
  }
}
