/** Strength left by direction, the wind that asks for it, and the trade's own rules beside them. */
import type {
  Assessment,
  Criterion,
  DirectionalInterval,
  SectionAssessment,
  SourcedValue,
} from '@standfast/engine';
import { bearing, remainingRose, safetyRose, sectionWithRoseFigure } from '@standfast/report';
import { Check, Minus, X } from 'lucide-react';
import { useCallback, useState } from 'react';
import {
  explainCriterion,
  explainGust,
  explainMoment,
  explainRemaining,
  leastOf,
  nearest,
} from '../explain/fromAssessment.ts';
import { Figure } from '../parts/Figure.tsx';
import { Group } from '../parts/Group.tsx';
import { OpenNumber } from '../parts/OpenNumber.tsx';
import { SectionChooser } from '../parts/SectionChooser.tsx';
import { Segments } from '../parts/SettingsButton.tsx';
import { useSettings } from '../state/settings.ts';
import { useAssessment } from '../state/useSession.tsx';
import { fixed, intervalText, measure, rangeText, shareText } from '../units/quantities.ts';
import { WindPicture } from './TreePlace.tsx';

export function StrengthPlace() {
  const assessment = useAssessment();
  const [wanted, setWanted] = useState<string | null>(null);
  if (!assessment) {
    return (
      <>
        <h1>Strength and wind</h1>
        <p className="hint">Strength and wind are shown here once the case can be assessed.</p>
      </>
    );
  }
  const { sections } = assessment;
  const section = sections.find(({ id }) => id === wanted) ?? sections[0]!;
  return (
    <>
      <div className="place-head">
        <h1>Strength and wind</h1>
        <SectionChooser sections={sections} value={section.id} onChoose={setWanted} />
      </div>
      <div className="columns">
        <Roses section={section} />
        <WindGroup />
      </div>
      <Group
        title="The trade’s rules"
        lead="Published rules, shown beside the calculation. Each leaves something out; open it to see what."
      >
        <Criteria criteria={section.criteria} />
      </Group>
      <ValuesGroup assessment={assessment} />
    </>
  );
}

function Roses({ section }: { section: SectionAssessment }) {
  const assessment = useAssessment()!;
  const { units } = useSettings();
  const [shown, setShown] = useState('strength');
  const { safety } = assessment;
  const drawStrength = useCallback(
    (width: number) => remainingRose(section, { width, units, textSize: width < 500 ? 12 : 13 }),
    [section, units],
  );
  const drawSafety = useCallback(
    (width: number) => safetyRose(safety, { width, units, textSize: width < 500 ? 12 : 13 }),
    [safety, units],
  );
  const least = leastOf(section);
  return (
    <Group
      title="By direction"
      lead="Directions are those in which the stem bends, where the wind blows to."
      className="column"
    >
      <Segments
        label="Rose shown"
        hideLabel
        value={shown}
        options={[
          ['strength', 'Strength left'],
          ['safety', 'Safety'],
        ]}
        onChoose={setShown}
      />
      <Figure draw={shown === 'strength' ? drawStrength : drawSafety} maxWidth={620} />
      <dl className="facts">
        <div>
          <dt>Strength left at {section.id}, least</dt>
          <dd>
            <OpenNumber explanation={explainRemaining(section, assessment, units)}>
              {shareText(least)}
            </OpenNumber>
            <small>bending to {bearing(least.directionDeg)}</small>
          </dd>
        </div>
        <div>
          <dt>Sound share of the wood</dt>
          <dd>{shareText(section.soundShare)}</dd>
        </div>
      </dl>
      <DirectionTable section={section} />
    </Group>
  );
}

