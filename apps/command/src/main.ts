/** The command line `standfast`. Each command's work is loaded only when it is called, so that help is instant. */
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { WRONG_USAGE, withOutcome } from './outcome.ts';
import { VERSION } from './version.ts';

// A reader that has seen enough (`| head`) is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(process.exitCode ?? 0);
});

const STRIP_CHART_HELP = `
The chart file says what cannot be read off the photo, each part of it optional:
  "cornersPx": [[x, y], …]          its four corners, clockwise from its own top left
  "depthMm": [left, right]          depth at its edges; a chart that runs right to left has the greater on the left
  "resistance": [bottom, top]       level at its edges, percent of full scale
For a strip without numbers, in place of depthMm one of
  "taps": [{"px": [x, y], "depthMm": 0}, {"px": [x, y], "depthMm": 200}]
                                    two points whose depths are known
  "ruler": {"px": [[x, y], [x, y]], "distanceMm": 100, "startMm": 0, "startsAt": "left"}
                                    two marks of a ruler laid along a strip drawn 1:1, and where its depth begins
Pixels are counted on the photo as it is shown upright, from 0 at its top left.`;

const program = new Command('standfast')
  .description('From resistance-drilling traces to a tree stability decision that holds up.')
  .version(VERSION, '-V, --version', 'print the version')
  .helpOption('-h, --help', 'print help')
  .showHelpAfterError('(add --help for how it is used)')
  .showSuggestionAfterError()
  .exitOverride();

program
  .command('demo')
  .description('write the demonstration case, an invented tree, as a case folder')
  .argument('<dir>', 'folder to make; it must not exist or be empty')
  .option('--second-visit', 'write its second visit, four years on, with the first one inside')
  .action(
    withOutcome(async (dir: string, options: { secondVisit?: boolean }) =>
      (await import('./commands/demo.ts')).demo(dir, options),
    ),
  );

program
  .command('zones')
  .description('read one trace and print its zones')
  .argument('<trace.csv>', 'table with the columns depth_mm and resistance, or one that can be guessed')
  .option('--json', 'print one JSON document')
  .option('--bark <mm>', 'thickness of the bark where it was measured', atLeastZero)
  .option(
    '--exit <mm>',
    'depth at which the stem’s outline puts the needle’s exit on the far side',
    aboveZero,
  )
  .option('--drilling <label>', 'which drilling, where the table holds several')
  .action(
    withOutcome(async (file: string, options: ZonesFlags) =>
      (await import('./commands/zones.ts')).zones(file, options),
    ),
  );

program
  .command('strip')
  .description('read a photographed paper strip into a trace')
  .argument('<photo>', 'JPEG, PNG or WebP of the strip')
  .option(
    '--chart <chart.json>',
    'what is known of the chart, where it cannot be read off the photo (see below)',
  )
  .option('--csv <out.csv>', 'write the trace as a table')
  .option('--overlay <out.png>', 'draw the line found on the photo, to check it by eye')
  .option('--line <n>', 'which of the lines found (default: 1, the likeliest)', wholeFrom(1, 99))
  .option('--json', 'print one JSON document')
  .addHelpText('after', STRIP_CHART_HELP)
  .action(
    withOutcome(async (photo: string, options: StripFlags) =>
      (await import('./commands/strip.ts')).strip(photo, options),
    ),
  );

program
  .command('section')
  .description('print the exact section properties of a known outline with known voids')
  .argument('<section.json>', '{"outline": …, "voids": [[[x, y], …], …]}')
  .option('--json', 'print one JSON document')
  .action(
    withOutcome(async (file: string, options: { json?: boolean }) =>
      (await import('./commands/section.ts')).section(file, options),
    ),
  );

program
  .command('assess')
  .description('assess a case: strength, wind, safety, where to drill next')
  .argument('<case>', 'case folder or zip')
  .option('--json', 'print one JSON document')
  .option('--report <out.pdf>', 'write the report as PDF')
  .option('--html <out.html>', 'write the report as HTML')
  .addOption(new Option('--units <units>', 'units of the report').choices(['metric', 'us']))
  .addOption(new Option('--paper <paper>', 'paper of the report').choices(['a4', 'letter']))
  .addOption(languageOption())
  .option('--wording <wording.json>', "the firm's own wording of chosen texts (see standfast wording)")
  .option('--firm <folder>', "folder with firm.json: the firm's letterhead, logo, signature, language, units")
  .option('--signed-on <date>', 'the report is signed on this day, for example 2026-06-20', day)
  .addOption(seedOption())
  .addOption(drawsOption())
  .action(
    withOutcome(async (path: string, options: AssessFlags) =>
      (await import('./commands/assess.ts')).assessCase(path, options),
    ),
  );

program
  .command('compare')
  .description('compare two visits to one tree: growth, decay moved or not, safety then and now, forecast')
  .argument('<earlier>', 'case folder or zip of the earlier visit')
  .argument('<later>', 'case folder or zip of the later visit')
  .option('--json', 'print one JSON document')
  .option('--report <out.pdf>', 'write the report of the later visit, with the earlier one inside')
  .addOption(new Option('--units <units>', 'units of the report').choices(['metric', 'us']))
  .addOption(seedOption())
  .addOption(drawsOption())
  .action(
    withOutcome(async (earlier: string, later: string, options: CompareFlags) =>
      (await import('./commands/compare.ts')).compareCases(earlier, later, options),
    ),
  );

program
  .command('wording')
  .description('write every text of the report that a firm may word, as it stands, to edit')
  .addOption(languageOption())
  .option('--out <wording.json>', 'write it to a file')
  .action(
    withOutcome(async (options: { language?: 'en' | 'fr'; out?: string }) =>
      (await import('./commands/wording.ts')).wording(options),
    ),
  );

