/** Files may be dropped anywhere on the page. */
import { useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import { bringIn } from '../state/bringIn.ts';
import { filesOfDrop } from '../state/incoming.ts';

export function DropAnywhere() {
  const [over, setOver] = useState(false);
  const [location, navigate] = useLocation();
  useEffect(() => {
    const openCaseId = /^\/case\/([^/]+)/.exec(location)?.[1] ?? null;
    let depth = 0;
    const carriesFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
    const enter = (event: DragEvent) => {
      if (!carriesFiles(event)) return;
      depth++;
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (!carriesFiles(event)) return;
      depth = Math.max(0, depth - 1);
      if (depth === 0) setOver(false);
    };
    const allow = (event: DragEvent) => {
      if (carriesFiles(event)) event.preventDefault();
    };
    const drop = async (event: DragEvent) => {
      if (!event.dataTransfer || !carriesFiles(event)) return;
      event.preventDefault();
      depth = 0;
      setOver(false);
      const opened = await bringIn(await filesOfDrop(event.dataTransfer), openCaseId);
      if (opened) navigate(`/case/${opened}/section`);
    };
    addEventListener('dragenter', enter);
    addEventListener('dragleave', leave);
    addEventListener('dragover', allow);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragenter', enter);
      removeEventListener('dragleave', leave);
      removeEventListener('dragover', allow);
      removeEventListener('drop', drop);
    };
  }, [location, navigate]);
  if (!over) return null;
  return (
    <div className="drop-veil" aria-hidden="true">
      <p>
        Drop a case folder, a case zip, tables of readings, photos of paper strips, a tree inventory, or a
        report to verify
      </p>
    </div>
  );
}
