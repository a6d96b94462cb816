/** The report as one HTML file that needs nothing else: no scripts, no links out, figures as inline SVG. */
import type { Block, PhotoItem, ReportAttachment, ReportDocument } from '../document/blocks.ts';
import type { ReportFonts } from '../fonts.ts';
import type { Picture } from '../picture/picture.ts';
import { escapeXml, toSvg } from '../scene/toSvg.ts';
import { lightTheme } from '../theme.ts';
import { base64, fromBase64 } from './base64.ts';
import { reportCss } from './css.ts';
import { fontFaces } from './fontFaces.ts';

export interface HtmlOptions {
  /**
   * Put the fonts into the file, cut down to the letters it uses (some tens of kilobytes each). Without them the
   * reader's own fonts are taken.
   */
  fonts?: ReportFonts;
  /** Files inside the report, as links that save them; without a script. */
  attachments?: readonly ReportAttachment[];
}

/** The report as the text of an HTML file. Same document and fonts, same text. */
export function toHtml(report: ReportDocument, options: HtmlOptions = {}): string {
  const body = report.blocks.map((b) => block(b, report)).join('\n');
  const [opening, rest] = splitAtFirstHeading(report, body);
  const page = [
    opening === '' ? '' : `<header class="case">\n${letterhead(report)}${opening}\n</header>`,
    '<main>',
    contents(report),
    rest,
    '</main>',
    `<footer>${evidence(report, options.attachments ?? [])}<p>${escapeXml(`${report.producer} · ${report.generatedOn}`)}</p></footer>`,
  ].join('\n');
  const faces =
    options.fonts === undefined ? '' : fontFaces(options.fonts, `${report.title}${lettersOf(page)}`);
  return [
    '<!doctype html>',
    `<html lang="${escapeXml(report.language)}">`,
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeXml(report.title)}</title>`,
    report.author === '' ? '' : `<meta name="author" content="${escapeXml(report.author)}">`,
    `<meta name="generator" content="${escapeXml(report.producer)}">`,
    `<style>${faces}${reportCss}</style>`,
    '</head>',
    '<body>',
    page,
    '</body>',
    '</html>',
    '',
  ]
    .filter((line, i) => line !== '' || i > 12)
    .join('\n');
}

function evidence(report: ReportDocument, attachments: readonly ReportAttachment[]): string {
  if (attachments.length === 0) return '';
  const links = attachments.map(
    ({ name, mime, bytes, description }) =>
      `<li><a download="${escapeXml(name)}" href="data:${mime};base64,${base64(bytes)}">${escapeXml(name)}</a>${description === undefined ? '' : `: ${escapeXml(description)}`}</li>`,
  );
  return `<p>${escapeXml(report.words.evidence)}</p>\n<ul class="evidence">\n${links.join('\n')}\n</ul>\n`;
}

/** A file inside an HTML report, by its name; null where there is none. */
export function attachmentIn(html: string, name: string): Uint8Array | null {
  const begin = `<a download="${name}" href="data:`;
  const at = html.indexOf(begin);
  if (at < 0) return null;
  const from = html.indexOf('base64,', at) + 'base64,'.length;
  return fromBase64(html.slice(from, html.indexOf('"', from)));
}

/** The page without its pictures' bytes: what is searched for letters. */
function lettersOf(page: string): string {
  return page.replace(/base64,[A-Za-z0-9+/=]*/g, '');
}

/** Title and facts stand in the page's header, all from the first numbered heading on in its main part. */
function splitAtFirstHeading(report: ReportDocument, body: string): [string, string] {
  const first = report.blocks.find((b) => b.kind === 'heading');
  if (first === undefined || first.kind !== 'heading') return ['', body];
  const at = body.indexOf(`<h2 data-key="${first.key ?? ''}" id="${first.id}"`);
  return [body.slice(0, at).trim(), body.slice(at)];
}

function contents(report: ReportDocument): string {
  const entries = report.blocks.flatMap((b) =>
    b.kind === 'heading' && b.level === 1
      ? [`<li><a href="#${b.id}">${escapeXml(`${b.number} ${b.text}`)}</a></li>`]
      : [],
  );
  return entries.length === 0
    ? ''
    : `<nav aria-label="${escapeXml(report.words.contents)}"><details><summary>${escapeXml(report.words.contents)}</summary><ol>\n${entries.join('\n')}\n</ol></details></nav>`;
}

function block(b: Block, report: ReportDocument): string {
  const e = escapeXml;
  const html = plainBlock(b, report);
  const keyed = b.key === undefined ? html : html.replace(/^<(\w+)/, `<$1 data-key="${e(b.key)}"`);
  if (b.struck === 'kept') return `${keyed}\n<p class="mark">${e(report.words.kept)}</p>`;
  return keyed;
}

/** Struck text stays legible, with word of it before. */
function struckText(b: Block, report: ReportDocument, html: string): string {
  return b.struck === 'struck'
    ? `<span class="mark">${escapeXml(report.words.struck)}:</span> <s>${html}</s>`
    : html;
}

