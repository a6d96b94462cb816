/** A logo or signature: shown, chosen, taken out. */
import { ImageUp, Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { withValueAt } from '../../edit/fieldPath.ts';
import { reportPicture } from '../../edit/reportPicture.ts';
import { complain } from '../../state/toast.tsx';
import { useCaseFiles } from '../../state/useCaseFiles.ts';
import { useSession, useSessionView } from '../../state/useSession.tsx';
import { ChooseFile } from '../ChooseFile.tsx';

interface ReportPictureProps {
  /** Path of its field in the case, and the picture's place in the case folder. */
  at: string;
  path: string;
  name: string;
  value: string | undefined;
  children?: ReactNode;
}

export function ReportPicture({ at, path, name, value, children }: ReportPictureProps) {
  const session = useSession();
  const readOnly = useSessionView().writer !== true;
  const url = useCaseFiles(value === undefined ? [] : [value]).urls.get(value ?? '');
  const choose = async (file: File) => {
    try {
      const bytes = await reportPicture(file);
      await session.addFiles(new Map([[path, bytes]]), name, (caseFile) => withValueAt(caseFile, at, path));
    } catch (thrown) {
      complain(thrown instanceof Error ? thrown.message : String(thrown));
    }
  };
  return (
    <div className="report-picture">
      {url && <img src={url} alt={name} />}
      <div className="actions">
        {children}
        <ChooseFile
          label={`${name} image`}
          accept="image/png,image/jpeg,image/svg+xml"
          isDisabled={readOnly}
          onChoose={choose}
        >
          <ImageUp aria-hidden />{' '}
          {value === undefined ? `Choose ${name.toLowerCase()} image` : 'Choose another'}
        </ChooseFile>
        {value !== undefined && (
          <Button
            className="button quiet"
            isDisabled={readOnly}
            onPress={() => session.setField(at, undefined, `${name} taken out`)}
          >
            <Trash2 aria-hidden /> Take out
          </Button>
        )}
      </div>
    </div>
  );
}
