/** Whether two PDFs say and show the same, whatever their objects are numbered and however they are packed. */
import { isName, isRef, isStream, isText, type PdfFile, type PdfValue } from './readPdf.ts';

/** Led elsewhere, or only how it is packed. */
const PASSED_OVER = new Set(['Parent', 'Length', 'Filter', 'Names', 'AF']);

/** Compares two values of two files to the end of all references. */
export function sameDeep(a: PdfFile, va: PdfValue, b: PdfFile, vb: PdfValue): boolean {
  const seen = new Set<string>();
  return same(va, vb);
  function same(x: PdfValue | undefined, y: PdfValue | undefined): boolean {
    if (isRef(x) && isRef(y)) {
      const pair = `${x.ref} ${y.ref}`;
      if (seen.has(pair)) return true;
      seen.add(pair);
    }
    const [p, q] = [a.get(x), b.get(y)];
    if (isStream(p) && isStream(q))
      return (
        p.bytes.length === q.bytes.length &&
        p.bytes.every((byte, i) => byte === q.bytes[i]) &&
        same(p.dict, q.dict)
      );
    if (p instanceof Map && q instanceof Map) {
      const keys = new Set([...p.keys(), ...q.keys()]);
      return [...keys].every((key) => PASSED_OVER.has(key) || same(p.get(key), q.get(key)));
    }
    if (Array.isArray(p) && Array.isArray(q))
      return p.length === q.length && p.every((one, i) => same(one, q[i]));
    if (isName(p) && isName(q)) return p.name === q.name;
    if (isText(p) && isText(q)) return p.text === q.text;
    return p === q;
  }
}
