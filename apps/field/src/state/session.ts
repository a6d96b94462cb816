/**
 * A case open on screen: its values with undo, saved at each change, assessed as it changes, and written by one tab
 * only. A plain store: read `view()`, listen with `subscribe`.
 */
import {
  type CaseFile,
  checkCase,
  doStep,
  type History,
  historyOf,
  redo,
  stepNames,
  undo,
} from '@standfast/casefile';
import { liveQuery } from 'dexie';
import { draftsAfter } from '../edit/drafts.ts';
import { withValueAt } from '../edit/fieldPath.ts';
import { keepBlob } from '../storage/blobs.ts';
import { type CaseRecord, database } from '../storage/database.ts';
import { type StorageFault, storageFaultOf } from '../storage/faults.ts';
import { type Conclusion, keepSummaries, summaryOf } from '../storage/summaries.ts';
import { lockForWriting } from '../storage/writerLock.ts';
import { type AssessmentView, followCase, NO_ASSESSMENT, sharedAssessor } from '../work/assessor.ts';

export interface SessionView {
  status: 'opening' | 'open' | 'gone';
  record: CaseRecord | null;
  /** Null until it is known which tab writes. */
  writer: boolean | null;
  saving: boolean;
  fault: StorageFault | null;
  result: AssessmentView;
  undoStep: string | null;
  redoStep: string | null;
}

export interface Session {
  view(): SessionView;
  subscribe(listener: () => void): () => void;
  /** Changes the case in one step. */
  edit(step: string, change: (caseFile: CaseFile) => CaseFile): void;
  /** Sets one field; what was typed there before and could not be read is let go. */
  setField(path: string, value: unknown, step: string): void;
  /** Keeps text that cannot be read yet; null lets it go. */
  setDraft(path: string, text: string | null): void;
  /** Keeps new files with the case, then changes it. */
  addFiles(
    files: ReadonlyMap<string, Uint8Array>,
    step: string,
    change: (caseFile: CaseFile) => CaseFile,
  ): Promise<void>;
  undo(): void;
  redo(): void;
  /** Takes the right to write from another tab. */
  takeOver(): void;
  /** Tries again to save. */
  saveAgain(): void;
  /** Returns once the last change is saved or has failed. */
  settled(): Promise<void>;
  close(): void;
}

