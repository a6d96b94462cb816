/** Storage that failed, told in words that say what to do. */

export type StorageFaultKind = 'full' | 'blocked' | 'missing' | 'write';

export class StorageFault extends Error {
  override name = 'StorageFault';
  constructor(
    message: string,
    readonly kind: StorageFaultKind,
  ) {
    super(message);
  }
}

/** Turns whatever the database threw into a fault with a remedy. Aborts without an error count as full storage. */
export function storageFaultOf(thrown: unknown): StorageFault {
  if (thrown instanceof StorageFault) return thrown;
  const chain = causes(thrown);
  if (chain.some((fault) => /Quota/i.test(fault.name) || /quota/i.test(fault.message))) {
    return new StorageFault(
      'This browser’s storage is full, so the last change is not saved. Save the case as a zip now, then make room.',
      'full',
    );
  }
  if (chain.some((fault) => /InvalidState|Security|MissingAPI|OpenFailed|DatabaseClosed/.test(fault.name))) {
    return new StorageFault(
      'This browser does not let Standfast keep data here (a private window, or storage switched off). ' +
        'You can work, but save the case as a zip before you close the tab.',
      'blocked',
    );
  }
  return new StorageFault(
    'The last change could not be saved. Save the case as a zip now; it holds everything on this screen.',
    'write',
  );
}

function causes(thrown: unknown): { name: string; message: string }[] {
  const chain: { name: string; message: string }[] = [];
  let at: unknown = thrown;
  while (at !== null && typeof at === 'object' && chain.length < 8) {
    const fault = at as { name?: unknown; message?: unknown; inner?: unknown; cause?: unknown };
    chain.push({ name: String(fault.name ?? ''), message: String(fault.message ?? '') });
    at = fault.inner ?? fault.cause;
  }
  return chain;
}