program
  .command('verify')
  .description('recompute a report from the case inside it and say whether its figures stand (0 yes, 1 no)')
  .argument('<report>', 'PDF or HTML report that assess wrote')
  .option('--json', 'print one JSON document')
  .action(
    withOutcome(async (file: string, options: { json?: boolean }) =>
      (await import('./commands/verify.ts')).verify(file, options),
    ),
  );

program
  .command('batch')
  .description('assess every case below a folder, on all cores, into one table; can be stopped and resumed')
  .argument('<folder>', 'where to look for case folders and zips')
  .option('--out <file.csv>', 'the table of results (default: standfast-batch.csv)')
  .option('--jobs <n>', 'how many cases at a time (default: one a core)', wholeFrom(1, 512))
  .addOption(seedOption())
  .addOption(drawsOption())
  .action(
    withOutcome(async (folder: string, options: BatchFlags) =>
      (await import('./commands/batch.ts')).batch(folder, options),
    ),
  );

program
  .command('list')
  .description('the work list of every case below a folder, by risk and due date; as CSV and GeoJSON too')
  .argument('<folder>', 'where to look for case folders and zips')
  .option('--csv <out.csv>', 'write the list as a table; a second run with it goes on from there')
  .option('--geojson <out.geojson>', 'write the list as points for a map')
  .option('--due <day>', 'only what is due on or before this day: 2027-01-01')
  .option('--jobs <n>', 'how many cases at a time (default: one a core)', wholeFrom(1, 512))
  .addOption(seedOption())
  .addOption(drawsOption())
  .action(
    withOutcome(async (folder: string, options: ListFlags) =>
      (await import('./commands/list.ts')).list(folder, options),
    ),
  );

program
  .command('inventory')
  .description('make a case folder of each tree of a GeoJSON inventory')
  .argument('<trees.geojson>', 'FeatureCollection of points in WGS 84')
  .argument('<folder>', 'folder to make the cases in; it must not exist or be empty')
  .option('--label <property>', 'property that holds the label (default: guessed, and said)')
  .option('--species <property>', 'property that holds the botanical name (default: guessed, and said)')
  .option('--skip-faulty', 'leave out features that are no tree with a position')
  .option('--look', 'say what would be done and write nothing')
  .action(
    withOutcome(async (file: string, folder: string, options: InventoryFlags) =>
      (await import('./commands/inventory.ts')).inventory(file, folder, options),
    ),
  );

program
  .command('accuracy')
  .description('hold predictions against felled sections, over every case below a folder that has one')
  .argument('<folder>', 'where to look for case folders and zips')
  .option('--json', 'print one JSON document')
  .option('--csv <file.csv>', 'write the table of sections')
  .option('--jobs <n>', 'how many cases at a time (default: one a core)', wholeFrom(1, 512))
  .addOption(seedOption())
  .addOption(drawsOption())
  .action(
    withOutcome(async (folder: string, options: AccuracyFlags) =>
      (await import('./commands/accuracy.ts')).accuracy(folder, options),
    ),
  );

interface ZonesFlags {
  json?: boolean;
  bark?: number;
  exit?: number;
  drilling?: string;
}
interface StripFlags {
  chart?: string;
  csv?: string;
  overlay?: string;
  line?: number;
  json?: boolean;
}
interface AssessFlags {
  json?: boolean;
  report?: string;
  html?: string;
  units?: 'metric' | 'us';
  paper?: 'a4' | 'letter';
  language?: 'en' | 'fr';
  wording?: string;
  firm?: string;
  signedOn?: string;
  seed?: number;
  draws?: number;
}
interface CompareFlags {
  json?: boolean;
  report?: string;
  units?: 'metric' | 'us';
  seed?: number;
  draws?: number;
}
interface AccuracyFlags {
  json?: boolean;
  csv?: string;
  jobs?: number;
  seed?: number;
  draws?: number;
}
interface ListFlags {
  csv?: string;
  geojson?: string;
  due?: string;
  jobs?: number;
  seed?: number;
  draws?: number;
}
interface InventoryFlags {
  label?: string;
  species?: string;
  skipFaulty?: boolean;
  look?: boolean;
}
interface BatchFlags {
  out?: string;
  jobs?: number;
  seed?: number;
  draws?: number;
}

try {
  await program.parseAsync();
} catch (error) {
  if (!(error instanceof CommanderError)) throw error;
  // Help and version that were asked for end well; everything else commander refuses is wrong usage.
  process.exitCode = error.exitCode === 0 ? 0 : WRONG_USAGE;
}

function languageOption(): Option {
  return new Option('--language <code>', 'language of the report').choices(['en', 'fr']);
}

function seedOption(): Option {
  return new Option('--seed <n>', 'seed of the random draws; the same seed gives the same result').argParser(
    wholeFrom(-(2 ** 31), 2 ** 31 - 1),
  );
}

function drawsOption(): Option {
  return new Option('--draws <n>', 'how many random draws (200 to 100000)').argParser(
    wholeFrom(200, 100_000),
  );
}

function wholeFrom(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (/^[+-]?\d+$/.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`Give a whole number from ${least} to ${most}.`);
  };
}

function day(text: string): string {
  const found = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : null;
  if (found && !Number.isNaN(found.getTime()) && found.toISOString().startsWith(text)) return text;
  throw new InvalidArgumentError('Give a day as year-month-day, for example 2026-06-20.');
}

function aboveZero(text: string): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value) && value > 0) return value;
  throw new InvalidArgumentError('Give a number above 0.');
}

function atLeastZero(text: string): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value) && value >= 0) return value;
  throw new InvalidArgumentError('Give a number, 0 or more.');
}
