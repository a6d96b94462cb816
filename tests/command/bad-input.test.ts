/** Each bad input gets a message that names file and row or field, status 1, and leaves nothing behind. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { zipOfBag } from '@standfast/casefile';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { bagOf, caseJson, caseTraces, soundRows, traceText, writeCase } from './small-case.ts';
import { buildCommand, type Ran, standfast, temporaryFolder } from './standfast.ts';

beforeAll(buildCommand, 120_000);

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

/** The input was at fault: status 1, a message without a stack trace that names these, nothing on standard output. */
function expectFault(ran: Ran, ...named: (string | RegExp)[]): void {
  expect(ran).toMatchObject({ status: 1, out: '' });
  for (const one of named) expect(ran.err).toMatch(one);
  expect(ran.err).not.toMatch(/\n\s+at .*:\d+:\d+|a fault of this program/);
}

/** Assesses a spoilt case both ways; neither may print a result or leave a file. */
function assessSpoilt(place: string, ...named: (string | RegExp)[]): void {
  const before = existsSync(folder.at('out')) ? readdirSync(folder.at('out')) : [];
  mkdirSync(folder.at('out'), { recursive: true });
  const ran = standfast([
    'assess',
    place,
    '--json',
    '--report',
    folder.at('out', 'r.pdf'),
    '--html',
    folder.at('out', 'r.html'),
  ]);
  expectFault(ran, ...named);
  expect(readdirSync(folder.at('out'))).toEqual(before);
}

describe('a trace that cannot be read', () => {
  const zonesOf = (text: string) => {
    writeFileSync(folder.at('trace.csv'), text);
    return standfast(['zones', folder.at('trace.csv'), '--json']);
  };

  it('is missing', () => {
    expectFault(standfast(['zones', folder.at('none.csv'), '--json']), /none\.csv/, /no such file/i);
  });

  it('is a folder', () => {
    expectFault(standfast(['zones', folder.at(), '--json']), /folder/);
  });

  it('is standard input', () => {
    expectFault(standfast(['zones', '-', '--json']), /standard input/i);
  });

  it('is empty', () => {
    expectFault(zonesOf(''), /trace\.csv/, /empty/i);
  });

  it('has a header and no rows', () => {
    expectFault(zonesOf('depth_mm,resistance\n'), /trace\.csv/);
  });

  it('goes backwards in depth', () => {
    const rows = soundRows();
    rows.splice(100, 1, '10.0,40');
    expectFault(zonesOf(traceText(rows)), /trace\.csv/, /102/, /depth/i);
  });

  it('holds what is no number', () => {
    const rows = soundRows();
    rows.splice(50, 1, '25.0,NaN');
    expectFault(zonesOf(traceText(rows)), /trace\.csv/, /52/, /NaN/);
  });

  it('holds text and no numbers', () => {
    expectFault(zonesOf('a letter\nto a client\n'), /trace\.csv/);
  });

  it('is a picture', () => {
    writeFileSync(
      folder.at('photo.csv'),
      Buffer.from(Array.from({ length: 4096 }, (_, i) => (i * 37) % 256)),
    );
    expectFault(standfast(['zones', folder.at('photo.csv'), '--json']), /photo\.csv/);
  });
});

describe('a section that makes no sense', () => {
  const sectionOf = (text: string) => {
    writeFileSync(folder.at('section.json'), text);
    return standfast(['section', folder.at('section.json'), '--json']);
  };

  it('is broken JSON', () => {
    expectFault(sectionOf('{"outline": {"kind": "circle",}'), /section\.json/, /line 1, column 31/);
  });

  it('has an outline that crosses itself', () => {
    const bowTie = [
      [0, 0],
      [100, 100],
      [100, 0],
      [0, 100],
    ];
    expectFault(
      sectionOf(JSON.stringify({ outline: { kind: 'polygon', points: bowTie }, voids: [] })),
      /cross/,
    );
  });

  it('has a diameter that is no number', () => {
    const text = JSON.stringify({ outline: { kind: 'circle', diameterMm: 'wide' }, voids: [] });
    expectFault(sectionOf(text), /section\.json/, /diameterMm/);
  });

  it('has no outline', () => {
    expectFault(sectionOf('{"voids": []}'), /section\.json/, /outline/);
  });
});

