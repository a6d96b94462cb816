/** The worker that reads tables, started when first needed. */
import { type Remote, wrap } from 'comlink';
import type { TablesApi } from './tables.worker.ts';

let remote: Remote<TablesApi> | null = null;

export function tablesWorker(): Remote<TablesApi> {
  remote ??= wrap<TablesApi>(
    new Worker(new URL('./tables.worker.ts', import.meta.url), { type: 'module', name: 'tables' }),
  );
  return remote;
}
