import { expect, it } from 'vitest';
import { parseCase } from '../schema/parseCase.ts';
import { parseFirm, withFirm } from './firm.ts';

const logo = new Uint8Array([1, 2, 3]);
const files = new Map([
  ['logo.png', logo],
  ['ada.png', new Uint8Array([4])],
]);
const firm = parseFirm(
  {
    units: 'us',
    letterhead: { lines: ['Firm'], logo: 'logo.png' },
    signature: { image: 'ada.png', name: 'Ada' },
    wording: { a: 'firm', b: 'firm' },
    assessor: { name: 'Ada', firm: 'Firm' },
  },
  files,
);
const caseOf = (report?: object) =>
  parseCase({ format: 'standfast-case', version: 1, tree: {}, ...(report ? { report } : {}) }).caseFile;

it('fills what the case leaves out, and takes the pictures along', () => {
  const { caseFile, bag } = withFirm(caseOf(), new Map(), firm);
  expect(caseFile.report).toEqual({
    units: 'us',
    letterhead: { lines: ['Firm'], logo: 'report/logo.png' },
    signature: { image: 'report/ada.png', name: 'Ada' },
    wording: { a: 'firm', b: 'firm' },
  });
  expect(caseFile.assessor).toEqual({ name: 'Ada', firm: 'Firm' });
  expect(bag.get('report/logo.png')).toEqual(logo);
  expect(parseCase(bag.get('case.json')!).caseFile).toEqual(caseFile);
});

it('leaves what the case says', () => {
  const own = {
    units: 'metric',
    letterhead: { lines: ['Own'] },
    signature: { name: 'Bo', signedOn: '2026-06-20' },
    struck: ['x'],
    wording: { a: 'case' },
  };
  const { caseFile, bag } = withFirm(caseOf(own), new Map(), firm);
  expect(caseFile.report).toEqual({
    ...own,
    signature: { name: 'Bo', signedOn: '2026-06-20', image: 'report/ada.png' },
    wording: { a: 'case', b: 'firm' },
  });
  expect(bag.has('report/logo.png')).toBe(false);
});

it('does not overwrite a picture of the case with the same name', () => {
  const bag = new Map([['report/logo.png', new Uint8Array([9])]]);
  const filled = withFirm(caseOf(), bag, firm);
  expect(filled.caseFile.report?.letterhead?.logo).toBe('report/2-logo.png');
  expect(filled.bag.get('report/logo.png')).toEqual(new Uint8Array([9]));
});

it('gives the same case twice', () => {
  const once = withFirm(caseOf(), new Map(), firm);
  expect(withFirm(once.caseFile, once.bag, firm)).toEqual(once);
});

it.each([
  ['{', 'firm.json', /not valid JSON/],
  ['[]', 'firm.json', /should hold an object/],
  ['{"units": "feet"}', 'firm.json: units', /./],
  ['{"struck": []}', 'firm.json: struck', /belongs to one case/],
  ['{"signature": {"signedOn": "2026-01-01"}}', 'firm.json: signature.signedOn', /cannot sign/],
  ['{"letterhead": {"logo": "gone.png"}}', 'firm.json: letterhead.logo', /gone\.png, which is not there/],
  ['{"letterhead": {"logo": "../x.png"}}', 'firm.json: letterhead.logo', /climbs out/],
])('refuses %s', (json, where, message) => {
  let thrown: unknown;
  try {
    parseFirm(json, files);
  } catch (error) {
    thrown = error;
  }
  const fault = (thrown as { faults?: { where: string; what: string }[] }).faults?.[0] ?? thrown;
  expect(fault).toMatchObject({ where });
  expect((fault as { what: string }).what).toMatch(message);
});
