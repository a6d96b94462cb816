/**
 * Workers for photographed strips. One is kept at rest between photos: a worker started anew would have to load and
 * compile all it needs before it finds the first line, which takes longer than the finding.
 */
import { type Remote, wrap } from 'comlink';
import type { StripApi } from './strip.worker.ts';

export interface StripWorker {
  remote: Remote<StripApi>;
  /** It has read a chart before, or is about to. */
  practised: boolean;
  /** Stops it for good, in the middle of what it does. */
  end(): void;
}

let resting: StripWorker | null = null;

/** The worker at rest, or a new one. */
export function takeStripWorker(): StripWorker {
  const taken = resting ?? started();
  resting = null;
  return taken;
}

/** Gives back a worker that has nothing to do, its photo put away. */
export function restStripWorker(worker: StripWorker): void {
  if (resting) {
    worker.end();
    return;
  }
  resting = worker;
  worker.practised = true;
  worker.remote.putAway();
}

/**
 * Lets the worker at rest practise for the photo that may come: what it has done a few times the browser has compiled.
 * A photo that comes meanwhile waits for a step of it at most.
 */
export function practiseStrips(): void {
  resting ??= started();
  if (resting.practised) return;
  resting.practised = true;
  // A browser that cannot draw the chart to practise on will say so when there is a photo.
  resting.remote.practise().catch(() => {});
}

function started(): StripWorker {
  const worker = new Worker(new URL('./strip.worker.ts', import.meta.url), { type: 'module', name: 'strip' });
  return { remote: wrap<StripApi>(worker), practised: false, end: () => worker.terminate() };
}
