/** How a trace came off its paper strip, as its table tells: photo, corners, scale, and what was done by hand. */
import { stripNotesIn } from '@standfast/casefile';
import { useEffect, useState } from 'react';
import { loadFiles } from '../storage/blobs.ts';

interface StripOriginProps {
  /** The trace's table. */
  path: string;
  sha256: string;
}

export function StripOrigin({ path, sha256 }: StripOriginProps) {
  const [notes, setNotes] = useState<readonly string[]>([]);
  useEffect(() => {
    let gone = false;
    loadFiles({ [path]: sha256 }).then(
      (files) => {
        const bytes = files.get(path);
        if (!gone && bytes) setNotes(stripNotesIn(bytes));
      },
      // A table that cannot be loaded is told of where the trace is drawn.
      () => {},
    );
    return () => {
      gone = true;
    };
  }, [path, sha256]);
  if (notes.length === 0) return null;
  return (
    <details>
      <summary className="opener">How the trace was read off it</summary>
      <ul className="origin">
        {notes.map((note) => (
          <li key={note}>{`${note.charAt(0).toUpperCase()}${note.slice(1)}`}</li>
        ))}
      </ul>
    </details>
  );
}
