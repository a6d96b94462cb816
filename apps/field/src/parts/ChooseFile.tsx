/** A button that opens the device's chooser of files, or its camera, and hands on what was chosen. */
import { type ReactNode, useRef } from 'react';
import { Button } from 'react-aria-components';

export interface ChooseFileProps {
  /** Names the input, for those who cannot see the button. */
  label: string;
  accept: string;
  children: ReactNode;
  multiple?: boolean;
  /** Opens the camera straight away, where there is one. */
  camera?: boolean;
  isDisabled?: boolean;
  /** At least one file; the same one may be chosen again once this is done. */
  onChoose: (first: File, all: FileList) => Promise<unknown>;
}

export function ChooseFile(props: ChooseFileProps) {
  const { label, accept, children, multiple, camera, isDisabled, onChoose } = props;
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button className="button" isDisabled={isDisabled ?? false} onPress={() => picker.current?.click()}>
        {children}
      </Button>
      <input
        ref={picker}
        type="file"
        hidden
        multiple={multiple ?? false}
        aria-label={label}
        accept={accept}
        capture={camera ? 'environment' : undefined}
        onChange={async ({ target }) => {
          const first = target.files?.[0];
          if (first) await onChoose(first, target.files!);
          target.value = '';
        }}
      />
    </>
  );
}
