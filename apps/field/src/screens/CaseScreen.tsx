/** One case: the title strip with the verdict, the places of the day's work, and the place now open. */
import {
  ArrowLeft,
  CircleDot,
  FileText,
  History,
  Redo2,
  Scale,
  TreeDeciduous,
  Undo2,
  Wind,
} from 'lucide-react';
import { type ComponentType, useEffect } from 'react';
import { Button } from 'react-aria-components';
import { Link, Redirect } from 'wouter';
import { CaseBanners } from '../parts/CaseBanners.tsx';
import { NextVisit } from '../parts/NextVisit.tsx';
import { SaveState } from '../parts/SaveState.tsx';
import { SettingsButton } from '../parts/SettingsButton.tsx';
import { VerdictStrip } from '../parts/VerdictStrip.tsx';
import { SessionProvider, useSession, useSessionView } from '../state/useSession.tsx';
import { caseName } from './CasesScreen.tsx';
import { ChangePlace } from './ChangePlace.tsx';
import { DecisionPlace } from './DecisionPlace.tsx';
import { DrillingPlace } from './DrillingPlace.tsx';
import { ImportStep } from './ImportStep.tsx';
import { ReportPlace } from './ReportPlace.tsx';
import { SectionPlace } from './SectionPlace.tsx';
import { StrengthPlace } from './StrengthPlace.tsx';
import { StripStep } from './StripStep.tsx';
import { TreePlace } from './TreePlace.tsx';

interface Place {
  id: string;
  name: string;
  /** Name where there is little room. */
  short: string;
  icon: ComponentType<{ 'aria-hidden': true }>;
  screen: ComponentType;
  /** Only in a case that holds an earlier visit. */
  ofReturn?: boolean;
}

const PLACES: readonly Place[] = [
  { id: 'tree', name: 'Tree and site', short: 'Tree', icon: TreeDeciduous, screen: TreePlace },
  { id: 'section', name: 'Section and drillings', short: 'Section', icon: CircleDot, screen: SectionPlace },
  { id: 'strength', name: 'Strength and wind', short: 'Strength', icon: Wind, screen: StrengthPlace },
  { id: 'change', name: 'Change', short: 'Change', icon: History, screen: ChangePlace, ofReturn: true },
  { id: 'decision', name: 'Decision', short: 'Decision', icon: Scale, screen: DecisionPlace },
  { id: 'report', name: 'Report', short: 'Report', icon: FileText, screen: ReportPlace },
];

interface CaseScreenProps {
  id: string;
  place: string;
  part: string | null;
}

export function CaseScreen({ id, place, part }: CaseScreenProps) {
  if (!PLACES.some((known) => known.id === place)) return <Redirect to={`/case/${id}/decision`} replace />;
  return (
    <SessionProvider caseId={id}>
      <CaseFrame id={id} place={place} part={part} />
    </SessionProvider>
  );
}

function CaseFrame({ id, place: placeId, part }: CaseScreenProps) {
  const session = useSession();
  const { status, record, writer, undoStep, redoStep } = useSessionView();
  const place = PLACES.find((known) => known.id === placeId) ?? PLACES[0]!;
  const name = record ? caseName(record) : '';
  useEffect(() => {
    document.title = `${place.name} · ${name || 'Standfast'}`;
  }, [place.name, name]);
  useUndoKeys();

  if (status === 'gone') return <CaseGone />;
  if (!record) return <p className="opening">Opening the case…</p>;
  const Screen = place.screen;
  const places = PLACES.filter(({ ofReturn }) => !ofReturn || record.caseFile.earlier !== undefined);
  return (
    <div className="case-page">
      <button type="button" className="out-of-sight skip" onClick={skipToPlace}>
        Skip to the content
      </button>
      <header className="case-head">
        <Link className="icon-button" href="/" aria-label="All cases">
          <ArrowLeft aria-hidden />
        </Link>
        <div className="case-title">
          <p className="case-title-label">{name}</p>
          <p className="case-title-species">{record.caseFile.tree.species || 'species not given'}</p>
        </div>
        <SaveState />
        <Button
          className="icon-button"
          aria-label={undoStep ? `Undo: ${undoStep}` : 'Undo'}
          isDisabled={!undoStep || writer !== true}
          onPress={session.undo}
        >
          <Undo2 aria-hidden />
        </Button>
        <Button
          className="icon-button redo"
          aria-label={redoStep ? `Redo: ${redoStep}` : 'Redo'}
          isDisabled={!redoStep || writer !== true}
          onPress={session.redo}
        >
          <Redo2 aria-hidden />
        </Button>
        <SettingsButton />
      </header>
      <nav className="places" aria-label="Places of the case">
        <ol className={places.length > 5 ? 'six' : undefined}>
          {places.map(({ id: each, name: full, short, icon: Icon }, i) => (
            <li key={each}>
              <Link href={`/case/${id}/${each}`} aria-current={each === place.id ? 'page' : undefined}>
                <span className="place-number" aria-hidden="true">
                  {i + 1}
                </span>
                <Icon aria-hidden />
                <span className="place-name">{full}</span>
                <span className="place-short">{short}</span>
              </Link>
            </li>
          ))}
        </ol>
        <TitleBlock />
      </nav>
      <div className="case-body">
        <VerdictStrip />
        <CaseBanners />
        <main id="place" tabIndex={-1}>
          {place.id === 'section' && part !== null ? <DrillingPlace drillingId={part} /> : <Screen />}
          {place.id === 'report' && <NextVisit />}
        </main>
      </div>
      <ImportStep />
      <StripStep />
    </div>
  );
}

/** The hash belongs to the router, so skipping is a button that moves the focus. */
function skipToPlace() {
  document.getElementById('place')?.focus();
}

/** Undo and redo by keyboard, outside of fields that have their own. */
function useUndoKeys() {
  const session = useSession();
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key === 'z') {
        event.preventDefault();
        if (event.shiftKey) session.redo();
        else session.undo();
      }
      if (key === 'y') {
        event.preventDefault();
        session.redo();
      }
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [session]);
}

/** Like the title block of a drawing: who, for whom, when, with what. */
function TitleBlock() {
  const { record, result } = useSessionView();
  if (!record) return null;
  const { client, assessor, visitedOn, invented } = record.caseFile;
  const lines: [string, string | undefined][] = [
    ['Client', client?.name],
    ['Assessor', assessor?.name],
    ['Visited', visitedOn],
    [
      'Engine',
      result.assessment ? `${result.assessment.engineVersion}, ${result.assessment.draws} draws` : undefined,
    ],
  ];
  return (
    <dl className="title-block">
      {(invented || record.origin === 'demonstration') && (
        <div className="title-block-invented">
          <dt className="out-of-sight">Kind</dt>
          <dd>Invented demonstration</dd>
        </div>
      )}
      {lines.map(([term, text]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{text || '–'}</dd>
        </div>
      ))}
    </dl>
  );
}

function CaseGone() {
  return (
    <main className="fence">
      <h1>This case is not here</h1>
      <p>
        It was deleted, or it was never kept in this browser. A deleted case can be put back from the bin.
      </p>
      <Link className="button primary" href="/">
        Go to the list of cases
      </Link>
    </main>
  );
}
