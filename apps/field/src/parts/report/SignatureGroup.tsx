/** Who signs, where and when: drawn with a finger, as an image, or in type. */
import { PenLine } from 'lucide-react';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { withValueAt } from '../../edit/fieldPath.ts';
import { useCaseFile, useSession, useSessionView } from '../../state/useSession.tsx';
import { DateEntry, TextEntry } from '../entries.tsx';
import { Group } from '../Group.tsx';
import { Sheet } from '../Sheet.tsx';
import { ReportPicture } from './ReportPicture.tsx';
import { SignaturePad } from './SignaturePad.tsx';

/** Place of the signature in the case folder. */
const IMAGE = 'report/signature.png';
const AT = 'report.signature.image';

export function SignatureGroup() {
  const session = useSession();
  const { report } = useCaseFile();
  const readOnly = useSessionView().writer !== true;
  const [drawing, setDrawing] = useState(false);
  const { image, name, signedOn } = report?.signature ?? {};
  const signed = signedOn !== undefined && (image !== undefined || name !== undefined);
  const keep = async (png: Uint8Array) => {
    await session.addFiles(new Map([[IMAGE, png]]), 'Signature', (caseFile) =>
      withValueAt(caseFile, AT, IMAGE),
    );
    setDrawing(false);
  };
  return (
    <Group
      title="Signature"
      lead={
        signed
          ? 'The report is signed.'
          : 'The report says “not signed” until there is a date, and an image or a name.'
      }
    >
      <ReportPicture at={AT} path={IMAGE} name="Signature" value={image}>
        <Button className="button" isDisabled={readOnly} onPress={() => setDrawing(true)}>
          <PenLine aria-hidden /> Sign here
        </Button>
      </ReportPicture>
      <div className="fields">
        <TextEntry at="report.signature.name" label="Name under it" hint="Left empty: the assessor." />
        <TextEntry at="report.signature.place" label="Signed at" />
        <DateEntry at="report.signature.signedOn" label="Signed on" />
      </div>
      <Sheet title="Signature" isOpen={drawing} onOpenChange={setDrawing} sturdy>
        <SignaturePad onDone={keep} />
      </Sheet>
    </Group>
  );
}
