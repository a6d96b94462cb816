/** One drilling: its trace to look into, its zones, and how the needle went in. */
import { removeDrilling } from '@standfast/casefile';
import type { DrillingAssessment } from '@standfast/engine';
import { bearing, commonTopPct, wallInWords } from '@standfast/report';
import { ArrowLeft, ArrowRight, Camera, ImageUp, Trash2, Upload } from 'lucide-react';
import { Button } from 'react-aria-components';
import { Link, useLocation } from 'wouter';
import {
  drillingAddress,
  fileNamed,
  placedDrillings,
  refOfAddress,
  traceFilesOf,
} from '../edit/drillings.ts';
import { explainWall } from '../explain/fromAssessment.ts';
import { BearingEntry, NumberEntry, TextEntry } from '../parts/entries.tsx';
import { FilePicker } from '../parts/FilePicker.tsx';
import { Group } from '../parts/Group.tsx';
import { KeptPhoto } from '../parts/KeptPhoto.tsx';
import { OpenNumber } from '../parts/OpenNumber.tsx';
import { StripOrigin } from '../parts/StripOrigin.tsx';
import { TraceView } from '../parts/TraceView.tsx';
import { PHOTO_FILES, TABLE_FILES } from '../state/incoming.ts';
import { useSettings } from '../state/settings.ts';
import { useAssessment, useRecord, useSession, useSessionView } from '../state/useSession.tsx';
import { useStripPractice } from '../state/useStripPractice.ts';
import { quantityText, sureText } from '../units/quantities.ts';

export function DrillingPlace({ drillingId }: { drillingId: string }) {
  const { id: caseId, caseFile, files } = useRecord();
  const session = useSession();
  const { writer, result } = useSessionView();
  const assessment = useAssessment();
  const [, navigate] = useLocation();
  const { units } = useSettings();
  useStripPractice();
  const placed = placedDrillings(caseFile);
  const ref = refOfAddress(drillingId);
  const at = placed.findIndex((each) => each.ref === ref);
  const here = placed[at];
  if (!here) {
    return (
      <section className="empty">
        <h1>This drilling is not in the case</h1>
        <Link className="button" href={`/case/${caseId}/section`}>
          All drillings
        </Link>
      </section>
    );
  }
  const { drilling, placeId, path } = here;
  const holders = assessment ? [...assessment.sections, ...assessment.flares] : [];
  const read = holders.find(({ id }) => id === placeId)?.drillings.find(({ id }) => id === drilling.id);
  const file = traceFilesOf(caseFile, files).find(({ named }) => named === drilling.trace) ?? null;
  const photo = drilling.photo === undefined ? null : fileNamed(files, drilling.photo, `${path}.photo`);
  const neighbour = (step: number) => placed[(at + step + placed.length) % placed.length]!;
  return (
    <>
      <div className="place-head">
        <Link className="button quiet" href={`/case/${caseId}/section`}>
          <ArrowLeft aria-hidden /> All drillings
        </Link>
        <h1>
          {drilling.id} <small>{`${placeId}, ${bearing(drilling.azimuthDeg)}`}</small>
        </h1>
        <nav className="button-row" aria-label="Other drillings">
          <Link
            className="icon-button edged"
            href={drillingAddress(caseId, neighbour(-1).ref)}
            aria-label={`Drilling before: ${neighbour(-1).drilling.id}`}
          >
            <ArrowLeft aria-hidden />
          </Link>
          <Link
            className="icon-button edged"
            href={drillingAddress(caseId, neighbour(1).ref)}
            aria-label={`Next drilling in the list: ${neighbour(1).drilling.id}`}
          >
            <ArrowRight aria-hidden />
          </Link>
        </nav>
      </div>
      {read ? (
        <>
          <TraceView
            key={ref}
            drilling={read}
            file={file}
            topPct={commonTopPct(holders.flatMap(({ drillings }) => drillings))}
          />
          {read.warnings.length > 0 && (
            <ul className="warnings">
              {read.warnings.map((warning) => (
                <li key={warning}>{warning}</li>
              ))}
            </ul>
          )}
          <p className="figure-words">
            <OpenNumber explanation={explainWall(read, units)}>{wallInWords(read, units)}</OpenNumber>
          </p>
        </>
      ) : (
        <p className="hint">
          {drilling.trace
            ? result.working
              ? 'The trace is being read…'
              : 'The trace is drawn here once the case can be assessed.'
            : 'No trace yet. Bring in the table your drill wrote for this hole, or photograph its paper strip.'}
        </p>
      )}
      <div className="columns">
        <div className="column">
          {read && <Zones drilling={read} />}
          {photo && (
            <KeptPhoto title="Paper strip" path={photo.path} sha256={photo.sha256}>
              {file && <StripOrigin path={file.path} sha256={file.sha256} />}
            </KeptPhoto>
          )}
        </div>
        <div className="column">
          <Group title="How the needle went in">
            <div className="fields">
              <BearingEntry
                at={`${path}.azimuthDeg`}
                label="Entry, direction from the pith"
                hint="Clockwise from north."
              />
              <NumberEntry
                at={`${path}.offRadialDeg`}
                label="Off the radial"
                hint="Clockwise seen from above; 0 points at the pith."
                quantity="angleDeg"
                placeholder="0"
                limits={{ min: -90, max: 90 }}
              />
              <NumberEntry
                at={`${path}.downDeg`}
                label="Below the horizontal"
                quantity="angleDeg"
                placeholder="0"
                limits={{ min: -90, max: 90 }}
              />
              <TextEntry at={`${path}.note`} label="Note" />
            </div>
            <p className="hint">{drilling.trace ? `Trace file: ${drilling.trace}` : 'No trace file.'}</p>
            <div className="actions">
              <FilePicker
                label="Table of readings"
                accept={TABLE_FILES}
                caseId={caseId}
                isDisabled={writer !== true}
              >
                <Upload aria-hidden /> {drilling.trace ? 'Another table' : 'Bring in its table'}
              </FilePicker>
              <FilePicker
                label="Take a photo of its strip"
                accept="image/*"
                camera
                caseId={caseId}
                isDisabled={writer !== true}
              >
                <Camera aria-hidden /> Photograph its strip
              </FilePicker>
              <FilePicker
                label="Photo of the paper strip"
                accept={PHOTO_FILES}
                caseId={caseId}
                isDisabled={writer !== true}
              >
                <ImageUp aria-hidden /> Choose its photo
              </FilePicker>
              <Button
                className="button alarm"
                isDisabled={writer !== true}
                onPress={() => {
                  session.edit(`Take out ${drilling.id}`, (before) =>
                    removeDrilling(before, { ...here.place, drillingId: drilling.id }),
                  );
                  navigate(`/case/${caseId}/section`);
                }}
              >
                <Trash2 aria-hidden /> Take out
              </Button>
            </div>
          </Group>
        </div>
      </div>
    </>
  );
}

function Zones({ drilling }: { drilling: DrillingAssessment }) {
  const { units } = useSettings();
  return (
    <Group title="Zones">
      <table className="zones">
        <thead>
          <tr>
            <th scope="col">Kind</th>
            <th scope="col">From</th>
            <th scope="col">To</th>
            <th scope="col">Probability</th>
          </tr>
        </thead>
        <tbody>
          {drilling.zones.map((zone) => (
            <tr key={zone.fromMm}>
              <th scope="row">{zone.kind}</th>
              <td>{quantityText(zone.fromMm, 'lengthMm', units)}</td>
              <td>{quantityText(zone.toMm, 'lengthMm', units)}</td>
              <td>{sureText(zone.confidence)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Group>
  );
}
