/** The work list: every case, the most urgent first, like the index of a field book. */
import { FileCheck2, FolderOpen, Plus, Upload } from 'lucide-react';
import { useEffect, useMemo, useRef } from 'react';
import { Button } from 'react-aria-components';
import { useLocation } from 'wouter';
import { GrowingList } from '../parts/list/GrowingList.tsx';
import { ListFilters } from '../parts/list/ListFilters.tsx';
import { ListHead } from '../parts/list/ListHead.tsx';
import { Masthead } from '../parts/list/Masthead.tsx';
import { rowName, WorkRowView } from '../parts/list/WorkRowView.tsx';
import { bringIn, faultText, today } from '../state/bringIn.ts';
import { filesOfPicker, INVENTORY_FILES, PHOTO_FILES, REPORT_FILES, TABLE_FILES } from '../state/incoming.ts';
import { changeListView, listed, useListView, WHOLE_LIST } from '../state/listView.ts';
import { complain } from '../state/toast.tsx';
import { useWorkList } from '../state/useWorkList.ts';
import { BIN_DAYS, DEMONSTRATION_ID, restoreCase } from '../storage/cases.ts';
import type { CaseRecord } from '../storage/database.ts';
import { addNewCase } from '../storage/firm.ts';
import { openDemonstration } from './Start.tsx';

/** What a case is called where there is no room for more. */
export function caseName(record: Pick<CaseRecord, 'caseFile'>): string {
  const { tree, title } = record.caseFile;
  return tree.label?.trim() || title?.trim() || 'Unnamed tree';
}

export function CasesScreen() {
  const listing = useWorkList();
  const view = useListView();
  const [, navigate] = useLocation();
  const day = today();
  const filePicker = useRef<HTMLInputElement>(null);
  const folderPicker = useRef<HTMLInputElement>(null);
  const reportPicker = useRef<HTMLInputElement>(null);
  useEffect(() => {
    document.title = 'Cases · Standfast';
  }, []);

  const attempt = (step: () => Promise<void>, what: string) => () =>
    step().catch((thrown: unknown) => complain(faultText(thrown, what)));
  const begin = attempt(async () => {
    navigate(`/case/${await addNewCase(today())}/tree`);
  }, 'New case');
  const demonstrate = attempt(async () => {
    navigate(`/case/${await openDemonstration()}/decision`);
  }, 'The demonstration case');
  const take = async (input: HTMLInputElement) => {
    const opened = input.files && (await bringIn(filesOfPicker(input.files), null));
    input.value = '';
    if (opened) navigate(`/case/${opened}/section`);
  };

  const kept = listing?.kept;
  const binned = listing?.binned ?? [];
  const shown = useMemo(() => listed(kept ?? [], view, today()), [kept, view]);
  return (
    <div className="cases-page">
      <Masthead />
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
          <Button className="button" onPress={() => reportPicker.current?.click()}>
            <FileCheck2 aria-hidden /> Verify a report
          </Button>
          <input
            ref={reportPicker}
            type="file"
            hidden
            aria-label="Report to verify"
            accept={REPORT_FILES}
            onChange={(event) => take(event.target)}
          />
          <input
            ref={filePicker}
            type="file"
            multiple
            hidden
            aria-label="Case zips, tables or photos of strips"
            accept={`.zip,${TABLE_FILES},${PHOTO_FILES},${INVENTORY_FILES},${REPORT_FILES}`}
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
        <ListHead here="list" shown={shown} total={kept?.length ?? 0} />
        {kept && kept.length > 1 && <ListFilters entries={kept} />}
        {kept?.length === 0 && (
          <section className="empty">
            <h3>No case yet</h3>
            <p>
              Begin a new one at the tree, or bring in what you have: a case folder, a case zip, tables of
              readings as your drill wrote them, photos of its paper strips, or the points of a tree inventory
              (GeoJSON). You can also drop files anywhere on this page.
            </p>
            <Button className="button" onPress={demonstrate}>
              Look at the demonstration case
            </Button>
          </section>
        )}
        {kept && kept.length > 0 && shown.length === 0 && (
          <section className="empty">
            <h3>No case is like that</h3>
            <p>None of the {kept.length} cases has what you look for.</p>
            <Button className="button" onPress={() => changeListView(WHOLE_LIST)}>
              Show all cases
            </Button>
          </section>
        )}
        <GrowingList className="case-list" items={shown}>
          {(entry) => <WorkRowView key={entry.id} entry={entry} today={day} />}
        </GrowingList>
        {binned.length > 0 && (
          <details className="bin">
            <summary>
              Bin ({binned.length}), kept for {BIN_DAYS} days
            </summary>
            <ul>
              {binned.map(({ id, row }) => (
                <li key={id}>
                  <span>{rowName(row)}</span>
                  <Button className="button quiet" onPress={() => restoreCase(id)}>
                    Put back
                  </Button>
                </li>
              ))}
            </ul>
          </details>
        )}
        {kept && kept.length > 0 && !kept.some(({ id }) => id === DEMONSTRATION_ID) && (
          <Button className="button quiet" onPress={demonstrate}>
            Look at the demonstration case
          </Button>
        )}
      </main>
    </div>
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
