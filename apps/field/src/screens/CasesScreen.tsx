/** The list of cases, like the index of a field book. */
import { newCase } from '@standfast/casefile';
import { liveQuery } from 'dexie';
import { Copy, Download, FolderOpen, MoreVertical, Plus, Trash2, Upload } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { Link, useLocation } from 'wouter';
import { SettingsButton } from '../parts/SettingsButton.tsx';
import { SafetyScale } from '../parts/Verdict.tsx';
import { binWithUndo, bringIn, faultText, today } from '../state/bringIn.ts';
import { filesOfPicker, PHOTO_FILES, TABLE_FILES } from '../state/incoming.ts';
import { useOnline } from '../state/online.ts';
import { complain, say } from '../state/toast.tsx';
import { addCase, BIN_DAYS, duplicateCase, restoreCase, zipOfCase } from '../storage/cases.ts';
import { type CaseRecord, database } from '../storage/database.ts';
import { storageFaultOf } from '../storage/faults.ts';
import { fileNameOf, offerDownload } from '../storage/fileName.ts';
import { intervalText } from '../units/quantities.ts';
import { openDemonstration } from './Start.tsx';

/** What a case is called where there is no room for more. */
export function caseName(record: Pick<CaseRecord, 'caseFile'>): string {
  const { tree, title } = record.caseFile;
  return tree.label?.trim() || title?.trim() || 'Unnamed tree';
}

function useCases(): CaseRecord[] | null {
  const [cases, setCases] = useState<CaseRecord[] | null>(null);
  useEffect(() => {
    const following = liveQuery(() => database.cases.orderBy('savedAt').reverse().toArray()).subscribe({
      next: setCases,
      error: (thrown: unknown) => {
        setCases([]);
        complain(storageFaultOf(thrown).message);
      },
    });
    return () => following.unsubscribe();
  }, []);
  return cases;
}

export function CasesScreen() {
  const cases = useCases();
  const [, navigate] = useLocation();
  const online = useOnline();
  const filePicker = useRef<HTMLInputElement>(null);
  const folderPicker = useRef<HTMLInputElement>(null);
  useEffect(() => {
    document.title = 'Cases · Standfast';
  }, []);

  const attempt = (step: () => Promise<void>, what: string) => () =>
    step().catch((thrown: unknown) => complain(faultText(thrown, what)));
  const begin = attempt(async () => {
    navigate(`/case/${await addCase(newCase(today()), new Map(), 'made here')}/tree`);
  }, 'New case');
  const demonstrate = attempt(async () => {
    navigate(`/case/${await openDemonstration()}/decision`);
  }, 'The demonstration case');
  const take = async (input: HTMLInputElement) => {
    const opened = input.files && (await bringIn(filesOfPicker(input.files), null));
    input.value = '';
    if (opened) navigate(`/case/${opened}/section`);
  };

  const kept = cases?.filter(({ deletedAt }) => deletedAt === 0);
  const binned = cases?.filter(({ deletedAt }) => deletedAt > 0) ?? [];
  return (
    <div className="cases-page">
      <header className="masthead">
        <div>
          <h1>Standfast</h1>
          <p className="subtitle">From drilling traces to a stability decision</p>
        </div>
        <div className="masthead-tools">
          {!online && <span className="offline">No network, nothing lost</span>}
          <Link className="button quiet" href="/about">
            About and cautions
          </Link>
          <SettingsButton />
        </div>
      </header>
      <main>
        <div className="actions">
          <Button className="button primary" onPress={begin}>
            <Plus aria-hidden /> New case
          </Button>
          <Button className="button" onPress={() => filePicker.current?.click()}>
            <Upload aria-hidden /> Bring in files
          </Button>
          <Button className="button" onPress={() => folderPicker.current?.click()}>
            <FolderOpen aria-hidden /> Bring in a folder
          </Button>
          <input
            ref={filePicker}
            type="file"
            multiple
            hidden
            aria-label="Case zips, tables or photos of strips"
            accept={`.zip,${TABLE_FILES},${PHOTO_FILES}`}
            onChange={(event) => take(event.target)}
          />
          <input
            ref={(element) => {
              folderPicker.current = element;
              element?.setAttribute('webkitdirectory', '');
            }}
            type="file"
            hidden
            aria-label="Case folder"
            onChange={(event) => take(event.target)}
          />
        </div>
        <h2 className="list-heading">Cases</h2>
        {kept?.length === 0 && (
          <section className="empty">
            <h3>No case yet</h3>
            <p>
              Begin a new one at the tree, or bring in what you have: a case folder, a case zip, tables of
              readings as your drill wrote them, or photos of its paper strips. You can also drop files
              anywhere on this page.
            </p>
            <Button className="button" onPress={demonstrate}>
              Look at the demonstration case
            </Button>
          </section>
        )}
        <ul className="case-list">
          {kept?.map((record) => (
            <CaseRow key={record.id} record={record} />
          ))}
        </ul>
        {binned.length > 0 && (
          <details className="bin">
            <summary>
              Bin ({binned.length}), kept for {BIN_DAYS} days
            </summary>
            <ul>
              {binned.map((record) => (
                <li key={record.id}>
                  <span>{caseName(record)}</span>
                  <Button className="button quiet" onPress={() => restoreCase(record.id)}>
                    Put back
                  </Button>
                </li>
              ))}
            </ul>
          </details>
        )}
        {kept && kept.length > 0 && !kept.some(({ origin }) => origin === 'demonstration') && (
          <Button className="button quiet" onPress={demonstrate}>
            Look at the demonstration case
          </Button>
        )}
      </main>
    </div>
  );
}

