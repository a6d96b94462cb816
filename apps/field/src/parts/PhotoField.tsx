/** A photo that belongs to a part of the case: taken or chosen here, shown, exchanged, taken out. Its bytes stay as they are. */
import { InputFault } from '@standfast/engine';
import { Camera, ImageUp, Trash2 } from 'lucide-react';
import { Button } from 'react-aria-components';
import { valueAt, withValueAt } from '../edit/fieldPath.ts';
import { checkPhotoFile, PHOTO_ENDING } from '../edit/photoFile.ts';
import { freePhotoPath } from '../edit/photoPath.ts';
import { PHOTO_FILES } from '../state/incoming.ts';
import { complain } from '../state/toast.tsx';
import { useRecord, useSession, useSessionView } from '../state/useSession.tsx';
import { ChooseFile } from './ChooseFile.tsx';
import { PhotoOf } from './KeptPhoto.tsx';

interface PhotoFieldProps {
  /** Path of the field that names the photo. */
  at: string;
  /** Whose photo it is, for example `sign 2`. */
  what: string;
  /** Begin of the file's name. */
  stem: string;
}

export function PhotoField({ at, what, stem }: PhotoFieldProps) {
  const session = useSession();
  const { writer } = useSessionView();
  const { caseFile, files } = useRecord();
  const path = valueAt(caseFile, at);
  const named = typeof path === 'string' ? path : null;
  const sha256 = named === null ? undefined : files[named];

  const keep = async (file: File) => {
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const kind = checkPhotoFile(bytes, file.name);
      const free = freePhotoPath(files, stem, PHOTO_ENDING[kind]);
      await session.addFiles(new Map([[free, bytes]]), `Photo of ${what}`, (now) =>
        withValueAt(now, at, free),
      );
    } catch (thrown) {
      complain(
        thrown instanceof InputFault
          ? thrown.message
          : `${file.name} could not be kept: ${thrown instanceof Error ? thrown.message : String(thrown)}`,
      );
    }
  };
  return (
    <div className="entry wide photo-field">
      {named !== null && sha256 !== undefined && (
        <PhotoOf name={`Photo of ${what}`} path={named} sha256={sha256} />
      )}
      {named !== null && sha256 === undefined && (
        <p className="hint">{`The photo ${named} is not among the files of this case.`}</p>
      )}
      <div className="actions">
        <ChooseFile
          label={`Take a photo of ${what}`}
          accept="image/*"
          camera
          isDisabled={writer !== true}
          onChoose={keep}
        >
          <Camera aria-hidden /> {named ? 'Another photo' : 'Take a photo'}
          <span className="out-of-sight">{` of ${what}`}</span>
        </ChooseFile>
        <ChooseFile
          label={`Photo of ${what}`}
          accept={PHOTO_FILES}
          isDisabled={writer !== true}
          onChoose={keep}
        >
          <ImageUp aria-hidden /> Choose a photo
          <span className="out-of-sight">{` of ${what}`}</span>
        </ChooseFile>
        {named !== null && (
          <Button
            className="button"
            isDisabled={writer !== true}
            onPress={() =>
              session.edit(`Take out the photo of ${what}`, (now) => withValueAt(now, at, undefined))
            }
          >
            <Trash2 aria-hidden /> Take out<span className="out-of-sight">{` the photo of ${what}`}</span>
          </Button>
        )}
      </div>
    </div>
  );
}
