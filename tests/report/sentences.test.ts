/** The catalogue of the engine's sentences against the engine itself: nothing it can say may lack its template. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import * as tables from '../../packages/engine/src/reference/tables.generated.ts';
import { LANGUAGES } from '../../packages/report/src/words/languages.ts';
import { placesOf } from '../../packages/report/src/words/recognise.ts';
import { englishSentences } from '../../packages/report/src/words/sentences/en.ts';
import { frenchSourcePhrases } from '../../packages/report/src/words/sources/fr.ts';
import { frenchTableTexts } from '../../packages/report/src/words/tables/fr.ts';

const root = path.resolve(import.meta.dirname, '../..');
const others = Object.entries(LANGUAGES).filter(([code]) => code !== 'en');

/** Columns of the tables that are read by people; every other column is a name, a number, a pattern or a source. */
const PROSE_COLUMNS = ['meaning', 'text', 'what', 'limits', 'note', 'position', 'why', 'validity'];
/** Tables whose prose stays inside the engine: it is printed nowhere. */
const NOT_PRINTED = new Set(['pruningEvidence', 'dragMeasured', 'drag', 'crownShapes', 'woodCov']);

describe.each(others)('the tables in %s', (_, language) => {
  it('have words for every prose cell', () => {
    const cells = Object.entries(tables)
      .filter(([name, rows]) => Array.isArray(rows) && !NOT_PRINTED.has(name) && !name.startsWith('field'))
      .flatMap(([, rows]) =>
        (rows as readonly Record<string, unknown>[]).flatMap((row) =>
          PROSE_COLUMNS.map((column) => row[column]),
        ),
      )
      .filter((cell): cell is string => typeof cell === 'string' && cell !== '');
    expect(cells.length).toBeGreaterThan(150);
    expect([...new Set(cells)].filter((cell) => language.tableTexts[cell] === undefined)).toEqual([]);
  });

  it('keep every place of every sentence', () => {
    for (const [room, entries] of Object.entries(englishSentences))
      for (const [name, english] of Object.entries(entries) as [string, string][]) {
        const said = (language.sentences as Record<string, Record<string, string>>)[room]![name]!;
        expect([room, name, placesOf(said).sort()]).toEqual([room, name, placesOf(english).sort()]);
      }
  });
});

describe('the catalogue', () => {
  const catalogue = [
    ...Object.values(englishSentences).flatMap((entries) => Object.values(entries) as string[]),
    ...Object.keys(frenchTableTexts),
    ...frenchSourcePhrases.map(([english]) => english),
  ];

  it.each(['engine', 'casefile'])('holds whatever %s can say', (name) => {
    const unsaid = proseOf(path.join(root, 'packages', name, 'src')).filter(
      ({ text }) => !REFUSALS.has(text) && !catalogue.some((known) => known.includes(text)),
    );
    expect(unsaid.map(({ file, text }) => `${file}: ${text}`)).toEqual([]);
  });
});

/**
 * Folders and files that say nothing which a report prints in those words: photos of strips and the notes on them,
 * tables, checks that refuse an input, the section command; the chapter on change is worded by the report itself.
 */
const SILENT =
  /testing|\.test\.ts$|generated|[/\\](strip|table|bag|list|firm|node|field|schema|change)[/\\]|node\.ts$|readTraceTable|section-input|section[/\\](properties|wood)\.ts$/;
/** What is said where a case is refused, put together away from the refusal. */
const REFUSALS = new Set(['open that folder', 'open a case folder or its zip']);
/** Calls whose words are names or refusals, never part of a report. */
const NOT_SAID = /Fault|Error|^constant$|^sourced$|ruleValue|fork|^beliefOf$|\.test$|RegExp|include|^opt$/;

/** A unit at the edge of a stretch belongs to the number beside it. */
const UNITS = /^[^\p{L}]*?(?:m\/s|mm|cm|m|MPa|kN·m|%)(?=\W)|^\W+|\W+$/gu;

/** Stretches of fixed text, of three words or more, in string literals that may be said. */
function proseOf(folder: string): { file: string; text: string }[] {
  return filesIn(folder).flatMap((file) => {
    const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
    const found: { file: string; text: string }[] = [];
    const visit = (node: ts.Node): void => {
      if (
        ts.isImportDeclaration(node) ||
        ts.isTypeNode(node) ||
        (ts.isPropertyName(node) && !ts.isComputedPropertyName(node))
      )
        return;
      if ((ts.isNewExpression(node) || ts.isCallExpression(node)) && NOT_SAID.test(node.expression.getText()))
        return;
      if (
        ts.isStringLiteralLike(node) ||
        ts.isTemplateHead(node) ||
        ts.isTemplateMiddleOrTemplateTail(node)
      ) {
        const text = node.text.replace(UNITS, '').trim();
        if (/[a-z]+ [a-z]+ [a-z]+/.test(text)) found.push({ file: path.relative(root, file), text });
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
    return found;
  });
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => path.join(entry.parentPath, entry.name))
    .filter((file) => !SILENT.test(file));
}
