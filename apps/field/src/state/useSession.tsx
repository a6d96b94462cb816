/** The open case for the screens below. */
import type { CaseFile } from '@standfast/casefile';
import type { Assessment } from '@standfast/engine';
import { createContext, type ReactNode, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import type { CaseRecord } from '../storage/database.ts';
import { openSession, type Session, type SessionView } from './session.ts';

const SessionContext = createContext<Session | null>(null);
const ViewContext = createContext<SessionView | null>(null);

/** Opens the case while the children are on screen. */
export function SessionProvider({ caseId, children }: { caseId: string; children: ReactNode }) {
  const [session, setSession] = useState<Session | null>(null);
  useEffect(() => {
    const opened = openSession(caseId);
    setSession(opened);
    return () => opened.close();
  }, [caseId]);
  if (!session) return null;
  return (
    <SessionContext value={session}>
      <Viewed session={session}>{children}</Viewed>
    </SessionContext>
  );
}

function Viewed({ session, children }: { session: Session; children: ReactNode }) {
  const view = useSyncExternalStore(session.subscribe, session.view);
  return <ViewContext value={view}>{children}</ViewContext>;
}

export function useSession(): Session {
  const session = useContext(SessionContext);
  if (!session) throw new Error('No case is open around this part of the screen.');
  return session;
}

export function useSessionView(): SessionView {
  const view = useContext(ViewContext);
  if (!view) throw new Error('No case is open around this part of the screen.');
  return view;
}

/** The open case; only for screens shown once it is there. */
export function useRecord(): CaseRecord {
  const { record } = useSessionView();
  if (!record) throw new Error('The case is still being opened.');
  return record;
}

export function useCaseFile(): CaseFile {
  return useRecord().caseFile;
}

export function useAssessment(): Assessment | null {
  return useSessionView().result.assessment;
}

/** Whether what is shown is of the case as it now stands. */
export function matchesCase({ record, result }: SessionView): boolean {
  return (
    record !== null &&
    result.assessment !== null &&
    result.of === record.caseFile &&
    result.faults.length === 0 &&
    Object.keys(record.drafts).length === 0
  );
}
