/** A button that takes files: tables, or a photo by the camera or from the device. */
import type { ReactNode } from 'react';
import { useRef } from 'react';
import { Button } from 'react-aria-components';
import { bringIn } from '../state/bringIn.ts';
import { filesOfPicker } from '../state/incoming.ts';

interface FilePickerProps {
  /** Names the input, for those who cannot see the button. */
  label: string;
  accept: string;
  caseId: string;
  children: ReactNode;
  multiple?: boolean;
  /** Opens the camera straight away, where there is one. */
  camera?: boolean;
  isDisabled?: boolean;
}

export function FilePicker(props: FilePickerProps) {
  const { label, accept, caseId, children, multiple, camera, isDisabled } = props;
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
        onChange={async (event) => {
          const input = event.target;
          if (input.files) await bringIn(filesOfPicker(input.files), caseId);
          input.value = '';
        }}
      />
    </>
  );
}