describe('a case that cannot be assessed', () => {
  it('is missing', () => assessSpoilt(folder.at('none'), /none/, /no such file or folder/i));

  it('is an empty folder', () => {
    mkdirSync(folder.at('case'));
    assessSpoilt(folder.at('case'), /case\.json/);
  });

  it('is broken JSON', () => {
    writeCase(folder.at('case'), '{"format": "standfast-case", "version": 1,\n "tree": }');
    assessSpoilt(folder.at('case'), /case\.json/, /line 2/);
  });

  it('is of a newer version', () => {
    writeCase(folder.at('case'), { ...caseJson(), version: 999 });
    assessSpoilt(folder.at('case'), /case\.json/, /999/, /version/);
  });

  it('is JSON of another kind', () => {
    writeCase(folder.at('case'), { ...caseJson(), format: 'something-else' });
    assessSpoilt(folder.at('case'), /case\.json/, /something-else/);
  });

  it('names a trace that is not there', () => {
    const { 'traces/d2.csv': _, ...others } = caseTraces();
    writeCase(folder.at('case'), caseJson(), others);
    assessSpoilt(folder.at('case'), /traces\/d2\.csv/, /drillings\[1\]|d2/);
  });

  it('names a trace outside the case', () => {
    const json = caseJson();
    json.sections[0]!.drillings[0]!.trace = '../../secret.csv';
    writeCase(folder.at('case'), json);
    assessSpoilt(folder.at('case'), /drillings\[0\]/, /\.\./);
  });

  it('has a trace whose depth goes backwards', () => {
    const rows = soundRows();
    rows.splice(60, 1, '1.0,40');
    writeCase(folder.at('case'), caseJson(), { ...caseTraces(), 'traces/d3.csv': traceText(rows) });
    assessSpoilt(folder.at('case'), /traces\/d3\.csv/, /62/);
  });

  it('has a drilling outside the outline', () => {
    const json = caseJson();
    // Heading away from the stem, the needle never enters it.
    json.sections[0]!.drillings[0]!.offRadialDeg = 120;
    writeCase(folder.at('case'), json);
    assessSpoilt(folder.at('case'), /d1|drillings\[0\]/, /outline|stem/);
  });

  it('has an outline that crosses itself', () => {
    const json = caseJson();
    json.sections[0]!.outline = {
      kind: 'polygon',
      points: [
        [-300, -300],
        [300, 300],
        [300, -300],
        [-300, 300],
      ],
    };
    writeCase(folder.at('case'), json);
    assessSpoilt(folder.at('case'), /sections\[0\]\.outline|sections\.s1/, /cross/);
  });

  it('is a zip with paths that climb out', () => {
    const zip = zipOfBag(bagOf(caseJson(), { ...caseTraces(), 'XX/evil.csv': 'x' }));
    // Names lie open in a zip; one of the same length can stand in for another.
    const text = Buffer.from(zip).toString('latin1').replaceAll('XX/evil.csv', '../evil.csv');
    writeFileSync(folder.at('case.zip'), Buffer.from(text, 'latin1'));
    assessSpoilt(folder.at('case.zip'), /case\.zip/, /\.\./);
    expect(existsSync(folder.at('evil.csv'))).toBe(false);
  });

  it('is a zip that breaks off', () => {
    const whole = zipOfBag(bagOf(caseJson()));
    writeFileSync(folder.at('case.zip'), whole.subarray(0, whole.length - 30));
    assessSpoilt(folder.at('case.zip'), /case\.zip/);
  });

  it('is neither folder nor zip', () => {
    writeFileSync(folder.at('case.txt'), 'a note');
    assessSpoilt(folder.at('case.txt'), /case\.txt/);
  });
});