/** The roses in figures, for those who read a table more surely than a drawing. */
function DirectionTable({ section }: { section: SectionAssessment }) {
  const { safety } = useAssessment()!;
  const cell = (list: readonly DirectionalInterval[], directionDeg: number) => {
    const found = nearest(list, directionDeg);
    return found ? intervalText(found) : '–';
  };
  return (
    <details>
      <summary className="opener">By direction, as a table</summary>
      <div className="table-holder">
        <table className="by-direction">
          <thead>
            <tr>
              <th scope="col">Bending to</th>
              <th scope="col">Strength left at {section.id}</th>
              <th scope="col">Safety, breakage</th>
              <th scope="col">Safety, uprooting</th>
            </tr>
          </thead>
          <tbody>
            {section.remaining.map((remaining) => (
              <tr key={remaining.directionDeg}>
                <th scope="row">{bearing(remaining.directionDeg)}</th>
                <td>{shareText(remaining)}</td>
                <td>{cell(safety.breakage, remaining.directionDeg)}</td>
                <td>{cell(safety.uprooting, remaining.directionDeg)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function WindGroup() {
  const assessment = useAssessment()!;
  const { units } = useSettings();
  const { wind } = assessment;
  return (
    <Group title="Wind on the tree" lead={wind.windCode} className="column">
      <WindPicture />
      <dl className="facts">
        <div>
          <dt>Moment at the ground</dt>
          <dd>
            <OpenNumber explanation={explainMoment(assessment, units)}>
              {measure(wind.momentNm, 'momentNm', units)}
            </OpenNumber>
            <small>{rangeText(wind.momentIntervalNm, 'momentNm', units)}</small>
          </dd>
        </div>
        <div>
          <dt>Gust at the crown</dt>
          <dd>
            <OpenNumber explanation={explainGust(assessment, units)}>
              {measure(wind.gustMs, 'speedMs', units)}
            </OpenNumber>
          </dd>
        </div>
        <div>
          <dt>Crown area</dt>
          <dd>{measure(wind.crownAreaM2, 'areaM2', units)}</dd>
        </div>
        <div>
          <dt>Centre of pressure</dt>
          <dd>{measure(wind.centreOfPressureM, 'heightM', units)}</dd>
        </div>
      </dl>
    </Group>
  );
}

const MET = {
  true: { word: 'met', icon: Check },
  false: { word: 'not met', icon: X },
  null: { word: 'does not apply', icon: Minus },
} as const;

function Criteria({ criteria }: { criteria: readonly Criterion[] }) {
  return (
    <ul className="criteria">
      {criteria.map((criterion) => {
        const { name, met, value, limit, quantity } = criterion;
        const { word, icon: Icon } = MET[`${met}`];
        return (
          <li key={name} className={met === false ? 'not-met' : met === true ? 'met' : 'not-applying'}>
            <span className="criterion-met">
              <Icon aria-hidden size={22} /> {word}
            </span>
            <span className="criterion-name">
              {name}
              <small>{criterion.source}</small>
            </span>
            <OpenNumber explanation={explainCriterion(criterion)}>
              {value === null ? '–' : fixed(value, 2)}
              <small>{` limit ${fixed(limit, 2)}`}</small>
            </OpenNumber>
            <small className="criterion-quantity">{quantity}</small>
          </li>
        );
      })}
    </ul>
  );
}

function ValuesGroup({ assessment }: { assessment: Assessment }) {
  const values = [...assessment.wood.values, ...assessment.wind.values, ...assessment.safety.values];
  return (
    <Group title="Values used" lead="Every table value in this assessment, with its scatter and source.">
      <details>
        <summary className="opener">Show all {values.length} values</summary>
        <Values values={values} />
      </details>
    </Group>
  );
}

function Values({ values }: { values: readonly SourcedValue[] }) {
  return (
    <div className="table-holder">
      <table className="values">
        <thead>
          <tr>
            <th scope="col">Quantity</th>
            <th scope="col">Value</th>
            <th scope="col">Scatter</th>
            <th scope="col">Source</th>
          </tr>
        </thead>
        <tbody>
          {values.map(({ name, value, unit, cov, source }) => (
            <tr key={`${name} ${value} ${source}`}>
              <th scope="row">{name}</th>
              <td>{`${Number(value.toPrecision(4))}${unit && unit !== '1' ? `\u00a0${unit}` : ''}`}</td>
              <td>{cov === undefined ? '–' : `±${fixed(100 * cov, 0)} %`}</td>
              <td>{source}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The section with safety round it: the assessment in one drawing. */
export function SectionWithRose({ section }: { section: SectionAssessment }) {
  const assessment = useAssessment()!;
  const { units } = useSettings();
  const { safety, nextDrilling: next } = assessment;
  const draw = useCallback(
    (width: number) =>
      sectionWithRoseFigure({ section, safety, next }, { width, units, textSize: width < 500 ? 11.5 : 13 }),
    [section, safety, next, units],
  );
  return <Figure draw={draw} maxWidth={720} />;
}
