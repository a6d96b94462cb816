/** The chart on the photo: its corners, put right by hand where they are not, and its scale, confirmed in one step. */
import { type CornersPx, type PointPx, type PrintedScale, standsUpright } from '@standfast/engine';
import { RotateCw, ScanLine, ScanSearch } from 'lucide-react';
import { Fragment, useState } from 'react';
import { Button } from 'react-aria-components';
import { between, turnedCorners, withCorner } from '../edit/stripChart.ts';
import {
  knownOf,
  pointsToBeginWith,
  type ScaleField,
  type ScaleText,
  type StripDraft,
  scaleFromPrint,
  withSeen,
} from '../edit/stripDraft.ts';
import { PlainEntry } from '../parts/entries.tsx';
import { PhotoHandle, PhotoLabel, PhotoStage } from '../parts/PhotoStage.tsx';
import { Segments } from '../parts/SettingsButton.tsx';
import { useSettings } from '../state/settings.ts';
import { fieldUnit, sureText } from '../units/quantities.ts';
import type { OpenPhoto, StripReader } from '../work/strip.ts';
import type { Doing } from './StripStep.tsx';

const CORNER_NAMES = ['Top left corner', 'Top right corner', 'Bottom right corner', 'Bottom left corner'];

/** What is asked of depth, by how it is known. */
const WAY_FIELDS: Record<ScaleText['way'], readonly (readonly [ScaleField, string])[]> = {
  edges: [
    ['left', 'Depth at the left edge'],
    ['right', 'Depth at the right edge'],
  ],
  points: [
    ['atA', 'Depth at A'],
    ['atB', 'Depth at B'],
  ],
  ruler: [
    ['apart', 'From A to B'],
    ['start', 'Depth where it begins'],
  ],
};

interface StripChartProps {
  photo: OpenPhoto;
  reader: StripReader;
  draft: StripDraft;
  corners: CornersPx;
  change: (part: Partial<StripDraft>) => void;
  busy: boolean;
  setDoing: (doing: Doing | null) => void;
  setFault: (fault: string | null) => void;
}