function CaseRow({ record }: { record: CaseRecord }) {
  const { caseFile, verdict, origin, savedAt, id } = record;
  const name = caseName(record);
  const act = async (action: string) => {
    try {
      if (action === 'duplicate') {
        await duplicateCase(id);
        say(`${name} was copied.`);
      }
      if (action === 'zip') {
        const fileName = fileNameOf(caseFile.tree.label, caseFile.visitedOn, 'zip');
        offerDownload(await zipOfCase(record), fileName, 'application/zip');
      }
      if (action === 'bin') await binWithUndo(id, name);
    } catch (thrown) {
      complain(faultText(thrown, name));
    }
  };
  return (
    <li className="case-row">
      <Link className="case-link" href={`/case/${id}/decision`}>
        <span className="case-label">{name}</span>
        <span className="case-species">{caseFile.tree.species || 'species not given'}</span>
        <span className="case-client">
          {[caseFile.client?.name, caseFile.visitedOn].filter(Boolean).join(' · ') || 'no client yet'}
        </span>
        {(origin === 'demonstration' || caseFile.invented) && <span className="tag">invented</span>}
        <span className="case-verdict">
          {verdict ? (
            <>
              <SafetyScale interval={verdict} label={`Safety ${intervalText(verdict)}`} />
              <span>
                {intervalText(verdict)} <small>{verdict.mode}</small>
              </span>
            </>
          ) : (
            <small>not assessed yet</small>
          )}
        </span>
        <small className="case-saved">saved {whenText(savedAt)}</small>
      </Link>
      <MenuTrigger>
        <Button className="icon-button" aria-label={`More for ${name}`}>
          <MoreVertical aria-hidden />
        </Button>
        <Popover className="popover" placement="bottom end">
          <Menu className="menu" onAction={(key) => act(String(key))}>
            <MenuItem id="duplicate" className="menu-item">
              <Copy aria-hidden /> Duplicate
            </MenuItem>
            <MenuItem id="zip" className="menu-item">
              <Download aria-hidden /> Save as zip
            </MenuItem>
            <MenuItem id="bin" className="menu-item alarm">
              <Trash2 aria-hidden /> Delete
            </MenuItem>
          </Menu>
        </Popover>
      </MenuTrigger>
    </li>
  );
}

/** A moment as people say it: the time when it was today, the date otherwise. */
export function whenText(moment: number, now = Date.now()): string {
  const at = new Date(moment);
  const sameDay = at.toDateString() === new Date(now).toDateString();
  return sameDay
    ? at.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit', second: '2-digit', hour12: false })
    : at.toLocaleDateString([], { day: 'numeric', month: 'short', year: 'numeric' });
}