function plainBlock(b: Block, report: ReportDocument): string {
  const e = escapeXml;
  switch (b.kind) {
    case 'title':
      return `<h1>${e(b.text)}</h1>\n<p class="subtitle">${e(b.subtitle)}</p>${b.marker === undefined ? '' : `\n<p class="marker">${e(b.marker)}</p>`}`;
    case 'heading': {
      const tag = b.level === 1 ? 'h2' : 'h3';
      return `<${tag} id="${b.id}"><span class="n">${b.number}</span>${e(b.text)}</${tag}>`;
    }
    case 'paragraph':
      return `<p${b.tone === 'small' ? ' class="small"' : ''}>${struckText(b, report, e(b.text))}</p>`;
    case 'list':
      return `<ul>\n${b.items.map((item) => `<li>${struckText(b, report, e(item))}</li>`).join('\n')}\n</ul>`;
    case 'keyFigures':
      return `<dl class="key">\n${b.items
        .map(
          (k) =>
            `<div><dt>${e(k.label)}</dt><dd class="v">${e(k.value)}</dd><dd class="i">${e(k.interval)}</dd>` +
            `${k.note === undefined ? '' : `<dd class="o">${e(k.note)}</dd>`}</div>`,
        )
        .join('\n')}\n</dl>`;
    case 'figure': {
      const wide = b.scene.width > b.scene.height * 1.4 ? ' class="wide" tabindex="0"' : '';
      const svg = toSvg(b.scene, { theme: lightTheme, idPrefix: `fig-${b.id}` });
      return `<figure id="${b.id}"${wide} style="--w:${Math.round(b.scene.width * 1.4)}px">\n${svg}\n<figcaption><b>${e(report.words.figure)} ${b.number}.</b> ${e(b.caption)}</figcaption>\n</figure>`;
    }
    case 'table':
      return table(b, report);
    case 'callout':
      return `<div class="callout ${b.severity}" role="note"><strong>${e(b.title)}</strong>${e(b.text)}</div>`;
    case 'definitions':
      return `<dl class="${b.layout}">\n${b.items.map((d) => `<dt>${e(d.term)}</dt><dd>${e(d.text)}</dd>`).join('\n')}\n</dl>`;
    case 'signature':
      return signature(b);
    case 'photos':
      return `<div class="photos">\n${b.items.map((item) => photo(item, report)).join('\n')}\n</div>`;
    case 'addition':
      return `<aside class="added"><p class="mark">${e(b.title)}</p>${b.paragraphs.map((text) => `<p>${e(text)}</p>`).join('')}</aside>`;
    case 'pageBreak':
      return '<div class="break"></div>';
  }
}

function signature({ statement, lines }: Extract<Block, { kind: 'signature' }>): string {
  const e = escapeXml;
  const rows = lines.map(
    ({ label, value, image, alarm }) =>
      `<dt>${e(label)}</dt><dd${alarm ? ' class="alarm"' : ''}>${image === undefined ? e(value) : img(image, label)}</dd>`,
  );
  return `<div class="signature"><p>${e(statement)}</p>\n<dl class="sign">\n${rows.join('\n')}\n</dl></div>`;
}

function photo({ number, caption, facts, picture }: PhotoItem, report: ReportDocument): string {
  const e = escapeXml;
  const shown = picture === null ? '' : img(picture, caption);
  return `<figure class="photo${picture === null ? ' missing' : ''}">${shown}<figcaption><b>${e(report.words.photo)} ${number}.</b> ${e(caption)}<span class="file">${e(facts)}</span></figcaption></figure>`;
}

function img({ kind, bytes, widthPx, heightPx }: Picture, alt: string): string {
  return `<img src="data:image/${kind};base64,${base64(bytes)}" width="${widthPx}" height="${heightPx}" alt="${escapeXml(alt)}">`;
}

function letterhead({ letterhead }: ReportDocument): string {
  if (letterhead === undefined) return '';
  const { lines, logo, logoText } = letterhead;
  const words = lines.map((line) => `<p>${escapeXml(line)}</p>`).join('');
  return `<div class="letterhead">${logo === null ? '' : img(logo, logoText)}<div>${words}</div></div>`;
}

function table(b: Extract<Block, { kind: 'table' }>, report: ReportDocument): string {
  const e = escapeXml;
  const end = (i: number) => (b.columns[i]!.align === 'end' ? ' class="end"' : '');
  const caption = `<b>${e(report.words.table)} ${b.number}.</b> ${e(b.caption)}`;
  const head = b.columns.map((c, i) => `<th scope="col"${end(i)}>${e(c.title)}</th>`).join('');
  const rows = b.rows.map(
    (row) =>
      `<tr>${row.map((cell, i) => (i === 0 ? `<th scope="row"${end(i)}>${e(cell)}</th>` : `<td${end(i)}>${e(cell)}</td>`)).join('')}</tr>`,
  );
  return (
    `<div class="scroll" tabindex="0" role="region" aria-label="${e(b.caption)}"><table>\n<caption>${caption}</caption>\n` +
    `<thead><tr>${head}</tr></thead>\n<tbody>\n${rows.join('\n')}\n</tbody>\n</table></div>`
  );
}
