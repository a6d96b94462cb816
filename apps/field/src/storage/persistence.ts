/** Asks the browser to keep the data for good, and tells how much room there is. */

export interface Persistence {
  /** The browser promised not to clear the data by itself. Null where it cannot say. */
  kept: boolean | null;
  usedBytes: number | null;
  roomBytes: number | null;
}

/** Asks for persistent storage; browsers grant it by themselves, or after the app is installed. */
export async function requestPersistence(): Promise<Persistence> {
  const storage = navigator.storage as StorageManager | undefined;
  if (!storage) return { kept: null, usedBytes: null, roomBytes: null };
  const kept = storage.persist ? (await storage.persisted()) || (await storage.persist()) : null;
  const estimate = storage.estimate ? await storage.estimate() : {};
  return { kept, usedBytes: estimate.usage ?? null, roomBytes: estimate.quota ?? null };
}
