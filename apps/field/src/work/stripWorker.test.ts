import { expose } from 'comlink';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

/** What the worker's end is asked, in the order asked, by the number of the worker. */
let asked: string[];
let workers: number;
let answer: Promise<unknown>;

/** A worker whose other end runs here and only notes what it is asked. */
class NotedWorker {
  private readonly port: MessagePort;
  private readonly number = ++workers;
  constructor() {
    const { port1, port2 } = new MessageChannel();
    this.port = port1;
    const noted = (what: string) => () => {
      asked.push(`${this.number} ${what}`);
      return answer;
    };
    expose(
      Object.fromEntries(['open', 'find', 'read', 'putAway', 'practise'].map((what) => [what, noted(what)])),
      port2,
    );
    port1.start();
  }
  addEventListener = (...what: Parameters<MessagePort['addEventListener']>) =>
    this.port.addEventListener(...what);
  removeEventListener = (...what: Parameters<MessagePort['removeEventListener']>) =>
    this.port.removeEventListener(...what);
  postMessage = (message: unknown, transfer: Transferable[] = []) => this.port.postMessage(message, transfer);
  terminate = () => {
    asked.push(`${this.number} ended`);
    this.port.close();
  };
}

beforeEach(() => {
  asked = [];
  workers = 0;
  answer = Promise.resolve({ ok: true, value: null });
  vi.stubGlobal('Worker', NotedWorker);
  vi.resetModules();
});
afterEach(() => vi.unstubAllGlobals());

const bytes = new Uint8Array(4);
const quietly = () => {};
const settled = () => new Promise((resolve) => setTimeout(resolve, 20));

describe('workers for strips', () => {
  it('practise once, however often a place is looked at', async () => {
    const { practiseStrips } = await import('./stripWorker.ts');
    practiseStrips();
    practiseStrips();
    await settled();
    expect(asked).toEqual(['1 practise']);
  });

  it('serve one photo after the other, put away between them', async () => {
    const { practiseStrips } = await import('./stripWorker.ts');
    const { stripReader } = await import('./strip.ts');
    practiseStrips();
    for (const name of ['a.jpg', 'b.jpg']) {
      const reader = stripReader(bytes, name);
      await reader.open(quietly);
      await reader.find(quietly);
      reader.close();
      await settled();
    }
    expect(asked).toEqual(['1 practise', '1 open', '1 find', '1 putAway', '1 open', '1 find', '1 putAway']);
  });

  it('are ended where a photo is closed in the middle of the work on it', async () => {
    const { stripReader } = await import('./strip.ts');
    const reader = stripReader(bytes, 'a.jpg');
    answer = new Promise(() => {});
    reader.open(quietly);
    await settled();
    reader.close();
    answer = Promise.resolve({ ok: true, value: null });
    await stripReader(bytes, 'b.jpg').open(quietly);
    expect(asked).toEqual(['1 open', '1 ended', '2 open']);
  });

  it('are made anew after a reading was cancelled, and open the photo again', async () => {
    const { stripReader } = await import('./strip.ts');
    const reader = stripReader(bytes, 'a.jpg');
    await reader.open(quietly);
    answer = new Promise(() => {});
    const reading = reader.read({}, { found: null, scaleFrom: null }, quietly);
    await settled();
    reader.cancel();
    expect(await reading).toBeNull();
    answer = Promise.resolve({ ok: false, message: 'no photo' });
    await reader.read({}, { found: null, scaleFrom: null }, quietly);
    expect(asked).toEqual(['1 open', '1 read', '1 ended', '2 open', '2 read']);
  });

  it('never rest two at a time', async () => {
    const { restStripWorker, takeStripWorker } = await import('./stripWorker.ts');
    const [first, second] = [takeStripWorker(), takeStripWorker()];
    restStripWorker(first);
    restStripWorker(second);
    await settled();
    expect(asked).toEqual(['2 ended', '1 putAway']);
    expect(takeStripWorker()).toBe(first);
  });
});
