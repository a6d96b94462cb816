/** An HTML report held against the one recomputed, part by part. */
import { type Compared, differingLines, type PageDifference, readingOtherwise } from './differences.ts';

/** Line ends may change on the way by mail; nothing else may. */
const settled = (html: string) => html.replace(/\r\n/g, '\n').trimEnd();

/** Compares the parts of two files: what stands before the first chapter, then chapter by chapter. */
export function compareHtml(html: string, recomputed: string): Compared<PageDifference> {
  const [has, wanted] = [partsOf(settled(html)), partsOf(settled(recomputed))];
  const compared = Math.max(has.length, wanted.length);
  const unlike: PageDifference[] = [];
  for (let i = 0; i < compared; i++)
    if (has[i] !== wanted[i]) unlike.push(differingLines(i + 1, linesOf(has[i]), linesOf(wanted[i])));
  return { compared, differing: readingOtherwise(unlike) };
}

function partsOf(html: string): string[] {
  return html.split(/(?=<h2 )/);
}

const NAMED: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"' };

/** The words of a part, one line for each piece of text between tags; words of drawings too, styles not. */
function linesOf(part: string | undefined): string[] {
  return (part ?? '')
    .replace(/<style>[\s\S]*?<\/style>/g, '')
    .split(/<[^>]*>/)
    .map((text) => text.replace(/&(amp|lt|gt|quot);/g, (_, name: string) => NAMED[name]!).trim())
    .filter((text) => text !== '');
}
