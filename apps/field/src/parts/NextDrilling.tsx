/** Where one more hole would help most, as a place to stand and a direction to drill, or why to stop. */
import type { Assessment, FirstDrillings, NextDrilling } from '@standfast/engine';
import { bearing } from '@standfast/report';
import { useSettings } from '../state/settings.ts';
import { fixed, quantityText } from '../units/quantities.ts';
import { OpenNumber } from './OpenNumber.tsx';

/** Places named beside the best one. */
const ALTERNATIVES = 5;

type Candidate = NonNullable<NextDrilling['candidates']>[number];

export function NextDrillingCard({ assessment }: { assessment: Assessment }) {
  const { nextDrilling: next, firstDrillings = [] } = assessment;
  return (
    <div className="next-card">
      {next.stop === true ? (
        <>
          <p className="next-head">No further hole</p>
          <p>{next.why}</p>
          <Ranking title="Every place looked at" candidates={next.candidates ?? []} />
        </>
      ) : (
        <NextPlace assessment={assessment} next={next} planned={firstDrillings.length > 0} />
      )}
      {firstDrillings.map((plan) => (
        <Plan key={plan.sectionId} plan={plan} />
      ))}
    </div>
  );
}

interface NextPlaceProps {
  assessment: Assessment;
  next: Exclude<NextDrilling, { stop: true }>;
  planned: boolean;
}

function NextPlace({ assessment, next, planned }: NextPlaceProps) {
  const { units } = useSettings();
  const section = assessment.sections.find(({ id }) => id === next.sectionId);
  const heading = (next.azimuthDeg + 180 + next.offRadialDeg + 360) % 360;
  const worth = percent(next.worth);
  const others = next.candidates.filter(
    ({ sectionId, azimuthDeg }) => sectionId !== next.sectionId || azimuthDeg !== next.azimuthDeg,
  );
  return (
    <>
      <p className="next-head">
        {planned ? 'Begin here' : 'Next drilling'}: stand at {bearing(next.azimuthDeg)} of {next.sectionId}
      </p>
      <dl className="facts">
        <div>
          <dt>Stand</dt>
          <dd>{bearing(next.azimuthDeg)}</dd>
        </div>
        {section && (
          <div>
            <dt>Height above ground</dt>
            <dd>{quantityText(section.heightM, 'heightM', units)}</dd>
          </div>
        )}
        <div>
          <dt>{next.offRadialDeg === 0 ? 'Drill toward the pith, heading' : 'Drill heading'}</dt>
          <dd>
            {bearing(heading)}
            {next.offRadialDeg !== 0 && ` (${turnedText(next)} of the pith)`}
          </dd>
        </div>
      </dl>
      <p>{next.why}</p>
      <p>
        Worth{' '}
        <OpenNumber
          explanation={{
            name: 'Worth of one more hole',
            value: worth,
            meaning:
              'The expected drop in the chance of a wrong decision to keep or to act, as a share of that chance now.',
            formula: [
              'for each place and heading: what the needle would meet in each draw, and the decision that would follow',
              'worth = 1 − chance of a wrong decision after the hole ÷ chance before it',
              'where one hole alone would not change the decision: half of what two are worth',
              'places are ranked by what each hole tells of the strength about the limit, not by its worth alone',
            ],
            inputs: next.candidates.slice(0, 12).map((candidate) => ({
              name: placeOf(candidate),
              value: percent(candidate.worth),
              source: 'this assessment',
            })),
            sources: [],
            limits: 'It does not know where you can stand, or what the wound costs this tree.',
          }}
        >
          {worth}
        </OpenNumber>{' '}
        of the present chance of a wrong decision.
      </p>
      <Ranking title="Where you cannot stand there" candidates={others} />
    </>
  );
}

/** The best places, the best first, with their worth. */
function Ranking({ title, candidates }: { title: string; candidates: readonly Candidate[] }) {
  const best = candidates.slice(0, ALTERNATIVES);
  if (best.length === 0) return null;
  return (
    <details>
      <summary className="opener">{title}</summary>
      <table className="inputs">
        <thead>
          <tr>
            <th scope="col">Place to stand</th>
            <th scope="col">Drill</th>
            <th scope="col">Worth</th>
          </tr>
        </thead>
        <tbody>
          {best.map((candidate) => (
            <tr key={placeOf(candidate)}>
              <th scope="row">{placeOf(candidate)}</th>
              <td>
                {candidate.offRadialDeg === 0 ? 'toward the pith' : `${turnedText(candidate)} of the pith`}
              </td>
              <td>{percent(candidate.worth)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {candidates.length > best.length && (
        <p className="hint">{`${candidates.length - best.length} more places were looked at; less is to be learnt there.`}</p>
      )}
    </details>
  );
}

/** Where to begin at a section that was not drilled yet. */
function Plan({ plan }: { plan: FirstDrillings }) {
  const { units } = useSettings();
  const { sectionId, drillings, why, leastDepthMm, rules, notes } = plan;
  return (
    <section className="first-drillings">
      <h2>First drillings at {sectionId}</h2>
      <p>{why}</p>
      <ol className="plan-list">
        {drillings.map((each) => (
          <li key={each.order}>
            <p className="plan-place">
              {bearing(each.azimuthDeg)} of {each.placeId}, {quantityText(each.heightM, 'heightM', units)}{' '}
              above ground, {each.downDeg === 0 ? 'level' : `${Math.round(each.downDeg)}° down`}
            </p>
            <p className="hint">{each.why}</p>
          </li>
        ))}
      </ol>
      <p>
        Every needle heads for the centre of the stem. Drill at least{' '}
        {quantityText(leastDepthMm, 'lengthMm', units)} deep; less tells too little for its wound.
      </p>
      {notes.length > 0 && (
        <ul className="warnings">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <details>
        <summary className="opener">Rules followed, and where they are from</summary>
        <ul className="plain-list">
          {rules.map(({ text, source }) => (
            <li key={text}>
              {text} <small>{source}</small>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

/** How far and to which hand the needle is turned, for one who stands there and faces the stem. */
function turnedText({ offRadialDeg }: Candidate): string {
  return `${fixed(Math.abs(offRadialDeg), 0)}° to the ${offRadialDeg > 0 ? 'right' : 'left'}`;
}

function placeOf({ sectionId, azimuthDeg }: Candidate): string {
  return `${bearing(azimuthDeg)} of ${sectionId}`;
}

function percent(share: number): string {
  return `${fixed(100 * share, 0)} %`;
}
