/** A document with the spaces that the type of its language asks for. Only what is read is touched: no keys, no paths of drawings. */
import { language } from './spoken.ts';

const READ = new Set([
  'text',
  'caption',
  'title',
  'subtitle',
  'marker',
  'items',
  'term',
  'label',
  'value',
  'interval',
  'note',
  'rows',
  'statement',
  'paragraphs',
  'description',
  'lines',
]);

export function spaced<Document>(document: Document): Document {
  const { spacing } = language().numbers;
  const walk = (value: unknown, read: boolean): unknown => {
    if (typeof value === 'string') return read ? spacing(value) : value;
    if (Array.isArray(value)) return value.map((one) => walk(one, read));
    if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, walk(one, READ.has(key))]));
  };
  return walk(document, false) as Document;
}
