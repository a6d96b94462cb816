/** What stands between the person and a case that is saved, theirs to edit, and assessed as it stands. */
import { Button } from 'react-aria-components';
import { complain } from '../state/toast.tsx';
import { useSession, useSessionView } from '../state/useSession.tsx';
import { zipOfCase } from '../storage/cases.ts';
import { fileNameOf, offerDownload } from '../storage/fileName.ts';

export function CaseBanners() {
  const session = useSession();
  const { record, fault, writer } = useSessionView();
  const exportZip = async () => {
    if (!record) return;
    try {
      const { tree, visitedOn } = record.caseFile;
      offerDownload(await zipOfCase(record), fileNameOf(tree.label, visitedOn, 'zip'), 'application/zip');
    } catch (thrown) {
      complain(thrown instanceof Error ? thrown.message : String(thrown));
    }
  };
  return (
    <>
      {writer === false && (
        <div className="banner" role="status">
          <p>
            <strong>Another tab is writing in this case.</strong> Here you read along, always up to date.
          </p>
          <Button className="button" onPress={session.takeOver}>
            Write here instead
          </Button>
        </div>
      )}
      {fault && (
        <div className="banner alarm" role="alert">
          <p>{fault.message}</p>
          <Button className="button" onPress={exportZip}>
            Save as zip
          </Button>
          <Button className="button quiet" onPress={session.saveAgain}>
            Try again
          </Button>
        </div>
      )}
    </>
  );
}
