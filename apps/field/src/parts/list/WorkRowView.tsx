/** A case in the work list: risk, tree, where, when, safety with its range. */
import { isOverdue, type WorkRow } from '@standfast/casefile';
import { Copy, Download, MoreVertical, Trash2 } from 'lucide-react';
import { memo } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { Link } from 'wouter';
import { binWithUndo, faultText } from '../../state/bringIn.ts';
import { riskWord } from '../../state/listView.ts';
import { complain, say } from '../../state/toast.tsx';
import { duplicateCase, zipOfCase } from '../../storage/cases.ts';
import { database } from '../../storage/database.ts';
import { fileNameOf, offerDownload } from '../../storage/fileName.ts';
import type { ListEntry } from '../../storage/summaries.ts';
import { dateText } from '../../units/dates.ts';
import { intervalText } from '../../units/quantities.ts';
import { RiskMark } from '../RiskMark.tsx';
import { SafetyScale } from '../Verdict.tsx';

/** What a row is called where there is no room for more. */
export function rowName({ label }: Pick<WorkRow, 'label'>): string {
  return label ?? 'Unnamed tree';
}

/** The safety of a row with its range, or null. */
export function rowSafety({ safetyP05, safetyP50, safetyP95 }: WorkRow) {
  if (safetyP05 === null || safetyP50 === null || safetyP95 === null) return null;
  return { p05: safetyP05, p50: safetyP50, p95: safetyP95 };
}

interface WorkRowProps {
  entry: ListEntry;
  today: string;
}

export const WorkRowView = memo(function WorkRowView({ entry: { id, row, stale }, today }: WorkRowProps) {
  const safety = rowSafety(row);
  const risk = riskWord(row);
  const where = row.place ?? positionText(row);
  return (
    <li className="case-row">
      <Link className="case-link" href={`/case/${id}/decision`}>
        <span className="case-risk">
          <RiskMark risk={risk} />
          <span>
            <strong className={risk === 'extreme' || risk === 'high' ? 'alarm-word' : ''}>{risk}</strong>
            {row.riskStanding && <small>{row.riskStanding}</small>}
          </span>
        </span>
        <span className="case-tree">
          <span className="case-label">{rowName(row)}</span>{' '}
          <span className="case-species">{row.species ?? 'species not given'}</span>
          {row.invented && <span className="tag">invented</span>}
        </span>
        <span className="case-where">
          {[where, row.client].filter(Boolean).join(' · ') || 'no place, no client yet'}
          {row.visitedOn && <small>visited {dateText(row.visitedOn)}</small>}
        </span>
        <DueText row={row} today={today} />
        <span className="case-verdict">
          {safety ? (
            <>
              <SafetyScale interval={safety} label={`Safety ${intervalText(safety)}`} />
              <span>
                {intervalText(safety)} <small>{row.governingMode}</small>
              </span>
              {stale && <small>being worked out anew</small>}
            </>
          ) : (
            <small>{stale ? 'being worked out' : waitingFor(row)}</small>
          )}
        </span>
      </Link>
      <MoreMenu id={id} name={rowName(row)} />
    </li>
  );
});

function DueText({ row, today }: { row: WorkRow; today: string }) {
  if (row.dueOn === null) return <span className="case-due none">no due date</span>;
  const overdue = isOverdue(row, today);
  const what = row.dueOn === row.adviceDueOn ? (row.advice ?? 'advice') : 'look again';
  return (
    <span className={`case-due ${overdue ? 'overdue' : ''}`}>
      <span>
        {overdue && <strong className="alarm-word">overdue </strong>}
        {dateText(row.dueOn)}
      </span>
      <small>{what}</small>
    </span>
  );
}

/** Why there is no figure, in few words. */
function waitingFor({ faults }: WorkRow): string {
  const [first, ...more] = faults?.split(' | ') ?? [];
  if (first === undefined) return 'not assessed yet';
  const told = first.replace(/^case\.json: ?/, '');
  return `not assessed yet: ${told.length > 90 ? `${told.slice(0, 89).trimEnd()}…` : told}${more.length > 0 ? ' and more' : ''}`;
}

function positionText({ latitude, longitude }: WorkRow): string | null {
  if (latitude === null || longitude === null) return null;
  const [north, east] = [latitude < 0 ? 'S' : 'N', longitude < 0 ? 'W' : 'E'];
  return `${Math.abs(latitude).toFixed(4)}° ${north}, ${Math.abs(longitude).toFixed(4)}° ${east}`;
}

function MoreMenu({ id, name }: { id: string; name: string }) {
  const act = async (action: string) => {
    try {
      if (action === 'duplicate') {
        await duplicateCase(id);
        say(`${name} was copied.`);
      }
      if (action === 'zip') {
        const record = await database.cases.get(id);
        if (!record) throw new Error('That case is no longer here.');
        const fileName = fileNameOf(record.caseFile.tree.label, record.caseFile.visitedOn, 'zip');
        offerDownload(await zipOfCase(record), fileName, 'application/zip');
      }
      if (action === 'bin') await binWithUndo(id, name);
    } catch (thrown) {
      complain(faultText(thrown, name));
    }
  };
  return (
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
  );
}
