/** The sections in plan with their drillings, the outline, and every trace in a row at one scale. */
import {
  addFlare,
  addSection,
  type CaseSection,
  DEFAULTS,
  nextId,
  removeFlare,
  removeSection,
} from '@standfast/casefile';
import type { DrillingAssessment, SectionAssessment } from '@standfast/engine';
import { bearing, commonTopPct, sectionFigure, traceFigure } from '@standfast/report';
import { Camera, ImageUp, Plus, Trash2, Upload } from 'lucide-react';
import { useCallback, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link, useLocation } from 'wouter';
import { drillingAddress, placedDrillings } from '../edit/drillings.ts';
import { explainRemaining, leastOf } from '../explain/fromAssessment.ts';
import { BearingEntry, NumberEntry, TextEntry } from '../parts/entries.tsx';
import { Figure } from '../parts/Figure.tsx';
import { FilePicker } from '../parts/FilePicker.tsx';
import { Group } from '../parts/Group.tsx';
import { NextDrillingCard } from '../parts/NextDrilling.tsx';
import { OpenNumber } from '../parts/OpenNumber.tsx';
import { OutlineEditor } from '../parts/OutlineEditor.tsx';
import { SectionChooser } from '../parts/SectionChooser.tsx';
import { SharpeningGroup } from '../parts/Sharpening.tsx';
import { SurfaceEditor } from '../parts/SurfaceEditor.tsx';
import { FelledGroup } from '../parts/section/FelledGroup.tsx';
import { OpeningFields } from '../parts/section/OpeningFields.tsx';
import { PHOTO_FILES, TABLE_FILES } from '../state/incoming.ts';
import { useSettings } from '../state/settings.ts';
import { useAssessment, useCaseFile, useRecord, useSession, useSessionView } from '../state/useSession.tsx';
import { useStripPractice } from '../state/useStripPractice.ts';
import { fieldText, shareText } from '../units/quantities.ts';

export function SectionPlace() {
  const { sections, tree } = useCaseFile();
  const session = useSession();
  const { writer } = useSessionView();
  useStripPractice();
  const [wanted, setWanted] = useState<string | null>(null);
  const index = Math.max(
    0,
    sections.findIndex(({ id }) => id === wanted),
  );
  const section = sections[index];
  const add = () => {
    session.edit('Add a section', (caseFile) =>
      addSection(caseFile, {
        id: nextId(caseFile, 'section'),
        heightM: 1.3,
        outline: { kind: 'circle', diameterMm: tree.stemDiameterMm ?? 600 },
      }),
    );
  };
  const addButton = (
    <Button className="button" onPress={add} isDisabled={writer !== true}>
      <Plus aria-hidden /> Add a section
    </Button>
  );
  if (!section) {
    return (
      <>
        <h1>Section and drillings</h1>
        <section className="empty">
          <h2>No section yet</h2>
          <p>
            A section is a level at which you drilled. Give it a height and an outline; then bring in the
            tables of readings, and say at which side each needle went in.
          </p>
          {addButton}
        </section>
      </>
    );
  }
  return (
    <>
      <div className="place-head">
        <h1>Section and drillings</h1>
        <SectionChooser sections={sections} value={section.id} onChoose={setWanted} />
      </div>
      <div className="columns">
        <div className="column figure-column">
          <Plan sectionId={section.id} />
        </div>
        <div className="column">
          <NextHere />
          <OutlineGroup section={section} index={index} />
          <div className="actions">{addButton}</div>
        </div>
      </div>
      <Drillings />
      <Sharpened sectionId={section.id} />
      <Flares />
      <FelledGroup section={section} index={index} />
    </>
  );
}

function NextHere() {
  const assessment = useAssessment();
  return assessment && <NextDrillingCard assessment={assessment} />;
}

function Sharpened({ sectionId }: { sectionId: string }) {
  const section = useSectionAssessment(sectionId);
  return section && section.drillings.length > 0 ? (
    <SharpeningGroup key={sectionId} section={section} />
  ) : null;
}