export function StripChart(props: StripChartProps) {
  const { photo, reader, draft, corners, change, busy, setDoing, setFault } = props;
  const { units } = useSettings();
  const [asked, setAsked] = useState(false);
  const [said, setSaid] = useState<string | null>(null);
  const { bitmap } = photo;
  const { found, printed, scale } = draft;
  const points = draft.points ?? pointsToBeginWith(corners);
  const outcome = knownOf(draft, units);
  const faults = asked && 'faults' in outcome ? outcome.faults : {};

  const place = (next: CornersPx) => {
    setSaid(null);
    change({ corners: next, found: null });
  };
  const findAgain = async () => {
    setDoing({ step: 'Looking for the chart', share: 0 });
    const answer = await reader.find((share, step) =>
      setDoing({ step: `Looking for the chart: ${step}`, share }),
    );
    setDoing(null);
    if (!answer.ok) return setFault(answer.message);
    setFault(null);
    change(withSeen(draft, answer.value, bitmap, units));
  };
  const snap = async () => {
    setDoing({ step: 'Looking for printed lines', share: 0 });
    const answer = await reader.snap(corners, (share, step) =>
      setDoing({ step: `Looking for printed lines: ${step}`, share }),
    );
    setDoing(null);
    if (!answer.ok) return setFault(answer.message);
    const sides = answer.value.seen.filter((seen) => seen > 0).length;
    place(answer.value.corners);
    setSaid(
      sides === 0
        ? 'No printed line was seen near these corners; they stay as they are.'
        : `A printed line was seen along ${sides === 4 ? 'all four sides' : `${sides} of the four sides`}.`,
    );
  };
  const read = async () => {
    setAsked(true);
    setFault(null);
    if (!('known' in outcome)) return;
    const cancel = () => reader.cancel();
    setDoing({ step: 'Reading the line', share: 0, cancel });
    const { known } = outcome;
    const answer = await reader.read(
      known,
      { found, scaleFrom: scaleFromPrint(draft, known) },
      (share, step) => setDoing({ step: `Reading the line: ${step}`, share, cancel }),
    );
    setDoing(null);
    if (answer === null) return;
    if (!answer.ok) return setFault(answer.message);
    change({ at: 'line', reading: answer.value, chosen: 0, edits: [] });
  };
  const entry = (field: ScaleField, label: string, unit: string) => (
    <PlainEntry
      label={label}
      numeric
      unit={unit}
      value={scale[field]}
      fault={faults[field] ?? null}
      onType={(text) => change({ scale: { ...scale, [field]: text } })}
    />
  );
  const length = fieldUnit('lengthMm', units);
  const marked = scale.way !== 'edges';
  const movePoint = (index: 0 | 1, to: PointPx) =>
    change({ points: index === 0 ? [to, points[1]] : [points[0], to] });
  return (
    <>
      <section>
        <h3>The chart’s corners</h3>
        <PhotoStage
          shown={photo}
          label="The photographed strip with the chart’s corners"
          overlay={<ChartOutline corners={corners} />}
        >
          {SIDES.map(({ name, from, to }) => (
            <PhotoLabel key={name} at={between(corners[from], corners[to], 0.5)}>
              {name}
            </PhotoLabel>
          ))}
          {corners.map((corner, i) => (
            <PhotoHandle
              key={CORNER_NAMES[i]}
              at={corner}
              name={CORNER_NAMES[i]!}
              mark=""
              onMove={(to) => place(withCorner(corners, i, to))}
            />
          ))}
          {marked &&
            points.map((point, i) => (
              <PhotoHandle
                key={i === 0 ? 'A' : 'B'}
                at={point}
                name={`Point ${i === 0 ? 'A' : 'B'} ${scale.way === 'points' ? 'of known depth' : 'on the ruler'}`}
                mark={i === 0 ? 'A' : 'B'}
                tone="point"
                onMove={(to) => movePoint(i === 0 ? 0 : 1, to)}
              />
            ))}
        </PhotoStage>
        {standsUpright(corners) && (
          <p className="needed">
            This chart stands upright on the photo. Turn it until “left” stands where its depth begins: its
            level then rises from “bottom” to “top”.
          </p>
        )}
        <p>
          {found
            ? `Found by its printed ${found.from === 'axes' ? 'axes' : found.from}, ${sureWords(found.sure)} (${sureText(found.sure)}). Look whether each corner sits where the chart’s scale begins and ends; drag it there if not.`
            : 'Drag the four corners to where the chart’s scale begins and ends, its own top left first.'}
        </p>
        <div className="actions">
          <Button className="button" isDisabled={busy} onPress={snap}>
            <ScanLine aria-hidden /> Snap to print
          </Button>
          <Button className="button" isDisabled={busy} onPress={() => place(turnedCorners(corners))}>
            <RotateCw aria-hidden /> Turn the chart
          </Button>
          <Button className="button" isDisabled={busy} onPress={findAgain}>
            <ScanSearch aria-hidden /> Find again
          </Button>
        </div>
        <p role="status" className="hint">
          {said}
        </p>
      </section>
      <section>
        <h3>The chart’s scale</h3>
        {printed && <p>{printedWords(printed)}</p>}
        <div className="scale-ways">
          <Segments
            label="Depth is known"
            value={scale.way}
            options={[
              ['edges', 'At the left and right edge'],
              ['points', 'At two points'],
              ['ruler', 'By a ruler laid along it'],
            ]}
            onChoose={(way) => change({ scale: { ...scale, way: way as typeof scale.way } })}
          />
        </div>
        {scale.way === 'points' && (
          <p className="hint">Put A and B on two points whose depths you know, for example two ticks.</p>
        )}
        {scale.way === 'ruler' && (
          <>
            <p className="hint">
              For a strip drawn 1:1. Put A and B on two marks of the ruler, far apart, and say how far.
            </p>
            <Segments
              label="Depth begins at the"
              value={scale.startsAt}
              options={[
                ['left', 'Left edge'],
                ['right', 'Right edge'],
              ]}
              onChoose={(side) => change({ scale: { ...scale, startsAt: side as typeof scale.startsAt } })}
            />
          </>
        )}
        <div className="fields scale-fields">
          {WAY_FIELDS[scale.way].map(([field, label]) => (
            <Fragment key={field}>{entry(field, label, length)}</Fragment>
          ))}
          {entry('bottom', 'Level at the bottom', '%')}
          {entry('top', 'Level at the top', '%')}
        </div>
        <p className="hint">
          Level is in percent of the drill’s full scale.
          {scale.way === 'edges' &&
            ' Where the chart runs from right to left, the greater depth stands on the left.'}
        </p>
        <div className="actions">
          <Button className="button primary" isDisabled={busy} onPress={read}>
            Read the line
          </Button>
          {draft.reading && (
            <Button className="button" isDisabled={busy} onPress={() => change({ at: 'line' })}>
              Back to the line
            </Button>
          )}
        </div>
        {draft.edits.length > 0 && <p className="hint">Reading again lets go of what you mended by hand.</p>}
      </section>
    </>
  );
}

const SIDES = [
  { name: 'top', from: 0, to: 1 },
  { name: 'right', from: 1, to: 2 },
  { name: 'bottom', from: 2, to: 3 },
  { name: 'left', from: 3, to: 0 },
] as const;

/** Which of the numbers below were read off the chart. */
function printedWords({ depthMm, resistance }: PrintedScale): string {
  // As they are printed, whatever units the fields are in.
  const depth = depthMm && `depth ${depthMm[0]} to ${depthMm[1]} mm`;
  const level = resistance && `level ${resistance[0]} to ${resistance[1]}\u00a0%`;
  const missing = [depth ? '' : ' Depth could not be read.', level ? '' : ' Level could not be read.'].join(
    '',
  );
  return `Taken from the numbers printed on the chart: ${[depth, level].filter(Boolean).join(', ')}. Hold them against the photo.${missing}`;
}

function sureWords(sure: number): string {
  return sure >= 0.8 ? 'surely' : sure >= 0.5 ? 'likely' : 'perhaps';
}

/** The chart's four sides on the photo. */
export function ChartOutline({ corners }: { corners: CornersPx }) {
  const points = corners.map(([x, y]) => `${x},${y}`).join(' ');
  return (
    <>
      <polygon points={points} className="chart-outline under" />
      <polygon points={points} className="chart-outline" />
    </>
  );
}
