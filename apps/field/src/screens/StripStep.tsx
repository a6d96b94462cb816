/**
 * A photographed paper strip on its way into the case: the chart's corners and scale, then the line that was read,
 * mended where it went wrong, and kept with its photo. All of it happens on this device.
 */
import { useEffect, useRef, useState } from 'react';
import { Button, Label, ProgressBar } from 'react-aria-components';
import { newDraft, type StripDraft, withSeen } from '../edit/stripDraft.ts';
import { Sheet } from '../parts/Sheet.tsx';
import { lastScale } from '../state/lastScale.ts';
import { useSettings } from '../state/settings.ts';
import { say } from '../state/toast.tsx';
import { useSessionView } from '../state/useSession.tsx';
import { useWaitingStrips, useWaitingTables, type WaitingStrip, waitForStrips } from '../state/waiting.ts';
import { type OpenPhoto, SHARE_OF_OPENING, type StripReader, stripReader } from '../work/strip.ts';
import { growing, portion } from '../work/stripProgress.ts';
import { StripChart } from './StripChart.tsx';
import { StripLineCheck } from './StripLineCheck.tsx';

export function StripStep() {
  const strips = useWaitingStrips();
  const tables = useWaitingTables();
  const { status, writer } = useSessionView();
  const draft = useRef<StripDraft | null>(null);
  const [first] = strips;
  if (!first || tables.length > 0 || status !== 'open' || writer === false) return null;
  const done = () => {
    draft.current = null;
    waitForStrips(strips.slice(1));
  };
  const leaveOut = () => {
    const work = draft.current;
    done();
    // Of a photo that could not be opened there is nothing to take up again.
    if (!work?.corners) return;
    const aside = { ...first, draft: work };
    say(`${first.name} left out.`, {
      label: 'Take it up again',
      run: () => waitForStrips([aside, ...strips.slice(1)]),
    });
  };
  return (
    <Sheet
      wide
      sturdy
      isOpen
      onOpenChange={(open) => {
        if (!open) leaveOut();
      }}
      title={strips.length > 1 ? `Paper strip: ${first.name} (1 of ${strips.length})` : 'Paper strip'}
    >
      <StripWork
        key={`${first.name} ${strips.length}`}
        strip={first}
        onDraft={(latest) => {
          draft.current = latest;
        }}
        leaveOut={leaveOut}
        done={done}
      />
    </Sheet>
  );
}

interface StripWorkProps {
  strip: WaitingStrip;
  onDraft: (draft: StripDraft) => void;
  leaveOut: () => void;
  done: () => void;
}

export interface Doing {
  step: string;
  /** Share done, 0 to 1. */
  share: number;
  cancel?: () => void;
}

function StripWork({ strip, onDraft, leaveOut, done }: StripWorkProps) {
  const { units } = useSettings();
  const [draft, setDraft] = useState<StripDraft>(() => strip.draft ?? newDraft(lastScale(), units));
  const [photo, setPhoto] = useState<OpenPhoto | null>(null);
  const [reader, setReader] = useState<StripReader | null>(null);
  const [doing, setDoing] = useState<Doing | null>({ step: 'Opening the photo', share: 0 });
  const [fault, setFault] = useState<string | null>(null);
  const change = (part: Partial<StripDraft>) => setDraft((before) => ({ ...before, ...part }));
  useEffect(() => onDraft(draft), [draft, onDraft]);

  const begun = strip.draft !== undefined;
  useEffect(() => {
    const made = stripReader(strip.bytes, strip.name);
    setReader(made);
    let gone = false;
    let shown: OpenPhoto | null = null;
    const begin = async () => {
      // One bar for both steps; where the chart was found before, opening is all there is.
      const tell = growing((share, step) => {
        if (!gone) setDoing({ step, share });
      });
      const opening = portion(tell, 0, begun ? 1 : SHARE_OF_OPENING);
      const opened = await made.open((share, step) => opening(share, `Opening the photo: ${step}`));
      if (gone) return;
      if (!opened.ok) {
        setFault(opened.message);
        setDoing(null);
        return;
      }
      const { bitmap } = opened.value;
      shown = opened.value;
      setPhoto(opened.value);
      if (!begun) {
        const finding = portion(tell, SHARE_OF_OPENING, 1);
        const found = await made.find((share, step) => finding(share, `Looking for the chart: ${step}`));
        if (gone) return;
        const seen = found.ok ? found.value : null;
        setDraft((before) => withSeen(before, seen, bitmap, units));
        if (!found.ok) setFault(found.message);
      }
      setDoing(null);
    };
    begin();
    return () => {
      gone = true;
      made.close();
      shown?.bitmap.close();
      shown?.small.close();
    };
  }, [strip, begun, units]);

  return (
    <div className="import-step">
      {/* Buttons that begin the work lie farther down on a phone: what comes of it stays in sight. */}
      {(fault || doing) && (
        <div className="step-state">
          {fault && (
            <p className="fault" role="alert">
              {fault}
            </p>
          )}
          {doing && <DoingBar doing={doing} />}
        </div>
      )}
      {photo && reader && draft.corners && draft.at === 'chart' && (
        <StripChart
          photo={photo}
          reader={reader}
          draft={draft}
          corners={draft.corners}
          change={change}
          busy={doing !== null}
          setDoing={setDoing}
          setFault={setFault}
        />
      )}
      {photo && draft.reading && draft.at === 'line' && (
        <StripLineCheck
          strip={strip}
          photo={photo}
          draft={draft}
          reading={draft.reading}
          change={change}
          setFault={setFault}
          done={done}
        />
      )}
      {!doing && draft.at === 'chart' && (
        <div className="actions">
          <Button className="button" onPress={leaveOut}>
            Leave this photo out
          </Button>
        </div>
      )}
    </div>
  );
}

function DoingBar({ doing: { step, share, cancel } }: { doing: Doing }) {
  return (
    <div className="doing">
      <ProgressBar value={100 * share}>
        {({ percentage, valueText }) => (
          <>
            <span className="doing-words">
              <Label>{step}</Label>
              <span>{valueText}</span>
            </span>
            <span className="bar">
              <span style={{ width: `${percentage ?? 0}%` }} />
            </span>
          </>
        )}
      </ProgressBar>
      {cancel && (
        <Button className="button" onPress={cancel}>
          Cancel
        </Button>
      )}
    </div>
  );
}
