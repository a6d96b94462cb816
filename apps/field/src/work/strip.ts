/** The worker that reads photographed strips, one for each photo on screen; stopping it is how a reading is cancelled. */
import type {
  ChartFound,
  ChartKnown,
  ChartSeen,
  CornersPx,
  StripProgress,
  StripReading,
} from '@standfast/engine';
import { proxy, type Remote, wrap } from 'comlink';
import type { OpenPhoto, StripApi, StripOutcome } from './strip.worker.ts';

export type { OpenPhoto, StripOutcome };

export interface StripReader {
  /** Decodes the photo for the screen. */
  open(): Promise<StripOutcome<OpenPhoto>>;
  find(): Promise<StripOutcome<ChartSeen | null>>;
  snap(corners: CornersPx): Promise<StripOutcome<{ corners: CornersPx; seen: number[] }>>;
  /** Null when it was cancelled. */
  read(
    known: ChartKnown,
    found: ChartFound | null,
    onProgress: StripProgress,
  ): Promise<StripOutcome<StripReading> | null>;
  /** Stops the reading under way. */
  cancel(): void;
  close(): void;
}

export function stripReader(bytes: Uint8Array, name: string): StripReader {
  let worker: Worker | null = null;
  let remote: Remote<StripApi> | null = null;
  let stopReading: (() => void) | null = null;

  /** The worker with the photo open; a cancelled one is made anew. */
  const ready = async (): Promise<Remote<StripApi>> => {
    if (remote) return remote;
    const made = start();
    const outcome = await made.open(bytes, name);
    if (outcome.ok) {
      outcome.value.bitmap.close();
      outcome.value.small.close();
    }
    return made;
  };
  const start = (): Remote<StripApi> => {
    worker = new Worker(new URL('./strip.worker.ts', import.meta.url), { type: 'module', name: 'strip' });
    remote = wrap<StripApi>(worker);
    return remote;
  };
  const stop = () => {
    worker?.terminate();
    worker = null;
    remote = null;
    stopReading?.();
    stopReading = null;
  };

  return {
    open: () => (remote ?? start()).open(bytes, name),
    find: async () => (await ready()).find(),
    snap: async (corners) => (await ready()).snap(corners),
    read: async (known, found, onProgress) => {
      // A stopped worker answers no more, so stopping answers in its place.
      const stopped = new Promise<null>((resolve) => {
        stopReading = () => resolve(null);
      });
      // What was told before it was stopped may come in after.
      let over = false;
      const tell: StripProgress = (share, step) => {
        if (!over) onProgress(share, step);
      };
      const reading = ready().then(
        (made) => made.read(known, found, proxy(tell)) as Promise<StripOutcome<StripReading>>,
      );
      const outcome = await Promise.race([reading, stopped]);
      over = true;
      stopReading = null;
      return outcome;
    },
    cancel: stop,
    close: stop,
  };
}
