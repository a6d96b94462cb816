import { expect, it } from 'vitest';
import { parseCase } from '../schema/parseCase.ts';
import type { CaseFile } from '../schema/schema.ts';
import { checkCase } from './checkCase.ts';

const caseWith = (report: unknown, more: object = {}): CaseFile =>
  parseCase({
    format: 'standfast-case',
    version: 1,
    visitedOn: '2026-06-18',
    assessor: { name: 'Ada' },
    tree: {},
    report,
    ...more,
  }).caseFile;
const said = (caseFile: CaseFile) => {
  const { faults, notices } = checkCase(caseFile);
  return [...faults.map(({ message }) => message), ...notices.map(({ text }) => text)].join('\n');
};

it('takes a letterhead, a signature, what was struck and added', () => {
  const report = {
    units: 'us',
    paper: 'letter',
    letterhead: { lines: ['Firm', 'Street'], logo: 'firm/logo.png' },
    signature: { image: 'firm/signature.png', name: 'Ada', place: 'Larkmere', signedOn: '2026-06-20' },
    struck: ['method/paragraph-1'],
    added: [{ after: 'method/paragraph-1', text: 'More.', by: 'Ada', on: '2026-06-20' }],
    wording: { 'summary.asked': 'x' },
  };
  const caseFile = caseWith(report);
  expect(caseFile.report).toEqual(report);
  expect(said(caseFile)).toBe('');
});

it.each([
  [{ units: 'feet' }, /report\.units/],
  [{ paper: 'a3' }, /report\.paper/],
  [{ signature: { signedOn: '20 June' } }, /report\.signature\.signedOn/],
  [{ added: [{ text: 'x' }] }, /report\.added\[0\]\.after.*key of the passage/],
  [{ struck: [''] }, /report\.struck\[0\]/],
  [{ reduced: [{ photo: 'a.jpg', originalSha256: 'abc', originalBytes: 3 }] }, /originalSha256/],
])('refuses %j', (report, message) => {
  expect(() => caseWith(report)).toThrow(message);
});

it('asks about a signature before the visit, and text by nobody', () => {
  expect(said(caseWith({ signature: { signedOn: '2026-06-01' } }))).toMatch(/before the visit/);
  expect(said(caseWith({ added: [{ after: 'a', text: 'b' }] }, { assessor: {} }))).toMatch(/by whom/);
});

it('refuses a letterhead that leaves no room for the title', () => {
  expect(said(caseWith({ letterhead: { lines: Array(9).fill('x') } }))).toMatch(/at most 6/);
  expect(said(caseWith({ letterhead: { lines: ['x'.repeat(200)] } }))).toMatch(/at most 160/);
});
