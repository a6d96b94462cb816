import { build } from 'esbuild';
import { expect, it } from 'vitest';

it('makes PDF and HTML in a browser: bundled for one, it asks for nothing of Node', async () => {
  const result = await build({
    stdin: {
      contents: `export { reportDocument, toHtml, toPdf } from '@standfast/report';`,
      resolveDir: import.meta.dirname,
      loader: 'ts',
    },
    bundle: true,
    platform: 'browser',
    format: 'esm',
    write: false,
    metafile: true,
    logLevel: 'silent',
  });
  expect(result.errors).toEqual([]);
  const inputs = Object.keys(result.metafile.inputs);
  expect(inputs.some((path) => path.endsWith('pdfkit/js/pdfkit.browser.mjs'))).toBe(true);
  expect(inputs.filter((path) => path.includes('pdfkit.node') || path.includes('src/node.ts'))).toEqual([]);
});
