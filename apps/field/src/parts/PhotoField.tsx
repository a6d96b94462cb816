/** A photo that belongs to a part of the case: taken or chosen here, shown, exchanged, taken out. Its bytes stay as they are. */
import { InputFault } from '@standfast/engine';
import { Camera, ImageUp, Trash2 } from 'lucide-react';
import { useRef } from 'react';
import { Button } from 'react-aria-components';
import { valueAt, withValueAt } from '../edit/fieldPath.ts';
import { checkPhotoFile, PHOTO_ENDING } from '../edit/photoFile.ts';
import { freePhotoPath } from '../edit/photoPath.ts';
import { PHOTO_FILES } from '../state/incoming.ts';
import { complain } from '../state/toast.tsx';
import { useRecord, useSession, useSessionView } from '../state/useSession.tsx';
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
  const camera = useRef<HTMLInputElement>(null);
  const chooser = useRef<HTMLInputElement>(null);
  const path = valueAt(caseFile, at);
  const named = typeof path === 'string' ? path : null;
  const sha256 = named === null ? undefined : files[named];

  const keep = async (file: File | undefined) => {
    if (!file) return;
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
  const input = (ref: typeof camera, label: string, takes: 'environment' | undefined) => (
    <input
      ref={ref}
      type="file"
      hidden
      aria-label={label}
      accept={takes ? 'image/*' : PHOTO_FILES}
      capture={takes}
      onChange={async ({ target }) => {
        await keep(target.files?.[0]);
        target.value = '';
      }}
    />
  );
  return (
    <div className="entry wide photo-field">
      {named !== null && sha256 !== undefined && (
        <PhotoOf name={`Photo of ${what}`} path={named} sha256={sha256} />
      )}
      {named !== null && sha256 === undefined && (
        <p className="hint">{`The photo ${named} is not among the files of this case.`}</p>
      )}
      <div className="actions">
        <Button className="button" isDisabled={writer !== true} onPress={() => camera.current?.click()}>
          <Camera aria-hidden /> {named ? 'Another photo' : 'Take a photo'}
          <span className="out-of-sight">{` of ${what}`}</span>
        </Button>
        <Button className="button" isDisabled={writer !== true} onPress={() => chooser.current?.click()}>
          <ImageUp aria-hidden /> Choose a photo
          <span className="out-of-sight">{` of ${what}`}</span>
        </Button>
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
      {input(camera, `Take a photo of ${what}`, 'environment')}
      {input(chooser, `Photo of ${what}`, undefined)}
    </div>
  );
}
