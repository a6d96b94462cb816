/** The worker that reads photographed strips, one for each photo on screen; stopping it is how a reading is cancelled. */
import type { ChartKnown, ChartSeen, CornersPx, StripProgress, StripReading } from '@standfast/engine';
import { proxy, type Remote, wrap } from 'comlink';
import type { OpenPhoto, StripApi, StripOrigin, StripOutcome } from './strip.worker.ts';
import { portion, whileTelling } from './stripProgress.ts';

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
  let worker: Worker | null = null;
  let remote: Remote<StripApi> | null = null;
  let stopReading: (() => void) | null = null;

  /** The worker with the photo open, and how to tell what is done next; a cancelled one is made anew. */
  const ready = async (tell: StripProgress): Promise<{ made: Remote<StripApi>; rest: StripProgress }> => {
    if (remote) return { made: remote, rest: tell };
    const made = start();
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
    open: (onProgress) =>
      whileTelling(
        onProgress,
        async (tell) => (await (remote ?? start()).open(bytes, name, proxy(tell))) as StripOutcome<OpenPhoto>,
      ),
    find: (onProgress) =>
      whileTelling(onProgress, async (tell) => {
        const { made, rest } = await ready(tell);
        return made.find(proxy(rest));
      }),
    snap: (corners, onProgress) =>
      whileTelling(onProgress, async (tell) => (await ready(tell)).made.snap(corners)),
    read: (known, from, onProgress) => {
      // A stopped worker answers no more, so stopping answers in its place.
      const stopped = new Promise<null>((resolve) => {
        stopReading = () => resolve(null);
      });
      return whileTelling(onProgress, async (tell) => {
        const reading = ready(tell).then(
          ({ made, rest }) => made.read(known, from, proxy(rest)) as Promise<StripOutcome<StripReading>>,
        );
        const outcome = await Promise.race([reading, stopped]);
        stopReading = null;
        return outcome;
      });
    },
    cancel: stop,
    close: stop,
  };
}
