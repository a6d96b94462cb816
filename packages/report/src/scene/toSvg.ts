/** Prints a scene as one SVG element, for the screen and for the HTML report. */
import { colourOf, fontFamilies, lightTheme, type Theme } from '../theme.ts';
import { coordinate } from './marks.ts';
import type { Meaning, PathMark, Scene, SceneItem, TextMark } from './scene.ts';

export interface SvgOptions {
  theme?: Theme;
  /** Starts every id in the SVG, so that several fit one page. Default `figure`. */
  idPrefix?: string;
  /** Let the drawing scale to its container's width instead of fixing it in px. */
  fluid?: boolean;
}

/**
 * The scene as an `<svg role="img">` string with its title and description as accessible name. Same scene and
 * options, same bytes.
 */
export function toSvg(scene: Scene, options: SvgOptions = {}): string {
  const { theme = lightTheme, idPrefix = 'figure', fluid = false } = options;
  const body = bodyOf(scene, theme, idPrefix);
  const [w, h] = [coordinate(scene.width), coordinate(scene.height)];
  const size = fluid ? `style="width:100%;max-width:${w}px;height:auto"` : `width="${w}" height="${h}"`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${w} ${h}" ${size} role="img" ` +
    `aria-labelledby="${idPrefix}-title" aria-describedby="${idPrefix}-desc" ` +
    `font-family="${fontFamilies.text}" font-variant-numeric="tabular-nums lining-nums">` +
    `<title id="${idPrefix}-title">${escapeXml(scene.title)}</title>` +
    `<desc id="${idPrefix}-desc">${escapeXml(scene.description)}</desc>` +
    `${body}</svg>`
  );
}

/** Text made safe for SVG and HTML, in content and in double-quoted attributes. */
export function escapeXml(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

function bodyOf(scene: Scene, theme: Theme, prefix: string): string {
  let clips = 0;
  const print = (item: SceneItem): string => {
    if (item.kind === 'path') return pathOf(item, theme);
    if (item.kind === 'text') return textOf(item, theme);
    if (item.clip === undefined)
      return `<g${meaning(item)}>${title(item)}${item.items.map(print).join('')}</g>`;
    const id = `${prefix}-clip${++clips}`;
    return (
      `<g${meaning(item)} clip-path="url(#${id})">${title(item)}` +
      `<clipPath id="${id}"><path d="${item.clip}"/></clipPath>${item.items.map(print).join('')}</g>`
    );
  };
  return scene.items.map(print).join('');
}

function pathOf(mark: PathMark, theme: Theme): string {
  const attributes = [
    ` d="${mark.d}"`,
    ` fill="${mark.fill === undefined ? 'none' : colourOf(mark.fill, theme)}"`,
    mark.stroke === undefined
      ? ''
      : ` stroke="${colourOf(mark.stroke, theme)}" stroke-width="${coordinate(mark.width ?? 0.75)}"`,
    mark.dash === undefined ? '' : ` stroke-dasharray="${mark.dash.map(coordinate).join(' ')}"`,
    mark.cap === undefined ? '' : ` stroke-linecap="${mark.cap}"`,
    mark.join === undefined ? '' : ` stroke-linejoin="${mark.join}"`,
    mark.evenOdd ? ' fill-rule="evenodd"' : '',
    mark.opacity === undefined ? '' : ` opacity="${coordinate(mark.opacity)}"`,
  ].join('');
  const inner = title(mark);
  return inner === ''
    ? `<path${meaning(mark)}${attributes}/>`
    : `<path${meaning(mark)}${attributes}>${inner}</path>`;
}

function textOf(mark: TextMark, theme: Theme): string {
  const family = mark.face === 'heading' ? ` font-family="${fontFamilies.heading}"` : '';
  const weight = mark.face === 'regular' ? '' : ' font-weight="600"';
  const anchor = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`;
  const [x, y] = [coordinate(mark.x), coordinate(mark.y)];
  const turn = mark.rotateDeg ? ` transform="rotate(${coordinate(mark.rotateDeg)} ${x} ${y})"` : '';
  return (
    `<text${meaning(mark)} x="${x}" y="${y}" font-size="${coordinate(mark.size)}"${family}${weight}${anchor}` +
    ` fill="${colourOf(mark.fill, theme)}"${turn}>${title(mark)}${escapeXml(mark.text)}</text>`
  );
}

function meaning(item: Meaning): string {
  const part = item.part === undefined ? '' : ` data-part="${escapeXml(item.part)}"`;
  const ref = item.ref === undefined ? '' : ` data-ref="${escapeXml(item.ref)}"`;
  return part + ref;
}

function title(item: Meaning): string {
  return item.title === undefined ? '' : `<title>${escapeXml(item.title)}</title>`;
}
