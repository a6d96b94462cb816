/** A report dropped or chosen: recomputed from the case inside it, and told figure by figure and page by page. */
import type { Verification } from '@standfast/report';
import { CheckCheck, OctagonAlert } from 'lucide-react';
import { type ReactNode, useEffect, useState } from 'react';
import { Button, Label, ProgressBar } from 'react-aria-components';
import { useLocation } from 'wouter';
import { Sheet } from '../parts/Sheet.tsx';
import { faultText } from '../state/bringIn.ts';
import { complain } from '../state/toast.tsx';
import { useWaitingReports, waitForReports } from '../state/waiting.ts';
import { bringInZip } from '../storage/cases.ts';
import { reportWorker, type VerifyOutcome } from '../work/reports.ts';

/** No report with its photos is larger; a larger file would only fill the memory. */
const LIMIT_BYTES = 300e6;
/** Differences shown of each kind. */
const SHOWN = 40;

export function VerifyStep() {
  const [file] = useWaitingReports();
  if (!file) return null;
  const close = () => waitForReports([]);
  return (
    <Sheet
      wide
      isOpen
      title="Does this report stand?"
      onOpenChange={(open) => {
        if (!open) close();
      }}
    >
      <Verifying key={`${file.name} ${file.size} ${file.lastModified}`} file={file} close={close} />
    </Sheet>
  );
}

function Verifying({ file, close }: { file: File; close: () => void }) {
  const [outcome, setOutcome] = useState<VerifyOutcome | null>(null);
  useEffect(() => {
    let gone = false;
    verified(file).then((found) => {
      if (!gone) setOutcome(found);
    });
    return () => {
      gone = true;
    };
  }, [file]);
  return (
    <div className="verify-step">
      <p className="verify-file">{file.name}</p>
      {outcome === null && (
        <ProgressBar className="progress" isIndeterminate>
          <Label>Recomputing it from the case inside, on this device…</Label>
        </ProgressBar>
      )}
      {outcome && !outcome.ok && (
        <section className="verify-verdict refused" role="alert">
          <OctagonAlert aria-hidden />
          <div>
            <h3>It cannot be verified</h3>
            <p>{outcome.message}</p>
          </div>
        </section>
      )}
      {outcome?.ok && <Found found={outcome.found} />}
      <div className="actions">
        {outcome?.ok && <OpenInside file={file} close={close} />}
        <Button className="button" onPress={close}>
          Close
        </Button>
      </div>
    </div>
  );
}

async function verified(file: File): Promise<VerifyOutcome> {
  if (file.size > LIMIT_BYTES)
    return {
      ok: false,
      message: `This file has ${Math.round(file.size / 1e6)} MB, more than any report has. Check that it is the right one.`,
    };
  try {
    return await reportWorker().verify(new Uint8Array(await file.arrayBuffer()), file.name);
  } catch (thrown) {
    const why = thrown instanceof Error ? thrown.message : String(thrown);
    return { ok: false, message: `The file could not be read: ${why}` };
  }
}

function Found({ found }: { found: Verification }) {
  const { stands, figures, pages, others, madeBy, recomputedBy } = found;
  const page = found.kind === 'pdf' ? 'page' : 'part';
  return (
    <>
      <section className={`verify-verdict ${stands ? 'stands' : 'falls'}`} role="status">
        {stands ? <CheckCheck aria-hidden /> : <OctagonAlert aria-hidden />}
        <div>
          <h3>{stands ? 'It stands' : 'It does not stand'}</h3>
          <p>
            {stands
              ? 'Every figure and every page is what the case inside gives.'
              : 'What the report says is not what the case inside gives.'}
          </p>
        </div>
      </section>
      <dl className="facts">
        <Fact term="Made by">engine {madeBy}</Fact>
        <Fact term="Recomputed by">
          engine {recomputedBy}, seed {found.seed}, {found.draws} draws
        </Fact>
        <Fact term="Case inside">
          {found.caseUnchanged ? 'the one the report was made from' : 'not the one the report was made from'}
        </Fact>
        <Fact term="Figures">
          {figures.compared - figures.differing.length} of {figures.compared} stand
        </Fact>
        <Fact term={found.kind === 'pdf' ? 'Pages' : 'Parts'}>
          {pages.compared - pages.differing.length} of {pages.compared} stand
        </Fact>
      </dl>
      {madeBy !== recomputedBy && (
        <p>
          The engines differ, and figures may differ for that alone. Verify it with version {madeBy}, which
          made it.
        </p>
      )}
      {others.length > 0 && (
        <ul className="plain-list">
          {others.map((other) => (
            <li key={other}>{other}</li>
          ))}
        </ul>
      )}
      {figures.differing.length > 0 && (
        <Differences
          title="Figures that differ"
          first="figure"
          rows={figures.differing.map(({ where, inReport, recomputed }) => [where, inReport, recomputed])}
        />
      )}
      {pages.differing.length > 0 && (
        <Differences
          title={found.kind === 'pdf' ? 'Pages that differ' : 'Parts that differ'}
          first={page}
          rows={pages.differing.map((unlike) => [
            String(unlike.page),
            lines(unlike.inReport, unlike.recomputed),
            lines(unlike.recomputed, unlike.inReport),
          ])}
        />
      )}
    </>
  );
}

/** Lines that one has and the other has not. */
function lines(these: readonly string[], those: readonly string[]): string {
  if (these.length + those.length === 0) return 'the same words, drawn otherwise';
  return (
    these
      .slice(0, SHOWN)
      .map((line) => `“${line.trim()}”`)
      .join(', ') || 'nothing'
  );
}

function Differences({ title, first, rows }: { title: string; first: string; rows: string[][] }) {
  return (
    <section className="verify-differences">
      <h3>{title}</h3>
      <table>
        <thead>
          <tr>
            <th scope="col">{first}</th>
            <th scope="col">in the report</th>
            <th scope="col">recomputed</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, SHOWN).map(([where, inReport, recomputed]) => (
            <tr key={where}>
              <th scope="row">{where}</th>
              <td>{inReport}</td>
              <td>{recomputed}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > SHOWN && <p className="hint">and {rows.length - SHOWN} more</p>}
    </section>
  );
}

function Fact({ term, children }: { term: string; children: ReactNode }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** Takes the case out of the report and opens it, to be looked at as any other. */
function OpenInside({ file, close }: { file: File; close: () => void }) {
  const [, navigate] = useLocation();
  const open = async () => {
    try {
      const zip = await reportWorker().caseInside(new Uint8Array(await file.arrayBuffer()), file.name);
      if (!zip) return complain(`${file.name}: there is no case inside.`);
      const id = await bringInZip(zip, `${file.name}: case.zip`, 'brought in');
      close();
      navigate(`/case/${id}/decision`);
    } catch (thrown) {
      complain(faultText(thrown, file.name));
    }
  };
  return (
    <Button className="button primary" onPress={open}>
      Open the case inside
    </Button>
  );
}
