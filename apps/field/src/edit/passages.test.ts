import { newCase } from '@standfast/casefile';
import { expect, it } from 'vitest';
import { addText, removeText, strikePassage } from './passages.ts';

const empty = newCase('2026-05-14');

it('strikes a passage once and lets it stand again', () => {
  const struck = strikePassage(strikePassage(empty, 'a/1', true), 'a/1', true);
  expect(struck.report).toEqual({ struck: ['a/1'] });
  expect(strikePassage(struck, 'a/1', false)).toEqual(empty);
});

it('adds text and takes it out, leaving all else', () => {
  const before = { ...empty, report: { units: 'us' as const } };
  const once = addText(before, { after: 'a/1', text: 'one' });
  const twice = addText(once, { after: 'a/1', text: 'two' });
  expect(twice.report?.added?.map(({ text }) => text)).toEqual(['one', 'two']);
  expect(removeText(twice, 0).report).toEqual({ units: 'us', added: [{ after: 'a/1', text: 'two' }] });
  expect(removeText(once, 0)).toEqual(before);
});
