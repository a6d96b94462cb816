/** First start: the demonstration case is put in and opened, and the browser is asked to keep the data. */
import { type ReactNode, useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import { faultText } from '../state/bringIn.ts';
import { complain } from '../state/toast.tsx';
import { dropUnusedBlobs } from '../storage/blobs.ts';
import { bringInZip, DEMONSTRATION_ID, emptyOldBin } from '../storage/cases.ts';
import { database } from '../storage/database.ts';
import { storageFaultOf } from '../storage/faults.ts';
import { requestPersistence } from '../storage/persistence.ts';

/** Puts the demonstration case in, fresh, and returns its id. @throws InputFault or a storage fault */
export async function openDemonstration(): Promise<string> {
  const answer = await fetch(new URL('demonstration.zip', document.baseURI));
  if (!answer.ok) throw new Error(`the demonstration could not be fetched (${answer.status})`);
  const zip = new Uint8Array(await answer.arrayBuffer());
  return bringInZip(zip, 'demonstration', 'demonstration', DEMONSTRATION_ID);
}

let begun: Promise<string | null> | null = null;

/** Once a page load, however often the component mounts. Returns the case to open, if it is the first start. */
function begin(): Promise<string | null> {
  begun ??= (async () => {
    try {
      if ((await database.cases.count()) > 0) {
        await emptyOldBin(Date.now());
        await dropUnusedBlobs(Date.now());
        return null;
      }
    } catch (thrown) {
      complain(storageFaultOf(thrown).message);
      return null;
    }
    try {
      return await openDemonstration();
    } catch (thrown) {
      complain(faultText(thrown, 'The demonstration case'));
      return null;
    } finally {
      requestPersistence().catch(() => undefined);
    }
  })();
  return begun;
}

export function Start({ children }: { children: ReactNode }) {
  const [ready, setReady] = useState(false);
  const [, navigate] = useLocation();
  useEffect(() => {
    let gone = false;
    begin().then((demonstration) => {
      if (gone) return;
      if (demonstration) navigate(`/case/${demonstration}/decision`, { replace: true });
      begun = Promise.resolve(null);
      setReady(true);
    });
    return () => {
      gone = true;
    };
  }, [navigate]);
  return ready ? children : <p className="opening">Opening…</p>;
}
