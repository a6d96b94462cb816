/** What reads a photographed strip: a worker that is the photo's alone; stopping it is how a reading is cancelled. */
import type { ChartKnown, ChartSeen, CornersPx, StripProgress, StripReading } from '@standfast/engine';
import { proxy, type Remote } from 'comlink';
import type { OpenPhoto, StripApi, StripOrigin, StripOutcome } from './strip.worker.ts';
import { portion, whileTelling } from './stripProgress.ts';
import { restStripWorker, type StripWorker, takeStripWorker } from './stripWorker.ts';

export type { OpenPhoto, StripOrigin, StripOutcome };

export interface StripReader {
  /** Decodes the photo for the screen. */
  open(onProgress: StripProgress): Promise<StripOutcome<OpenPhoto>>;
  find(onProgress: StripProgress): Promise<StripOutcome<ChartSeen | null>>;
  snap(
    corners: CornersPx,
    onProgress: StripProgress,
  ): Promise<StripOutcome<{ corners: CornersPx; seen: number[] }>>;
  /** Null when it was cancelled. */
  read(
    known: ChartKnown,
    from: StripOrigin,
    onProgress: StripProgress,
  ): Promise<StripOutcome<StripReading> | null>;
  /** Stops the reading under way. */
  cancel(): void;
  close(): void;
}

/** Of the time a photo takes that is opened and then searched or read, what goes into opening it. */
export const SHARE_OF_OPENING = 0.4;

export function stripReader(bytes: Uint8Array, name: string): StripReader {
  let worker: StripWorker | null = null;
  let stopReading: (() => void) | null = null;
  let underWay = 0;

  /** The worker with the photo open, and how to tell what is done next; a cancelled one is made anew. */
  const ready = async (tell: StripProgress): Promise<{ made: Remote<StripApi>; rest: StripProgress }> => {
    if (worker) return { made: worker.remote, rest: tell };
    worker = takeStripWorker();
    const made = worker.remote;
    const opening = portion(tell, 0, SHARE_OF_OPENING);
    const outcome = await made.open(
      bytes,
      name,
      proxy((share, step) => opening(share, `opening the photo again, ${step}`)),
    );
    if (outcome.ok) {
      outcome.value.bitmap.close();
      outcome.value.small.close();
    }
    return { made, rest: portion(tell, SHARE_OF_OPENING, 1) };
  };
  const stop = () => {
    worker?.end();
    worker = null;
    stopReading?.();
    stopReading = null;
  };
  /** Work, with its progress, during which the worker is not at rest. */
  const working = async <T>(
    onProgress: StripProgress,
    work: (tell: StripProgress) => Promise<T>,
  ): Promise<T> => {
    underWay++;
    try {
      return await whileTelling(onProgress, work);
    } finally {
      underWay--;
    }
  };

  return {
    open: (onProgress) =>
      working(onProgress, async (tell) => {
        worker ??= takeStripWorker();
        return (await worker.remote.open(bytes, name, proxy(tell))) as StripOutcome<OpenPhoto>;
      }),
    find: (onProgress) =>
      working(onProgress, async (tell) => {
        const { made, rest } = await ready(tell);
        return made.find(proxy(rest));
      }),
    snap: (corners, onProgress) =>
      working(onProgress, async (tell) => (await ready(tell)).made.snap(corners)),
    read: (known, from, onProgress) => {
      // A stopped worker answers no more, so stopping answers in its place.
      const stopped = new Promise<null>((resolve) => {
        stopReading = () => resolve(null);
      });
      return working(onProgress, async (tell) => {
        const reading = ready(tell).then(
          ({ made, rest }) => made.read(known, from, proxy(rest)) as Promise<StripOutcome<StripReading>>,
        );
        const outcome = await Promise.race([reading, stopped]);
        stopReading = null;
        return outcome;
      });
    },
    cancel: stop,
    close() {
      // One in the middle of something could not take the next photo at once.
      if (!worker || underWay > 0) return stop();
      restStripWorker(worker);
      worker = null;
    },
  };
}
