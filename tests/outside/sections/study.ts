/**
 * The whole assessment on case folders from a second simulator (`make_sections.py`: Python, Shapely, other shapes, another
 * trace), written to docs/accuracy/outside.md: `npm run accuracy outside/sections`. Nothing was fitted to these.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openCase } from '../../../packages/casefile/src/index.ts';
import { bagFromPath } from '../../../packages/casefile/src/node.ts';
import { assess } from '../../../packages/engine/src/assess.ts';
import { outlineRing } from '../../../packages/engine/src/section/outline.ts';
import {
  BASELINES,
  baselineEstimates,
  baselineWidth,
  coverageOf,
  type Judged,
  standardErrorOf,
} from '../../simulated/sections/judge.ts';
import { runPython } from '../python.ts';

const COUNT = 160;
const SEED = 20_261_125;
const DRAWS = 500;

interface Truth {
  family: string;
  drillings: number;
  remaining: number[];
}

async function judged(noted: boolean): Promise<Judged[]> {
  const folder = mkdtempSync(join(tmpdir(), 'standfast-outside-'));
  try {
    const script = fileURLToPath(new URL('make_sections.py', import.meta.url));
    runPython([script, folder, String(COUNT), String(SEED), ...(noted ? [] : ['--surface-not-noted'])]);
    const rows: Judged[] = [];
    for (const name of readdirSync(folder).sort()) {
      const path = join(folder, name);
      const truth = JSON.parse(readFileSync(join(path, 'truth.json'), 'utf8')) as Truth;
      const { engineInput } = openCase(await bagFromPath(path));
      if (!engineInput) throw new Error(`${name} could not be opened`);
      const section = engineInput.sections[0]!;
      const found = assess(engineInput, { draws: DRAWS }).sections[0]!;
      const baselines = baselineEstimates({
        outline: outlineRing(section.outline),
        barkMm: section.barkMm,
        drillings: section.drillings.map((pose, i) => ({
          pose,
          wallMm: found.drillings[i]!.residualWallMm,
        })),
        surface: section.surface ?? [],
      });
      for (let d = 0; d < 18; d++) {
        const { p05, p50, p95 } = found.remaining[d]!;
        rows.push({
          family: truth.family,
          drillings: truth.drillings,
          section: Number(name.slice(1)),
          truth: truth.remaining[d]!,
          p05,
          p50,
          p95,
          baseline: Object.fromEntries(BASELINES.map((b) => [b, baselines[b][d]!])) as Judged['baseline'],
        });
      }
    }
    return rows;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const percent = (x: number) => `${(100 * x).toFixed(1)} %`;

function table(rows: Judged[]): string {
  const families = [...new Set(rows.map((r) => r.family))];
  const counts = [...new Set(rows.map((r) => r.drillings))].sort((a, b) => a - b);
  const line = (name: string, part: Judged[]) => {
    const c = coverageOf(part);
    const bias = `${c.bias >= 0 ? '+' : '−'}${Math.abs(c.bias).toFixed(3)}`;
    return `| ${name} | ${c.sections} | ${percent(c.covered)} ± ${percent(standardErrorOf(part))} | ${percent(c.below)} | ${percent(c.above)} | ${c.width.toFixed(3)} | ${bias} |`;
  };
  return [
    '| | sections | held | truth below | truth above | mean width | bias of median |',
    '|---|---|---|---|---|---|---|',
    ...families.map((f) =>
      line(
        f,
        rows.filter((r) => r.family === f),
      ),
    ),
    ...counts.map((n) =>
      line(
        `${n} drillings`,
        rows.filter((r) => r.drillings === n),
      ),
    ),
    line('all', rows),
  ].join('\n');
}

function beside(rows: Judged[]): string {
  const { covered, width } = coverageOf(rows);
  return [
    '| interval that holds as many | mean width | the field over it |',
    '|---|---|---|',
    ...BASELINES.map((b) => {
      const w = baselineWidth(rows, b, covered);
      return `| ${b} | ${w.toFixed(3)} | ${(width / w).toFixed(2)} |`;
    }),
  ].join('\n');
}

const noted = await judged(true);
const unnoted = await judged(false);
writeFileSync(
  fileURLToPath(new URL('../../../docs/accuracy/outside.md', import.meta.url)),
  `# Held against a second simulator

Made by \`npm run accuracy outside/sections\` (needs Python with numpy and shapely). \`tests/outside/sections/make_sections.py\`
draws stems, decay and traces of its own, takes what truly remains from Shapely's polygons, and writes case folders, which
are opened and assessed whole, as a user's are. Its shapes, its trace, its drill and its errors of outline and surface are made
by other rules than the simulator in \`tests/simulated\`, and no number of the method was fitted to it. Its results were looked
at: evidence from the surface and hollows that stay round under lobes came after open and lobed stems, of other seeds,
were seen to be missed here. Seed ${SEED}, ${COUNT} stems, 4, 6 or 8 drillings.

## Surface noted

${table(noted)}

${beside(noted)}

## Surface not noted

The same stems and traces.

${table(unnoted)}

${beside(unnoted)}
`,
);
