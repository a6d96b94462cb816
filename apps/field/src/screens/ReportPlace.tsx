/** Who reports to whom, what the assessor concludes, and the report itself: looked at here, saved as PDF or HTML. */
import type { CaseFile } from '@standfast/casefile';
import { Download, Eye, FileText, Globe } from 'lucide-react';
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { DateEntry, NumberEntry, TextEntry } from '../parts/entries.tsx';
import { Group } from '../parts/Group.tsx';
import { Cautions } from '../parts/Notices.tsx';
import { FirmGroup } from '../parts/report/FirmGroup.tsx';
import { LetterheadGroup } from '../parts/report/LetterheadGroup.tsx';
import { PassagesGroup } from '../parts/report/PassagesGroup.tsx';
import { SignatureGroup } from '../parts/report/SignatureGroup.tsx';
import { today } from '../state/bringIn.ts';
import { useSettings } from '../state/settings.ts';
import { complain, say } from '../state/toast.tsx';
import { useCaseFiles } from '../state/useCaseFiles.ts';
import { matchesCase, useRecord, useSessionView } from '../state/useSession.tsx';
import { zipOfCase } from '../storage/cases.ts';
import { fileNameOf, offerDownload } from '../storage/fileName.ts';
import { type ReportJob, type ReportPreview, reportWorker } from '../work/reports.ts';

export function ReportPlace() {
  const view = useSessionView();
  const record = useRecord();
  const { units } = useSettings();
  const [busy, setBusy] = useState<string | null>(null);
  const { caseFile } = record;
  const { assessment, quick } = view.result;
  const ready = matchesCase(view) && !quick && assessment !== null;
  const nameAs = (ending: string) => fileNameOf(caseFile.tree.label, caseFile.visitedOn, ending);
  const job = (): ReportJob => {
    if (!assessment) throw new Error('There is no assessment to report.');
    return { assessment, caseFile, units, generatedOn: today() };
  };
  const save = (what: string, work: () => Promise<void>) => async () => {
    setBusy(what);
    try {
      await work();
      say(`${what} saved.`);
    } catch (thrown) {
      complain(`${what}: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
    } finally {
      setBusy(null);
    }
  };
  const { preview, fault } = usePreview(ready ? job() : null);
  const savePdf = save('Report as PDF', async () => {
    const bytes = await reportWorker().pdf(job(), await zipOfCase(record));
    offerDownload(bytes, nameAs('pdf'), 'application/pdf');
  });
  const saveHtml = save('Report as HTML', async () => {
    offerDownload(await reportWorker().html(job(), await zipOfCase(record)), nameAs('html'), 'text/html');
  });
  const saveZip = save('Case as zip', async () => {
    offerDownload(await zipOfCase(record), nameAs('zip'), 'application/zip');
  });
  return (
    <>
      <h1>Report</h1>
      <div className="actions">
        <Button className="button primary" isDisabled={!ready || busy !== null} onPress={savePdf}>
          <FileText aria-hidden /> {busy === 'Report as PDF' ? 'Writing the PDF…' : 'Save report as PDF'}
        </Button>
        <Button className="button" isDisabled={!ready || busy !== null} onPress={saveHtml}>
          <Globe aria-hidden /> Save report as HTML
        </Button>
        <Button className="button" isDisabled={busy !== null} onPress={saveZip}>
          <Download aria-hidden /> Save case as zip
        </Button>
        {preview && (
          <Button className="button quiet" onPress={() => showPreview()}>
            <Eye aria-hidden /> See it
          </Button>
        )}
      </div>
      {!ready && (
        <p className="hint" role="status">
          {assessment && view.result.faults.length === 0 && Object.keys(record.drafts).length === 0
            ? 'The report can be saved as soon as the assessment has settled.'
            : 'The report can be saved once the case can be assessed as it stands.'}
        </p>
      )}
      <div className="columns">
        <div className="column">
          <Group title="For whom, by whom">
            <div className="fields">
              <TextEntry at="title" label="Title of the report" />
              <TextEntry at="client.name" label="Client" />
              <TextEntry at="client.address" label="Client’s address" />
              <TextEntry at="assessor.name" label="Assessor" />
              <TextEntry at="assessor.credential" label="Credential" />
              <TextEntry at="assessor.firm" label="Firm" />
              <DateEntry at="visitedOn" label="Visited on" />
              <TextEntry at="place.name" label="Place" />
              <TextEntry at="weather" label="Weather" />
              <TextEntry at="instrument.name" label="Drill" />
              <TextEntry at="instrument.serialNumber" label="Serial number" />
              <DateEntry at="instrument.calibratedOn" label="Calibrated on" />
              <NumberEntry
                at="instrument.needleLengthMm"
                label="Needle length"
                quantity="lengthMm"
                limits={{ min: 0, aboveMin: true, max: 2000 }}
              />
              <TextEntry at="purpose" label="Purpose" lines={3} />
              <TextEntry
                at="notes"
                label="What you conclude"
                hint="Printed beside what the figures suggest, never instead of it."
                lines={6}
              />
            </div>
          </Group>
          <LetterheadGroup />
          <SignatureGroup />
          <FirmGroup />
          {preview && <PassagesGroup passages={preview.passages} />}
        </div>
        <div className="column">
          {fault && <p className="fault">{fault}</p>}
          {preview || ready ? <Preview html={preview?.html ?? null} /> : <Cautions />}
        </div>
      </div>
    </>
  );
}

/** The report as it stands, made anew as the case changes; the last one stays until then. */
function usePreview(job: ReportJob | null): { preview: ReportPreview | null; fault: string | null } {
  const [preview, setPreview] = useState<ReportPreview | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const pictures = useCaseFiles(job ? picturesOf(job.caseFile) : []).bytes;
  const { assessment, caseFile, units, generatedOn } = job ?? {};
  useEffect(() => {
    if (!assessment || !caseFile || !units || !generatedOn) return;
    let gone = false;
    const soon = setTimeout(() => {
      reportWorker()
        .preview({ assessment, caseFile, units, generatedOn }, pictures)
        .then(
          (made) => {
            if (gone) return;
            setPreview(made);
            setFault(null);
          },
          (thrown: unknown) => !gone && setFault(thrown instanceof Error ? thrown.message : String(thrown)),
        );
    }, REST_MS);
    return () => {
      gone = true;
      clearTimeout(soon);
    };
  }, [assessment, caseFile, units, generatedOn, pictures]);
  return { preview, fault };
}

/** Where the preview stands; on a phone that is far down. */
const PREVIEW = 'as-it-will-read';

function showPreview() {
  const place = document.getElementById(PREVIEW);
  place?.scrollIntoView({ block: 'start' });
  place?.focus({ preventScroll: true });
}

/** The report is made anew when typing has rested so long. */
const REST_MS = 250;

/** Pictures that the report prints, by their paths. */
function picturesOf(caseFile: CaseFile): string[] {
  const paths: string[] = [];
  JSON.stringify(caseFile, (key, value) => {
    if ((key === 'photo' || key === 'logo' || key === 'image') && typeof value === 'string')
      paths.push(value);
    return value;
  });
  return paths;
}

function Preview({ html }: { html: string | null }) {
  return (
    <Group title="As it will read" id={PREVIEW}>
      {html === null ? (
        <p className="hint">Setting the pages…</p>
      ) : (
        <iframe className="report-page" title="The report as it will read" srcDoc={html} sandbox="" />
      )}
    </Group>
  );
}
