/** The worker that writes reports, started when first needed. */
import { type Remote, wrap } from 'comlink';
import type { ReportJob, ReportPreview, ReportsApi, VerifyOutcome } from './reports.worker.ts';

export type { ReportJob, ReportPreview, VerifyOutcome };

let remote: Remote<ReportsApi> | null = null;

export function reportWorker(): Remote<ReportsApi> {
  remote ??= wrap<ReportsApi>(
    new Worker(new URL('./reports.worker.ts', import.meta.url), { type: 'module', name: 'reports' }),
  );
  return remote;
}
