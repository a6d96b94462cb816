/** The worker that reads inventories and backgrounds, started when first needed. */
import { type Remote, wrap } from 'comlink';
import type { InventoryApi, InventoryOutcome } from './inventory.worker.ts';

export type { InventoryOutcome };

let remote: Remote<InventoryApi> | null = null;

export function inventoryWorker(): Remote<InventoryApi> {
  remote ??= wrap<InventoryApi>(
    new Worker(new URL('./inventory.worker.ts', import.meta.url), { type: 'module', name: 'inventory' }),
  );
  return remote;
}