function useSectionAssessment(id: string): SectionAssessment | undefined {
  return useAssessment()?.sections.find((section) => section.id === id);
}

function Plan({ sectionId }: { sectionId: string }) {
  const { units } = useSettings();
  const { id: caseId } = useRecord();
  const [, navigate] = useLocation();
  const assessment = useAssessment();
  const section = useSectionAssessment(sectionId);
  const flares = assessment?.flares;
  const next = assessment?.nextDrilling;
  const lowest = assessment?.sections.reduce((a, b) => (b.heightM < a.heightM ? b : a)).id === sectionId;
  const draw = useCallback(
    (width: number) => {
      if (!section) throw new Error('There is no section to draw yet.');
      const content = { section, next, flares: lowest ? flares : undefined };
      return sectionFigure(content, { width, units, textSize: width < 500 ? 12 : 13 });
    },
    [section, flares, next, lowest, units],
  );
  const press = (part: string, ref: string) => {
    if (part === 'drilling') navigate(drillingAddress(caseId, ref));
  };
  if (!assessment || !section) {
    return <p className="hint">The section is drawn here once its outline and the tree are known.</p>;
  }
  const least = leastOf(section);
  return (
    <>
      <Figure draw={draw} onPart={press} maxWidth={680} />
      <p className="figure-words">
        Strength left, least:{' '}
        <OpenNumber explanation={explainRemaining(section, assessment, units)}>{shareText(least)}</OpenNumber>
        , bending to {bearing(least.directionDeg)}. Tap a needle to look into its trace.
      </p>
    </>
  );
}

function OutlineGroup({ section, index }: { section: CaseSection; index: number }) {
  const { units } = useSettings();
  const session = useSession();
  const { writer } = useSessionView();
  return (
    <Group
      title={`Section ${section.id}`}
      tools={
        <Button
          className="icon-button"
          aria-label={`Take out section ${section.id}`}
          isDisabled={writer !== true}
          onPress={() =>
            session.edit(`Take out section ${section.id}`, (caseFile) => removeSection(caseFile, section.id))
          }
        >
          <Trash2 aria-hidden />
        </Button>
      }
    >
      <div className="fields">
        <NumberEntry
          at={`sections.${index}.heightM`}
          label="Height above ground"
          quantity="heightM"
          limits={{ min: 0, max: 60 }}
        />
        <NumberEntry
          at={`sections.${index}.barkMm`}
          label="Bark thickness"
          placeholder={fieldText(DEFAULTS.barkMm, 'lengthMm', units)}
          quantity="lengthMm"
          limits={{ min: 0, max: 300 }}
        />
      </div>
      <OutlineEditor index={index} />
      <SurfaceEditor section={section} index={index} />
      <OpeningFields section={section} index={index} />
      <div className="fields">
        <TextEntry at={`sections.${index}.note`} label="Note on the section" lines={2} />
      </div>
    </Group>
  );
}

