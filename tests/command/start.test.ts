/** `npm start`: serves the app, only the app, and stops when told. */
import { type ChildProcess, spawn } from 'node:child_process';
import http from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));

let server: ChildProcess;
let port: number;

/** Starts the server on any free port and waits until it says where it is. */
function start(args: string[]): Promise<{ child: ChildProcess; port: number }> {
  const child = spawn(process.execPath, [path.join(root, 'scripts/start.mjs'), ...args], { cwd: root });
  let printed = '';
  child.stderr.on('data', (text) => {
    printed += text;
  });
  return new Promise((resolve, reject) => {
    child.stdout.on('data', (text) => {
      printed += text;
      const found = /http:\/\/localhost:(\d+)\//.exec(printed);
      if (found) resolve({ child, port: Number(found[1]) });
    });
    child.on('close', (status) => reject(new Error(`ended with ${status}: ${printed}`)));
  });
}

/** Asks for a path as it stands; `fetch` would tidy it first. */
function ask(target: string, options: http.RequestOptions = {}) {
  return new Promise<{ status: number; headers: http.IncomingHttpHeaders; body: string }>(
    (resolve, reject) => {
      const request = http.request({ port, host: '127.0.0.1', path: target, ...options }, (response) => {
        let body = '';
        response.setEncoding('utf8');
        response.on('data', (text) => {
          body += text;
        });
        response.on('end', () => resolve({ status: response.statusCode!, headers: response.headers, body }));
      });
      request.on('error', reject).end();
    },
  );
}

beforeAll(async () => {
  ({ child: server, port } = await start(['--port', '0']));
}, 180_000);
afterAll(() => {
  server.kill('SIGKILL');
});

describe('npm start', () => {
  it('serves the app at its address', async () => {
    const page = await ask('/');
    expect(page).toMatchObject({ status: 200 });
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(page.headers['cache-control']).toBe('no-cache');
    expect(page.body).toMatch(/<title>.*Standfast/);
  });

  it('serves the built files with their types, the hashed ones to keep', async () => {
    const script = /src="\.?(\/assets\/[^"]+\.js)"/.exec((await ask('/')).body)![1]!;
    const { status, headers } = await ask(script);
    expect(status).toBe(200);
    expect(headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect(headers['cache-control']).toMatch(/immutable/);
    const again = await ask(script, { headers: { 'if-none-match': headers.etag } });
    expect(again).toMatchObject({ status: 304, body: '' });
  });

  it('leads other addresses to the app, but not files that are missing', async () => {
    const { status, headers } = await ask('/case/demo/section');
    expect({ status, location: headers.location }).toEqual({ status: 302, location: '/' });
    expect(await ask('/assets/none.js')).toMatchObject({ status: 404 });
  });

  it.each([
    '/../package.json',
    '/..%2fpackage.json',
    '/%2e%2e/%2e%2e/%2e%2e/%2e%2e/etc/passwd',
    '/assets/..%2f..%2f..%2f..%2fpackage.json',
    '/..%5cpackage.json',
    '/%00index.html',
    '/%',
  ])('does not lead out of the app: %s', async (target) => {
    const { status, body } = await ask(target);
    expect(status === 200 ? body : '').not.toMatch(/"workspaces"|root:/);
    if (/package\.json|%00|%$/.test(target)) expect([400, 404]).toContain(status);
  });

  it('answers HEAD without a body and refuses to be written to', async () => {
    const head = await ask('/', { method: 'HEAD' });
    expect(head).toMatchObject({ status: 200, body: '' });
    expect(await ask('/', { method: 'POST' })).toMatchObject({ status: 405 });
  });

  it('refuses a port that is taken when that one was asked for', async () => {
    await expect(start(['--port', String(port)])).rejects.toThrow(/ended with 1: (.*\n)*Port \d+ is taken/);
  });

  it('stops at Ctrl-C with status 0', async () => {
    const { child } = await start(['--port', '0']);
    const ended = new Promise((resolve) => child.once('close', (status) => resolve(status)));
    child.kill('SIGINT');
    expect(await ended).toBe(0);
  });
});
