/** What the firm keeps on this device for its next cases. */
import { withFirm } from '@standfast/casefile';
import { Button } from 'react-aria-components';
import { complain, say } from '../../state/toast.tsx';
import { useRecord, useSession, useSessionView } from '../../state/useSession.tsx';
import { loadFiles } from '../../storage/blobs.ts';
import { forgetFirm, keepFirm, useFirm } from '../../storage/firm.ts';
import { Group } from '../Group.tsx';

export function FirmGroup() {
  const firm = useFirm();
  const session = useSession();
  const { caseFile, files } = useRecord();
  const readOnly = useSessionView().writer !== true;
  const attempt = (step: () => Promise<void>, done: string) => () =>
    step().then(
      () => say(done),
      (thrown: unknown) => complain(thrown instanceof Error ? thrown.message : String(thrown)),
    );
  const keep = attempt(async () => {
    const named = [caseFile.report?.letterhead?.logo, caseFile.report?.signature?.image];
    const pictures = Object.fromEntries(
      named.flatMap((path) => (path !== undefined && files[path] ? [[path, files[path]]] : [])),
    );
    await keepFirm(caseFile, await loadFiles(pictures));
  }, 'Kept for each new case on this device.');
  const take = attempt(async () => {
    if (!firm) return;
    const filled = withFirm(caseFile, new Map(), firm);
    const pictures = new Map([...filled.bag].filter(([path]) => path !== 'case.json'));
    await session.addFiles(pictures, 'Firm’s letterhead', () => filled.caseFile);
  }, 'Filled from what the firm keeps.');
  return (
    <Group
      title="For the next cases"
      lead={
        firm
          ? `Each new case on this device begins with ${firm.report.letterhead?.lines?.[0] ?? 'what the firm keeps'}.`
          : 'Keep assessor, letterhead, logo, signature, units and language once, and each new case begins with them.'
      }
    >
      <div className="actions">
        <Button className="button" onPress={keep}>
          {firm ? 'Keep this case’s instead' : 'Keep for new cases'}
        </Button>
        {firm && (
          <>
            <Button className="button" isDisabled={readOnly} onPress={take}>
              Fill this case
            </Button>
            <Button className="button quiet" onPress={attempt(forgetFirm, 'Forgotten.')}>
              Forget
            </Button>
          </>
        )}
      </div>
      <p className="hint">The day of signing is given with each report.</p>
    </Group>
  );
}
