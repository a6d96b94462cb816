/** Files of the open case by path: their bytes, and addresses to show them by while they are on screen. */
import { useEffect, useMemo, useState } from 'react';
import { loadFiles } from '../storage/blobs.ts';
import { useRecord } from './useSession.tsx';

interface CaseFiles {
  bytes: ReadonlyMap<string, Uint8Array>;
  urls: ReadonlyMap<string, string>;
}

const NONE: CaseFiles = { bytes: new Map(), urls: new Map() };

/** The files that are there; one that is missing is left out. */
export function useCaseFiles(paths: readonly string[]): CaseFiles {
  const { files } = useRecord();
  const wanted = paths.filter((path) => files[path] !== undefined);
  // Only what is wanted, and its bytes, make the effect run again.
  const key = JSON.stringify(wanted.map((path) => [path, files[path]]));
  const kept = useMemo(() => Object.fromEntries(JSON.parse(key) as [string, string][]), [key]);
  const [shown, setShown] = useState<CaseFiles>(NONE);
  useEffect(() => {
    let gone = false;
    const urls = new Map<string, string>();
    loadFiles(kept).then(
      (bytes) => {
        if (gone) return;
        for (const [path, content] of bytes)
          urls.set(path, URL.createObjectURL(new Blob([content as Uint8Array<ArrayBuffer>])));
        setShown({ bytes, urls });
      },
      () => !gone && setShown(NONE),
    );
    return () => {
      gone = true;
      for (const url of urls.values()) URL.revokeObjectURL(url);
    };
  }, [kept]);
  return shown;
}
