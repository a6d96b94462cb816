/** How the report is set: units, paper, language, and the firm above its title. */
import { LANGUAGES } from '@standfast/report';
import { useId } from 'react';
import { useSettings } from '../../state/settings.ts';
import { useCaseFile, useSession, useSessionView } from '../../state/useSession.tsx';
import { ChoiceEntry } from '../entries.tsx';
import { Group } from '../Group.tsx';
import { ReportPicture } from './ReportPicture.tsx';
import { WordingChoice } from './WordingChoice.tsx';

/** Place of the logo in the case folder. */
const LOGO = 'report/logo.png';
const LINES = 'report.letterhead.lines';

export function LetterheadGroup() {
  const { report } = useCaseFile();
  const { units } = useSettings();
  return (
    <Group title="Letterhead and paper">
      <div className="fields">
        <ChoiceEntry
          at="report.units"
          label="Units"
          whenEmpty={`As this device: ${units === 'us' ? 'US' : 'metric'}`}
          choices={[
            { value: 'metric', label: 'Metric' },
            { value: 'us', label: 'US' },
          ]}
        />
        <ChoiceEntry
          at="report.paper"
          label="Paper"
          whenEmpty="As the units: A4, or Letter"
          choices={[
            { value: 'a4', label: 'A4' },
            { value: 'letter', label: 'Letter' },
          ]}
        />
        <ChoiceEntry
          at="report.language"
          label="Language"
          whenEmpty="English"
          choices={Object.entries(LANGUAGES).map(([value, { name }]) => ({ value, label: name }))}
        />
      </div>
      <LetterheadLines />
      <WordingChoice />
      <ReportPicture at="report.letterhead.logo" path={LOGO} name="Logo" value={report?.letterhead?.logo} />
    </Group>
  );
}

/** One line of the letterhead a line of the field; the first is the firm's name. */
function LetterheadLines() {
  const id = useId();
  const session = useSession();
  const { report } = useCaseFile();
  const readOnly = useSessionView().writer !== true;
  const lines = report?.letterhead?.lines ?? [];
  const change = (text: string) =>
    session.setField(LINES, text === '' ? undefined : text.split('\n'), 'Letterhead');
  return (
    <div className="entry wide">
      <label htmlFor={id}>Lines of the letterhead</label>
      <span className="box">
        <textarea
          id={id}
          rows={3}
          value={lines.join('\n')}
          readOnly={readOnly}
          aria-describedby={`${id}-hint`}
          onChange={(event) => change(event.target.value)}
        />
      </span>
      <p className="hint" id={`${id}-hint`}>
        The first line is the firm’s name; it stands small on the other pages too.
      </p>
    </div>
  );
}
