/** The line that was read, drawn on the photo: chosen, mended by hand where it went wrong, and kept with its drilling. */
import {
  freeTracePath,
  gapsOf,
  stretchesOf,
  UNSURE_BELOW,
  unsureStretches,
  usualStep,
  writeStripTable,
} from '@standfast/casefile';
import { checkTrace, ENGINE_VERSION, InputFault, type PointPx, type StripReading } from '@standfast/engine';
import { Eraser, Hand, PenLine, Undo2 } from 'lucide-react';
import { useEffect, useMemo, useRef, useState } from 'react';
import { Button, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { useLocation } from 'wouter';
import { type Assignment, assignmentFault, drillingTaken, usualAssignment } from '../edit/assignment.ts';
import { drillingAddress, namesOf } from '../edit/drillings.ts';
import { PHOTO_ENDING } from '../edit/photoFile.ts';
import { type ChartMap, chartMap, type OnScale } from '../edit/stripChart.ts';
import type { StripDraft } from '../edit/stripDraft.ts';
import { drawnStretches, type LineEdit, mendedLine, onPhoto, onScale } from '../edit/stripLine.ts';
import { freePhotoPath, mendedNotes } from '../edit/stripNotes.ts';
import { AssignmentFields, useDrillingOnPage } from '../parts/AssignmentFields.tsx';
import { PlainEntry } from '../parts/entries.tsx';
import { PhotoStage, type StrokePhase } from '../parts/PhotoStage.tsx';
import { Segments } from '../parts/SettingsButton.tsx';
import { rememberScale } from '../state/lastScale.ts';
import { useSettings } from '../state/settings.ts';
import { say } from '../state/toast.tsx';
import { useRecord, useSession } from '../state/useSession.tsx';
import type { WaitingStrip } from '../state/waiting.ts';
import { sha256Of } from '../storage/blobs.ts';
import { storageFaultOf } from '../storage/faults.ts';
import { fieldUnit, quantityText, storedOf, sureText } from '../units/quantities.ts';
import { readNumber } from '../units/readNumber.ts';
import type { OpenPhoto } from '../work/strip.ts';
import { ChartOutline } from './StripChart.tsx';

type Tool = 'look' | 'erase' | 'draw';

/** Reach of the brush, screen px: a thumb's breadth. */
const BRUSH_PX = 16;
/** Points drawn without lifting the finger lie at least so far apart, screen px. */
const APART_PX = 5;

interface StripLineCheckProps {
  strip: WaitingStrip;
  photo: OpenPhoto;
  draft: StripDraft;
  reading: StripReading;
  change: (part: Partial<StripDraft>) => void;
  setFault: (fault: string | null) => void;
  done: () => void;
}

export function StripLineCheck(props: StripLineCheckProps) {
  const { strip, photo, draft, reading, change, setFault, done } = props;
  const session = useSession();
  const { id: caseId, caseFile, files } = useRecord();
  const [, navigate] = useLocation();
  const here = useDrillingOnPage();
  const [tool, setTool] = useState<Tool>('look');
  /** Points of a line being drawn, not joined yet. */
  const [points, setPoints] = useState<readonly PointPx[]>([]);
  const [brush, setBrush] = useState<readonly PointPx[]>([]);
  const [assignment, setAssignment] = useState<Assignment>(() =>
    usualAssignment(caseFile, strip.name.replace(/\.[^.]*$/, ''), here),
  );
  const [asked, setAsked] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  // A new step begins at its head, on screen and for a screen reader.
  useEffect(() => heading.current?.focus(), []);
  const [busy, setBusy] = useState(false);

  const { provenance } = reading;
  const found = reading.lines[draft.chosen] ?? reading.lines[0]!;
  const map = useMemo(() => chartMap(provenance.cornersPx, provenance), [provenance]);
  const mended = useMemo(() => mendedLine(found, draft.edits), [found, draft.edits]);
  const linePx = useMemo(() => (map ? onPhoto(mended, found, map) : null), [mended, found, map]);
  if (!map || !linePx) return null;

  const edit = (next: LineEdit) => change({ edits: [...draft.edits, next] });
  const erase = (stroke: readonly PointPx[], reachPx: number) => {
    const near = (x: number, y: number) =>
      stroke.some((point, i) => distanceTo(x, y, stroke[i - 1] ?? point, point) <= reachPx);
    const stretchesMm = stretchesOf(mended.depthMm, (i) => near(linePx[2 * i]!, linePx[2 * i + 1]!));
    if (stretchesMm.length > 0) edit({ kind: 'erase', stretchesMm });
  };
  const stroke = (phase: StrokePhase, px: PointPx, scale: number) => {
    const [list, put] = tool === 'erase' ? [brush, setBrush] : [points, setPoints];
    const last = list.at(-1);
    const far = !last || Math.hypot(px[0] - last[0], px[1] - last[1]) * scale >= APART_PX;
    if (tool === 'erase') {
      if (phase === 'start') put([px]);
      if (phase === 'move' && far) put([...list, px]);
      if (phase === 'end') erase(list, BRUSH_PX / scale);
      if (phase === 'end' || phase === 'cancel') put([]);
    } else {
      // A second finger brings the photo nearer: the point its first one set was not meant.
      if (phase === 'cancel') put(list.slice(0, -1));
      if ((phase === 'start' || phase === 'move') && far) put([...list, px]);
    }
  };
  const join = () => {
    edit({ kind: 'draw', points: points.map((px) => onScale(px, found, map)) });
    setPoints([]);
  };
  const takeBack = () => {
    if (points.length > 0) setPoints(points.slice(0, -1));
    else change({ edits: draft.edits.slice(0, -1) });
  };

  const several = reading.lines.length > 1;
  /** Keeps the trace; of a sheet with several lines another may be taken right after, its chart as it was confirmed. */
  const keep = async (another: boolean) => {
    setAsked(true);
    if (assignmentFault(assignment) !== null) return;
    setBusy(true);
    setFault(null);
    try {
      checkTrace(
        { depthMm: mended.depthMm, resistancePct: mended.resistancePct },
        'The line as it stands now',
      );
      const taken = drillingTaken(caseFile, assignment);
      const names = namesOf(files);
      const photoPath = freePhotoPath(names.keys(), taken.drillingId, PHOTO_ENDING[photo.kind]);
      const tracePath = freeTracePath(names, taken.drillingId);
      const notes = mendedNotes(mended, provenance, {
        photo: photoPath,
        sha256: await sha256Of(strip.bytes),
        photoScale: photo.photoScale,
        engineVersion: ENGINE_VERSION,
      });
      await session.addFiles(
        new Map([
          [tracePath, writeStripTable(mended, notes)],
          [photoPath, strip.bytes],
        ]),
        'Bring in a strip',
        () => taken.withFields({ trace: tracePath, photo: photoPath }),
      );
      rememberScale(provenance);
      say(`${strip.name}: ${mended.depthMm.length} readings kept, with the photo.`);
      if (another) {
        setPoints([]);
        setAsked(false);
        setAssignment(usualAssignment(caseFile, '', null));
        change({ chosen: (draft.chosen + 1) % reading.lines.length, edits: [] });
        heading.current?.focus();
      } else {
        done();
        navigate(drillingAddress(caseId, taken.ref));
      }
    } catch (thrown) {
      setFault(thrown instanceof InputFault ? thrown.message : storageFaultOf(thrown).message);
    } finally {
      setBusy(false);
    }
  };

  const nothing = busy || mended.depthMm.length === 0;
  const undone = draft.edits.length + points.length === 0;
  return (
    <>
      <section>
        <h3 ref={heading} tabIndex={-1}>
          The line on the photo
        </h3>
        {several && (
          <Segments
            label={`${reading.lines.length} lines were found. The trace is`}
            value={String(draft.chosen)}
            options={reading.lines.map((line, i) => [String(i), lineName(i, line.penColour)] as const)}
            onChoose={(index) => {
              setPoints([]);
              change({ chosen: Number(index), edits: [] });
            }}
          />
        )}
        <div className="actions">
          <ToggleButtonGroup
            className="tools"
            aria-label="Tool"
            selectionMode="single"
            disallowEmptySelection
            selectedKeys={[tool]}
            onSelectionChange={(keys) => {
              const [next] = keys;
              if (next !== undefined) setTool(next as Tool);
            }}
          >
            <ToggleButton id="look" className="button">
              <Hand aria-hidden /> Look
            </ToggleButton>
            <ToggleButton id="erase" className="button">
              <Eraser aria-hidden /> Erase
            </ToggleButton>
            <ToggleButton id="draw" className="button">
              <PenLine aria-hidden /> Draw
            </ToggleButton>
          </ToggleButtonGroup>
          {(tool === 'draw' || points.length > 0) && (
            <Button className="button primary" isDisabled={points.length < 2} onPress={join}>
              Join the points
            </Button>
          )}
          <Button className="button" isDisabled={undone} onPress={takeBack}>
            <Undo2 aria-hidden /> Take back
          </Button>
        </div>
        <PhotoStage
          shown={photo}
          label="The photographed strip with the line that was read"
          onStroke={tool === 'look' ? undefined : stroke}
          magnify={tool === 'draw'}
          overlay={
            <>
              <ChartOutline corners={provenance.cornersPx} />
              {reading.lines.map((line, i) =>
                i === draft.chosen ? null : (
                  <path
                    // biome-ignore lint/suspicious/noArrayIndexKey: lines have no other name than their place.
                    key={i}
                    className="line-other"
                    d={pathOf(line.depthMm, line.linePx, () => 'all').get('all') ?? ''}
                  />
                ),
              )}
              <LineDrawn depthMm={mended.depthMm} linePx={linePx} mended={mended} />
              <Gaps gaps={gapsOf(mended.depthMm)} map={map} levels={provenance.resistance} />
              {points.length > 0 && <polyline className="line-pending under" points={listOf(points)} />}
              {points.length > 0 && <polyline className="line-pending" points={listOf(points)} />}
              {points.map(([x, y]) => (
                <path key={`${x} ${y}`} className="line-point" d={`M${x} ${y}h0`} />
              ))}
              {brush.length > 0 && (
                <polyline className="line-brush" points={listOf([...brush, brush.at(-1)!])} />
              )}
            </>
          }
        />
        <p className="hint">{TOOL_WORDS[tool]}</p>
        <Key />
        <ByNumbers
          onErase={(from, to) => edit({ kind: 'erase', stretchesMm: [[from, to]] })}
          onDraw={(line) => edit({ kind: 'draw', points: line })}
        />
        <ReadingWords reading={reading} mended={mended} sure={found.sure} />
      </section>
      <section>
        <h3>Which needle pass it is</h3>
        <AssignmentFields
          label="This trace is"
          assignment={assignment}
          asked={asked}
          onChange={setAssignment}
        />
        {points.length > 0 && (
          <p className="needed">Points are set but not joined yet; they would be left out.</p>
        )}
        <div className="actions">
          <Button className="button primary" isDisabled={nothing} onPress={() => keep(false)}>
            {busy ? 'Keeping…' : 'Keep the trace and the photo'}
          </Button>
          {several && (
            <Button className="button" isDisabled={nothing} onPress={() => keep(true)}>
              Keep, then take another line
            </Button>
          )}
          <Button className="button" isDisabled={busy} onPress={() => change({ at: 'chart' })}>
            Back to corners and scale
          </Button>
        </div>
      </section>
    </>
  );
}

const TOOL_WORDS: Record<Tool, string> = {
  look: 'Come nearer and see whether the drawn line lies on the pen’s. Where it does not, erase it; what is left out is never filled in.',
  erase: 'Brush over the stretch that is wrong. Two fingers bring the photo nearer.',
  draw: 'Tap points along the pen’s line, or follow it with the finger; then join them. They replace what was read between the first and the last.',
};

/** A line's place and its pen, so that two can be told apart. */
function lineName(index: number, [red, green, blue]: readonly [number, number, number]): string {
  const lightest = Math.max(red, green, blue);
  const spread = lightest - Math.min(red, green, blue);
  let colour = lightest < 0.45 ? 'black' : 'grey';
  if (spread > 0.15) colour = red === lightest ? 'red' : blue === lightest ? 'blue' : 'green';
  return `${index + 1}, ${colour}`;
}

type Kind = 'sure' | 'unsure' | 'hand' | 'all';

/** The line's pieces by how they came about; broken where samples are left out. */
function pathOf(
  depthMm: Float64Array,
  linePx: Float64Array,
  kindOf: (index: number) => Kind,
): Map<Kind, string> {
  const most = 2.5 * usualStep(depthMm);
  const paths = new Map<Kind, string>();
  for (let i = 0; i + 1 < depthMm.length; i++) {
    if (depthMm[i + 1]! - depthMm[i]! > most) continue;
    const kind = kindOf(i);
    const goesOn = i > 0 && kindOf(i - 1) === kind && depthMm[i]! - depthMm[i - 1]! <= most;
    const at = (k: number) => `${linePx[2 * k]!.toFixed(1)} ${linePx[2 * k + 1]!.toFixed(1)}`;
    paths.set(kind, `${paths.get(kind) ?? ''}${goesOn ? '' : `M${at(i)}`}L${at(i + 1)}`);
  }
  return paths;
}

interface LineDrawnProps {
  depthMm: Float64Array;
  linePx: Float64Array;
  mended: { confidence: Float64Array; byHand: Uint8Array };
}

function LineDrawn({ depthMm, linePx, mended }: LineDrawnProps) {
  const paths = useMemo(
    () =>
      pathOf(depthMm, linePx, (i) => {
        if (mended.byHand[i] === 1) return 'hand';
        return mended.confidence[i]! < UNSURE_BELOW ? 'unsure' : 'sure';
      }),
    [depthMm, linePx, mended],
  );
  return (
    <g data-testid="line-read">
      {[...paths].map(([kind, d]) => (
        <g key={kind}>
          <path className="line-read under" d={d} />
          <path className={`line-read ${kind}`} d={d} />
        </g>
      ))}
    </g>
  );
}

interface GapsProps {
  gaps: readonly (readonly [number, number])[];
  map: ChartMap;
  levels: readonly [number, number];
}

/** Stretches left out, as bands over the chart's height. */
function Gaps({ gaps, map, levels: [bottom, top] }: GapsProps) {
  return gaps.map(([from, to]) => {
    const corner = (depthMm: number, levelPct: number) => map.toPhoto({ depthMm, levelPct }).join(',');
    const points = [corner(from, top), corner(to, top), corner(to, bottom), corner(from, bottom)].join(' ');
    return <polygon key={from} className="line-gap" points={points} />;
  });
}

function Key() {
  const kinds: [string, string][] = [
    ['sure', 'read'],
    ['unsure', 'read, unsure'],
    ['hand', 'drawn by hand'],
  ];
  return (
    <ul className="line-key" aria-label="Key">
      {kinds.map(([kind, words]) => (
        <li key={kind}>
          <svg width="36" height="12" aria-hidden="true">
            <path className={`line-read ${kind}`} d="M2 6H34" />
          </svg>
          {words}
        </li>
      ))}
      <li>
        <span className="gap-key" aria-hidden="true" /> left out
      </li>
    </ul>
  );
}

/** Unsure stretches told in words; more would not be read. */
const MOST_TOLD = 4;

interface ReadingWordsProps {
  reading: StripReading;
  mended: {
    depthMm: Float64Array;
    byHand: Uint8Array;
    resistancePct: Float64Array;
    confidence: Float64Array;
  };
  sure: number;
}

function ReadingWords({ reading, mended, sure }: ReadingWordsProps) {
  const { units } = useSettings();
  const { depthMm } = mended;
  const length = (mm: number) => quantityText(mm, 'lengthMm', units);
  const sum = (stretches: readonly (readonly [number, number])[]) =>
    stretches.reduce((total, [from, to]) => total + to - from, 0);
  const drawn = sum(drawnStretches(mended));
  const gaps = sum(gapsOf(depthMm));
  const unsure = unsureStretches(mended);
  const where = unsure.slice(0, MOST_TOLD).map(([from, to]) => `${length(from)} to ${length(to)}`);
  return (
    <>
      <p>
        {depthMm.length === 0
          ? 'Nothing is left of the line.'
          : `${depthMm.length} readings from ${length(depthMm[0]!)} to ${length(depthMm.at(-1)!)}, ${sureText(sure)} sure on the whole.`}
        {gaps > 0 && ` ${length(gaps)} left out.`}
        {drawn > 0 && ` ${length(drawn)} drawn by hand.`}
      </p>
      {unsure.length > 0 && (
        <p className="needed">
          {`The ink is not clear from ${where.join(', ')}${unsure.length > MOST_TOLD ? `, and ${unsure.length - MOST_TOLD} more` : ''}: look there first (broken line).`}
        </p>
      )}
      {reading.warnings.length > 0 && (
        <ul className="warnings">
          {reading.warnings.map((warning) => (
            <li key={warning}>{warning}</li>
          ))}
        </ul>
      )}
    </>
  );
}

interface ByNumbersProps {
  onErase: (fromMm: number, toMm: number) => void;
  onDraw: (points: readonly OnScale[]) => void;
}

/** Mending without a finger on the photo: by depths and levels. */
function ByNumbers({ onErase, onDraw }: ByNumbersProps) {
  const { units } = useSettings();
  const [text, setText] = useState({ from: '', to: '', fromPct: '', toPct: '' });
  const number = (raw: string): number => {
    const read = readNumber(raw);
    return read.ok ? read.value : Number.NaN;
  };
  const [from, to] = [number(text.from), number(text.to)].map((value) => storedOf(value, 'lengthMm', units));
  const [fromPct, toPct] = [number(text.fromPct), number(text.toPct)];
  const depths = Number.isFinite(from) && Number.isFinite(to) && to! > from!;
  const unit = fieldUnit('lengthMm', units);
  const entry = (field: keyof typeof text, label: string, of: string) => (
    <PlainEntry
      label={label}
      unit={of}
      numeric
      value={text[field]}
      onType={(typed) => setText({ ...text, [field]: typed })}
    />
  );
  return (
    <details>
      <summary className="opener">Mend by numbers</summary>
      <div className="fields scale-fields">
        {entry('from', 'From depth', unit)}
        {entry('to', 'To depth', unit)}
        {entry('fromPct', 'Level there', '%')}
        {entry('toPct', 'Level at its end', '%')}
      </div>
      <div className="actions">
        <Button className="button" isDisabled={!depths} onPress={() => onErase(from!, to!)}>
          Erase this stretch
        </Button>
        <Button
          className="button"
          isDisabled={!depths || !Number.isFinite(fromPct) || !Number.isFinite(toPct)}
          onPress={() =>
            onDraw([
              { depthMm: from!, levelPct: fromPct },
              { depthMm: to!, levelPct: toPct },
            ])
          }
        >
          Draw a straight line
        </Button>
      </div>
    </details>
  );
}

function listOf(points: readonly PointPx[]): string {
  return points.map(([x, y]) => `${x},${y}`).join(' ');
}

/** Distance of a place from the stretch between two points. */
function distanceTo(x: number, y: number, [ax, ay]: PointPx, [bx, by]: PointPx): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}
