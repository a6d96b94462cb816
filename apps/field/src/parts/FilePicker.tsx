/** A button that takes files into a case: tables, or a photo by the camera or from the device. */
import { bringIn } from '../state/bringIn.ts';
import { filesOfPicker } from '../state/incoming.ts';
import { ChooseFile, type ChooseFileProps } from './ChooseFile.tsx';

interface FilePickerProps extends Omit<ChooseFileProps, 'onChoose'> {
  caseId: string;
}

export function FilePicker({ caseId, ...choose }: FilePickerProps) {
  return <ChooseFile {...choose} onChoose={(_, all) => bringIn(filesOfPicker(all), caseId)} />;
}