function Drillings() {
  const { caseFile } = useRecord();
  const assessment = useAssessment();
  const { id: caseId } = useRecord();
  const { writer } = useSessionView();
  const placed = placedDrillings(caseFile);
  const assessed = new Map<string, DrillingAssessment>();
  for (const holder of assessment ? [...assessment.sections, ...assessment.flares] : []) {
    for (const drilling of holder.drillings) assessed.set(`${holder.id}/${drilling.id}`, drilling);
  }
  const all = [...assessed.values()];
  const deepestMm = Math.max(1, ...all.map((drilling) => drilling.drawn.depthMm.at(-1) ?? 0));
  const topPct = commonTopPct(all);
  return (
    <Group
      title="Drillings"
      lead={placed.length > 0 ? 'All traces at one scale, so that depths and levels compare.' : undefined}
      tools={
        <div className="actions">
          <FilePicker
            label="Tables of readings"
            accept={TABLE_FILES}
            multiple
            caseId={caseId}
            isDisabled={writer !== true}
          >
            <Upload aria-hidden /> Bring in tables
          </FilePicker>
          <FilePicker
            label="Take a photo of a strip"
            accept="image/*"
            camera
            caseId={caseId}
            isDisabled={writer !== true}
          >
            <Camera aria-hidden /> Photograph a strip
          </FilePicker>
          <FilePicker
            label="Photos of paper strips"
            accept={PHOTO_FILES}
            multiple
            caseId={caseId}
            isDisabled={writer !== true}
          >
            <ImageUp aria-hidden /> Choose photos
          </FilePicker>
        </div>
      }
    >
      {placed.length === 0 && (
        <section className="empty">
          <p>
            No drilling yet. Bring in the tables your drill wrote, or photograph its paper strips: you will
            see how each is read before it counts.
          </p>
        </section>
      )}
      <ul className="drilling-list">
        {placed.map(({ drilling, ref, placeId }) => (
          <li key={ref}>
            <Link href={drillingAddress(caseId, ref)}>
              <span className="drilling-id">{drilling.id}</span>
              <span className="drilling-pose">
                {placeId}, {bearing(drilling.azimuthDeg)}
              </span>
              <DrillingRow
                drilling={assessed.get(ref)}
                named={drilling.trace !== undefined}
                deepestMm={deepestMm}
                topPct={topPct}
              />
            </Link>
          </li>
        ))}
      </ul>
    </Group>
  );
}

interface DrillingRowProps {
  drilling: DrillingAssessment | undefined;
  named: boolean;
  deepestMm: number;
  topPct: number;
}

function DrillingRow({ drilling, named, deepestMm, topPct }: DrillingRowProps) {
  const { units } = useSettings();
  const draw = useCallback(
    (width: number) => {
      if (!drilling) throw new Error('There is no trace to draw yet.');
      return traceFigure(drilling, {
        width,
        units,
        textSize: 11,
        plotHeight: 64,
        depthRangeMm: [0, deepestMm],
        topPct,
        bare: true,
      });
    },
    [drilling, units, deepestMm, topPct],
  );
  if (!drilling) return <small>{named ? 'not read yet' : 'no trace yet'}</small>;
  return <Figure draw={draw} className="drilling-strip" />;
}

function Flares() {
  const session = useSession();
  const { writer } = useSessionView();
  const { flares } = useCaseFile();
  const add = () =>
    session.edit('Add a flare', (caseFile) =>
      addFlare(caseFile, { id: nextId(caseFile, 'flare'), azimuthDeg: 0 }),
    );
  return (
    <Group
      title="Root flares"
      lead="Each main root where it leaves the stem. Drilled flares tell of the anchorage."
    >
      <ul className="rows">
        {flares.map(({ id, drillings }, i) => (
          <li key={id} className="row">
            <div className="fields">
              <BearingEntry at={`flares.${i}.azimuthDeg`} label={`Flare ${id}, direction`} />
              <NumberEntry
                at={`flares.${i}.widthMm`}
                label="Width"
                quantity="lengthMm"
                limits={{ min: 0, aboveMin: true, max: 5000 }}
              />
              <NumberEntry
                at={`flares.${i}.heightMm`}
                label="Height"
                quantity="lengthMm"
                limits={{ min: 0, aboveMin: true, max: 5000 }}
              />
              <TextEntry at={`flares.${i}.note`} label="Note" />
              <p className="hint flare-drillings">
                {drillings.length === 0
                  ? 'Not drilled.'
                  : `Drilled: ${drillings.map((each) => each.id).join(', ')}.`}
              </p>
            </div>
            <Button
              className="icon-button"
              aria-label={`Take out flare ${id}`}
              isDisabled={writer !== true}
              onPress={() => session.edit(`Take out flare ${id}`, (caseFile) => removeFlare(caseFile, id))}
            >
              <Trash2 aria-hidden />
            </Button>
          </li>
        ))}
      </ul>
      <Button className="button" onPress={add} isDisabled={writer !== true}>
        <Plus aria-hidden /> Add a flare
      </Button>
    </Group>
  );
}
