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
  const stale = [...(listing?.kept ?? []), ...(listing?.binned ?? [])].filter((entry) => entry.stale);
  // Newly stale cases begin the work anew; fewer of them are the work going on.
  const newest = stale.reduce((latest, { savedAt }) => Math.max(latest, savedAt), 0);
  const any = stale.length > 0;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another state that was saved is what asks for work.
  useEffect(() => {
    if (!any) return;
    const work = freshenSummaries();
    return () => work.stop();
  }, [any, newest]);
}