export function openSession(id: string): Session {
  const listeners = new Set<() => void>();
  let history: History<CaseFile> | null = null;
  let closed = false;
  let lastField: string | null = null;
  let view: SessionView = {
    status: 'opening',
    record: null,
    writer: null,
    saving: false,
    fault: null,
    result: NO_ASSESSMENT,
    undoStep: null,
    redoStep: null,
  };

  const show = (change: Partial<SessionView>) => {
    if (closed) return;
    view = { ...view, ...change };
    for (const listener of listeners) listener();
  };

  const assessor = followCase(sharedAssessor(), (result) => {
    show({ result });
    if (!result.working) keepSummary(result);
  });

  /** The list shows each case in short; that is derived, so it does not count as a change of the case. */
  const keepSummary = ({ assessment, of, faults, notices }: AssessmentView) => {
    const { record, writer } = view;
    if (!record || writer !== true) return;
    const keep = (conclusion: Conclusion) =>
      keepSummaries([summaryOf(record, conclusion)]).catch(() => undefined);
    if (faults.length > 0) keep({ faults });
    else if (assessment && of === record.caseFile) keep({ assessment, notices });
  };

  const assess = (record: CaseRecord) => assessor.want({ caseFile: record.caseFile, files: record.files });

  // Saving: one write at a time; a change during a write is written right after it.
  let unsaved = false;
  let write: Promise<void> | null = null;
  const save = () => {
    unsaved = true;
    write ??= writeAll().finally(() => {
      write = null;
    });
  };
  const writeAll = async () => {
    while (unsaved && view.record) {
      unsaved = false;
      show({ saving: true });
      const { caseFile, files, drafts } = view.record;
      const savedAt = Date.now();
      try {
        await database.transaction('rw', database.cases, database.summaries, async () => {
          await database.cases.update(id, { caseFile, files, drafts, savedAt });
          await database.summaries.update(id, { savedAt });
        });
        show({ fault: null, record: { ...view.record, savedAt } });
      } catch (thrown) {
        show({ fault: storageFaultOf(thrown) });
      }
    }
    show({ saving: false });
  };

  const put = (change: Partial<CaseRecord>, next: History<CaseFile> | null = history) => {
    if (!view.record || view.writer !== true) return;
    history = next;
    const steps = next ? stepNames(next) : { undo: null, redo: null };
    const record = { ...view.record, ...change };
    const reassess = record.caseFile !== view.record.caseFile || record.files !== view.record.files;
    if (reassess && standsStill(view, record.caseFile)) {
      show({
        record,
        undoStep: steps.undo,
        redoStep: steps.redo,
        result: { ...view.result, of: record.caseFile },
      });
      keepSummary(view.result);
      save();
      return;
    }
    show({ record, undoStep: steps.undo, redoStep: steps.redo });
    save();
    if (reassess) assess(record);
  };

  const step = (next: History<CaseFile>, drafts: Record<string, string>) => {
    if (next !== history || drafts !== view.record?.drafts) put({ caseFile: next.present, drafts }, next);
  };

  /** Reads the case as another tab left it. */
  const load = async () => {
    const record = await database.cases.get(id).catch((thrown: unknown) => {
      show({ fault: storageFaultOf(thrown) });
      return undefined;
    });
    if (closed) return;
    if (!record || record.deletedAt > 0) {
      show({ status: 'gone' });
      return;
    }
    if (record.savedAt === view.record?.savedAt) return;
    history = historyOf(record.caseFile);
    show({ status: 'open', record, undoStep: null, redoStep: null });
    assess(record);
  };

  const lock = lockForWriting(id, async (writer) => {
    // What another tab wrote last is read before this one may write over it.
    if (writer) await load();
    show({ writer });
  });
  const following = liveQuery(() => database.cases.get(id)).subscribe({
    next: (record) => {
      if (view.writer !== true || !record || record.deletedAt > 0) load();
    },
    error: (thrown: unknown) => show({ fault: storageFaultOf(thrown) }),
  });

  return {
    view: () => view,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    edit(name, change) {
      if (!history || !view.record || view.writer !== true) return;
      lastField = null;
      const next = doStep(history, change(history.present), name);
      step(next, draftsAfter(history.present, next.present, view.record.drafts));
    },
    setField(path, value, name) {
      if (!history || !view.record || view.writer !== true) return;
      const { [path]: gone, ...drafts } = view.record.drafts;
      // Typing in one field is one step; two fields may have the same name, so the path tells.
      const next = doStep(history, withValueAt(history.present, path, value), name, path === lastField);
      lastField = path;
      step(next, gone === undefined ? view.record.drafts : drafts);
    },
    setDraft(path, text) {
      if (!view.record) return;
      const { [path]: before, ...rest } = view.record.drafts;
      if (before === (text ?? undefined)) return;
      put({ drafts: text === null ? rest : { ...rest, [path]: text } });
    },
    async addFiles(files, name, change) {
      const kept: Record<string, string> = {};
      try {
        for (const [path, bytes] of files) kept[path] = await keepBlob(bytes);
      } catch (thrown) {
        const fault = storageFaultOf(thrown);
        show({ fault });
        throw fault;
      }
      if (!history || !view.record) return;
      const next = doStep(history, change(history.present), name);
      put({ caseFile: next.present, files: { ...view.record.files, ...kept } }, next);
    },
    undo() {
      lastField = null;
      if (history) step(undo(history), {});
    },
    redo() {
      lastField = null;
      if (history) step(redo(history), {});
    },
    takeOver: () => lock.takeOver(),
    saveAgain: save,
    settled: async () => {
      while (write) await write;
    },
    close() {
      // The write under way goes on; only the screen stops listening.
      assessor.stop();
      following.unsubscribe();
      const release = () => lock.release();
      if (write) write.finally(release);
      else release();
      closed = true;
      listeners.clear();
    },
  };
}

/**
 * Whether an edit leaves the assessment as it is: how the report reads is all that changed, what is shown is of the case before,
 * and nothing is wrong with it after.
 */
function standsStill({ record, result }: SessionView, after: CaseFile): boolean {
  const before = record?.caseFile;
  if (!before || result.of !== before || result.working || result.quick || !result.assessment) return false;
  const names = new Set([...Object.keys(before), ...Object.keys(after)]) as Set<keyof CaseFile>;
  names.delete('report');
  for (const name of names) if (before[name] !== after[name]) return false;
  return result.faults.length === 0 && checkCase(after).faults.length === 0;
}
