/** A photo of the case, as it was kept. */
import { type ReactNode, useEffect, useState } from 'react';
import { loadFiles } from '../storage/blobs.ts';
import { storageFaultOf } from '../storage/faults.ts';
import { Group } from './Group.tsx';

interface KeptPhotoProps {
  title: string;
  path: string;
  sha256: string;
  /** What else there is to say of it. */
  children?: ReactNode;
}

const TYPES: Record<string, string> = {
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  png: 'image/png',
  heic: 'image/heic',
  webp: 'image/webp',
};

export function KeptPhoto({ title, path, sha256, children }: KeptPhotoProps) {
  return (
    <Group title={title}>
      <PhotoOf name={title} path={path} sha256={sha256} />
      {children}
    </Group>
  );
}

interface PhotoOfProps {
  name: string;
  path: string;
  sha256: string;
}

/** The photo itself with its file's name, or why it cannot be shown. */
export function PhotoOf({ name, path, sha256 }: PhotoOfProps) {
  const [shown, setShown] = useState<{ url: string } | { fault: string } | null>(null);
  useEffect(() => {
    let gone = false;
    let url: string | null = null;
    loadFiles({ [path]: sha256 }).then(
      (files) => {
        const bytes = files.get(path);
        if (gone || !bytes) return;
        const type = TYPES[path.split('.').pop()?.toLowerCase() ?? ''] ?? '';
        url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
        setShown({ url });
      },
      (thrown: unknown) => !gone && setShown({ fault: storageFaultOf(thrown).message }),
    );
    return () => {
      gone = true;
      if (url) URL.revokeObjectURL(url);
    };
  }, [path, sha256]);
  return (
    <>
      {shown && 'url' in shown && (
        <img
          className="kept-photo"
          src={shown.url}
          alt={`${name}: ${path}`}
          onError={() => setShown({ fault: 'This browser cannot show this photo; it is kept all the same.' })}
        />
      )}
      {shown && 'fault' in shown && <p className="hint">{shown.fault}</p>}
      <p className="hint">{`Photo: ${path}`}</p>
    </>
  );
}
