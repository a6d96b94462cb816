/** A firm's own wording of chosen texts, from the file that `standfast wording` writes. */
import { LANGUAGES, ownTexts, wordingFaults } from '@standfast/report';
import { FileText, Trash2 } from 'lucide-react';
import { Button } from 'react-aria-components';
import { complain } from '../../state/toast.tsx';
import { useCaseFile, useSession, useSessionView } from '../../state/useSession.tsx';
import { ChooseFile } from '../ChooseFile.tsx';

const AT = 'report.wording';

export function WordingChoice() {
  const session = useSession();
  const { report } = useCaseFile();
  const readOnly = useSessionView().writer !== true;
  const own = ownTexts(LANGUAGES[report?.language ?? 'en'].report, report?.wording ?? {});
  const choose = async (file: File) => {
    let wording: unknown;
    try {
      wording = JSON.parse(await file.text());
    } catch {
      complain(`${file.name} is not JSON: make it with standfast wording and edit the texts.`);
      return;
    }
    const [first, ...others] = wordingFaults(wording);
    if (first) {
      const more = others.length === 0 ? '' : ` (and ${others.length} more)`;
      complain(`${file.name}: ${first.key} ${first.what}${more}.`);
      return;
    }
    session.setField(AT, wording, 'Wording');
  };
  return (
    <div className="report-picture">
      <p className="hint">
        {own.length === 0
          ? 'The report is in its own words.'
          : `${own.length} ${own.length === 1 ? 'text is' : 'texts are'} the firm’s own; the annex says which.`}
      </p>
      <div className="actions">
        <ChooseFile
          label="Wording file"
          accept="application/json,.json"
          isDisabled={readOnly}
          onChoose={choose}
        >
          <FileText aria-hidden /> {own.length === 0 ? 'Choose wording file' : 'Choose another'}
        </ChooseFile>
        {report?.wording !== undefined && (
          <Button
            className="button quiet"
            isDisabled={readOnly}
            onPress={() => session.setField(AT, undefined, 'Wording taken out')}
          >
            <Trash2 aria-hidden /> Take out
          </Button>
        )}
      </div>
    </div>
  );
}
