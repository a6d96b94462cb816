/** The list as it stands in storage, followed as it changes, with its stale figures worked out anew. */
import { liveQuery } from 'dexie';
import { useEffect, useState } from 'react';
import { storageFaultOf } from '../storage/faults.ts';
import { type CaseListing, listCases } from '../storage/summaries.ts';
import { freshenSummaries } from '../work/summaries.ts';
import { complain } from './toast.tsx';

/** Null until it has been read. */
export function useWorkList(): CaseListing | null {
  const [listing, setListing] = useState<CaseListing | null>(null);
  useEffect(() => {
    const following = liveQuery(listCases).subscribe({
      next: setListing,
      error: (thrown: unknown) => {
        setListing({ kept: [], binned: [] });
        complain(storageFaultOf(thrown).message);
      },
    });
    return () => following.unsubscribe();
  }, []);
  useFreshFigures(listing);
  return listing;
}

/** Works out what is stale, once for each state that a case was saved in. */
function useFreshFigures(listing: CaseListing | null) {
  const stale = everyCase(listing).filter((entry) => entry.stale);
  // Newly stale cases begin the work anew; fewer of them are the work going on.
  const newest = stale.reduce((latest, { savedAt }) => Math.max(latest, savedAt), 0);
  const any = stale.length > 0;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another state that was saved is what asks for work.
  useEffect(() => {
    if (!any) return;
    let work: { stop(): void } | null = null;
    let gone = false;
    listCases()
      .then((latest) => {
        if (gone) return;
        const wanted = everyCase(latest).filter((entry) => entry.stale);
        work = freshenSummaries(wanted.map(({ id }) => id));
      })
      .catch(() => undefined);
    return () => {
      gone = true;
      work?.stop();
    };
  }, [any, newest]);
}

/** The binned ones too: the bin shows their names. */
function everyCase(listing: CaseListing | null) {
  return listing ? [...listing.kept, ...listing.binned] : [];
}
