/**
 * One writer a case. The first tab that opens a case holds its lock; another tab reads along, and takes over when the
 * first lets go or when the person asks for it. Where Web Locks are missing every tab is taken as the writer.
 */

export interface WriterLock {
  /** Takes the lock from whoever holds it. */
  takeOver(): void;
  /** Lets go for good. */
  release(): void;
}

/**
 * Asks for a case's lock and reports each change: true when this tab may write. Reports once soon after the call.
 */
export function lockForWriting(caseId: string, onChange: (writer: boolean) => void): WriterLock {
  const locks = navigator.locks as LockManager | undefined;
  if (!locks) {
    onChange(true);
    return { takeOver: () => {}, release: () => {} };
  }
  const name = `standfast-case-${caseId}`;
  let released = false;
  let letGo: (() => void) | null = null;
  let waiting: AbortController | null = null;

  /** Holds the lock until it is released; rejects when another tab steals it. */
  const hold = () =>
    new Promise<void>((resolve) => {
      letGo = resolve;
      if (released) resolve();
      else onChange(true);
    });

  const queue = () => {
    if (released) return;
    waiting = new AbortController();
    locks
      .request(name, { signal: waiting.signal }, hold)
      .catch(() => undefined)
      .then(afterLoss);
  };
  const afterLoss = () => {
    letGo = null;
    if (released) return;
    onChange(false);
  };

  locks
    .request(name, { ifAvailable: true }, async (lock) => {
      if (lock) return hold();
      onChange(false);
      queue();
    })
    .catch(() => {
      // Another tab took over: read along and queue up for when it closes.
      afterLoss();
      queue();
    });

  return {
    takeOver() {
      if (released || letGo) return;
      waiting?.abort();
      locks.request(name, { steal: true }, hold).catch(() => {
        afterLoss();
        queue();
      });
    },
    release() {
      released = true;
      waiting?.abort();
      letGo?.();
    },
  };
}
