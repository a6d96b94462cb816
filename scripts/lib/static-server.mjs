/** A small server for the built app: files below one folder, nothing else, for this machine only. */
import { createReadStream } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';

const TYPES = /** @type {Record<string, string>} */ ({
  '.css': 'text/css; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.jpeg': 'image/jpeg',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.md': 'text/markdown; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.pdf': 'application/pdf',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.webp': 'image/webp',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.zip': 'application/zip',
});

/** Built files whose name carries a hash of their content never change; all others are asked for anew. */
const HASHED_NAME = /[-.][A-Za-z0-9_-]{8,}\.[a-z0-9]+$/;

/**
 * @param {string} folder what to serve
 * @returns {import('node:http').Server}
 */
export function staticServer(folder) {
  return createServer((request, response) => {
    answer(folder, request, response).catch(() => {
      if (!response.headersSent) end(response, 500, 'Could not read that file.');
      else response.destroy();
    });
  });
}

/**
 * @param {string} folder
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 */
async function answer(folder, request, response) {
  response.setHeader('X-Content-Type-Options', 'nosniff');
  response.setHeader('Referrer-Policy', 'no-referrer');
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return end(response, 405, 'Only GET and HEAD are answered here.');
  }
  const asked = pathAsked(request.url ?? '/');
  if (asked === null) return end(response, 400, 'That address cannot be read.');
  const file = await fileBelow(folder, asked);
  if (!file && wantsPage(asked)) {
    response.setHeader('Location', '/');
    return end(response, 302, 'The app is at /.');
  }
  if (!file) return end(response, 404, 'There is no such file.');

  const { name, size, modified } = file;
  const tag = `"${size.toString(36)}-${modified.toString(36)}"`;
  response.setHeader('ETag', tag);
  const lasting = path.dirname(asked).startsWith('/assets') && HASHED_NAME.test(name);
  response.setHeader('Cache-Control', lasting ? 'public, max-age=31536000, immutable' : 'no-cache');
  if (request.headers['if-none-match'] === tag) return response.writeHead(304).end();
  response.setHeader('Content-Type', TYPES[path.extname(name).toLowerCase()] ?? 'application/octet-stream');
  response.setHeader('Content-Length', size);
  response.writeHead(200);
  if (request.method === 'HEAD') return response.end();
  // A browser that goes away before the end is no fault.
  await pipeline(createReadStream(name), response).catch(() => {});
}

/**
 * @param {string} url
 * @returns {string | null} the path asked for, decoded; null when it is malformed
 */
function pathAsked(url) {
  try {
    const decoded = decodeURIComponent(new URL(url, 'http://localhost').pathname);
    return decoded.includes('\0') ? null : decoded;
  } catch {
    return null;
  }
}

/** What has no file ending is meant for a page, and the app has one: it keeps its places behind the # of its address. */
const wantsPage = (/** @type {string} */ asked) => path.extname(asked) === '';

/**
 * The file asked for, if it truly lies below the folder (links followed).
 * @param {string} folder
 * @param {string} asked
 */
async function fileBelow(folder, asked) {
  try {
    const base = await realpath(folder);
    let name = await realpath(path.join(base, asked));
    let found = await stat(name);
    if (found.isDirectory()) {
      name = path.join(name, 'index.html');
      found = await stat(name);
    }
    if (!found.isFile() || !name.startsWith(base + path.sep)) return null;
    return { name, size: found.size, modified: Math.trunc(found.mtimeMs) };
  } catch {
    return null;
  }
}

/**
 * @param {import('node:http').ServerResponse} response
 * @param {number} status
 * @param {string} text
 */
function end(response, status, text) {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' }).end(`${text}\n`);
}

/**
 * Listens on the wanted port of this machine or, when `orNext`, on the next free one after it.
 * @param {import('node:http').Server} server
 * @param {{ port: number, host: string, orNext: boolean }} where
 * @returns {Promise<number>} the port taken
 */
export async function listen(server, { port, host, orNext }) {
  for (let candidate = port; ; candidate++) {
    try {
      await new Promise((resolve, reject) => {
        server.once('error', reject);
        server.listen(candidate, host, () => resolve(server.off('error', reject)));
      });
      const address = server.address();
      return typeof address === 'object' && address ? address.port : candidate;
    } catch (error) {
      const taken = /** @type {NodeJS.ErrnoException} */ (error).code === 'EADDRINUSE';
      if (!taken || !orNext || candidate >= port + 100) throw error;
    }
  }
}