describe('a case that is thin but can be assessed', () => {
  const assessed = (json: unknown) => {
    writeCase(folder.at('case'), json);
    const ran = standfast(['assess', folder.at('case'), '--json', '--draws', '400']);
    expect(ran.status, ran.err).toBe(0);
    return JSON.parse(ran.out) as {
      notices: { severity: string; where: string; text: string }[];
      sections: { remaining: { p05: number; p95: number }[] }[];
    };
  };

  it('takes an unknown species with wide defaults and says so', () => {
    const json = caseJson();
    json.tree.species = 'Arbor incognita';
    const { notices } = assessed(json);
    expect(notices.filter(({ severity }) => severity !== 'note').map(({ text }) => text)).toContainEqual(
      expect.stringContaining('Arbor incognita'),
    );
  });

  it('takes a single drilling, says that it is thin, and is less sure than with four', () => {
    const spread = (document: ReturnType<typeof assessed>) =>
      Math.max(...document.sections[0]!.remaining.map(({ p05, p95 }) => p95 - p05));
    const four = assessed(caseJson());
    const json = caseJson();
    json.sections[0]!.drillings.splice(1);
    const one = assessed(json);
    expect(spread(one)).toBeGreaterThan(spread(four));
    expect(one.notices.filter(({ severity }) => severity !== 'note').length).toBeGreaterThan(
      four.notices.filter(({ severity }) => severity !== 'note').length,
    );
  });
});

describe('a place where nothing can be written', () => {
  beforeEach(() => writeCase(folder.at('case'), caseJson()));

  const reportTo = (file: string) => standfast(['assess', folder.at('case'), '--json', '--report', file]);

  it('is a folder', () => {
    expectFault(reportTo(folder.at()), /folder/);
  });

  it('is standard output', () => {
    expectFault(reportTo('-'), /standard output/);
    expectFault(standfast(['demo', '-']), /name of one/);
  });

  it('has no folder', () => {
    expectFault(reportTo(folder.at('none', 'r.pdf')), /none/, /does not exist/);
  });

  it('is the case itself', () => {
    const before = readFileSync(folder.at('case', 'case.json'));
    expectFault(reportTo(folder.at('case', 'case.json')), /overwrite/);
    expect(readFileSync(folder.at('case', 'case.json'))).toEqual(before);
  });

  it('is one of the traces of the case', () => {
    expectFault(reportTo(folder.at('case', 'traces', 'd1.csv')), /overwrite/);
  });

  it('is a folder that is not empty, for the demonstration', () => {
    expectFault(standfast(['demo', folder.at('case')]), /not empty/);
    expect(readdirSync(folder.at('case')).sort()).toEqual(['case.json', 'traces']);
  });

  it('is a file, for the demonstration', () => {
    expectFault(standfast(['demo', folder.at('case', 'case.json')]), /file/);
  });
});

describe('wrong usage', () => {
  it.each([
    { args: [] },
    { args: ['fly'] },
    { args: ['zones'] },
    { args: ['zones', 'a.csv', 'b.csv'] },
    { args: ['assess', 'x', '--wings'] },
    { args: ['assess', 'x', '--draws', 'many'] },
    { args: ['assess', 'x', '--seed', '1.5'] },
    { args: ['assess', 'x', '--report'] },
    { args: ['batch', 'x', '--jobs', '0'] },
    { args: ['zones', 'x', '--bark', '-3'] },
  ])('standfast $args ends with 2', ({ args }) => {
    const ran = standfast(args);
    expect(ran).toMatchObject({ status: 2, out: '' });
    expect(ran.err).not.toBe('');
  });

  it('names one file twice', () => {
    writeCase(folder.at('case'), caseJson());
    const ran = standfast(['assess', folder.at('case'), '--report', 'same', '--html', 'same']);
    expect(ran).toMatchObject({ status: 2, out: '' });
  });

  it('asks for help or the version, which is no fault', () => {
    expect(standfast(['--help'])).toMatchObject({ status: 0, err: '' });
    expect(standfast(['assess', '--help'])).toMatchObject({ status: 0, err: '' });
    expect(standfast(['--version']).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});
