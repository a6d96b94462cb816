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

/** Works out what is stale once for each state that a case was saved in. */
function useFreshFigures(listing: CaseListing | null) {
  const wanted = everyCase(listing).filter(({ stale }) => stale);
  // A growing set of stale cases begins anew; a shrinking one is the work going on.
  const newest = wanted.reduce((latest, { savedAt }) => Math.max(latest, savedAt), 0);
  const any = wanted.length > 0;
  useEffect(() => {
    if (!any || newest === 0) return;
    let work: { stop(): void } | null = null;
    let gone = false;
    listCases()
      .then((latest) => {
        if (gone) return;
        work = freshenSummaries(
          everyCase(latest)
            .filter(({ stale }) => stale)
            .map(({ id }) => id),
        );
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
