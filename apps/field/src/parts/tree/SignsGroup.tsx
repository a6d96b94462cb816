/** What was seen on the tree, each sign with its place and, where one was taken, its photo. */
import { SIGN_KINDS } from '@standfast/casefile';
import { useCaseFile } from '../../state/useSession.tsx';
import { BearingEntry, NumberEntry, TextEntry } from '../entries.tsx';
import { ListGroup } from '../ListRows.tsx';
import { PhotoField } from '../PhotoField.tsx';

export function SignsGroup() {
  const { signs } = useCaseFile();
  return (
    <ListGroup
      title="Signs seen"
      list="signs"
      singular="sign"
      blank={{ kind: 'fruiting body' }}
      lead="What you saw: fruiting bodies, cavities, cracks, insects, cut roots. Signs change the decision; the Decision place says how."
      id="signs"
      fields={(i) => (
        <>
          <TextEntry at={`signs.${i}.kind`} label="Sign" suggestions={SIGN_KINDS} />
          <TextEntry at={`signs.${i}.where`} label="Where" />
          <BearingEntry at={`signs.${i}.azimuthDeg`} label="Side" hint="Clockwise from north." />
          <NumberEntry
            at={`signs.${i}.heightM`}
            label="Height above ground"
            quantity="heightM"
            limits={{ min: 0, max: 100 }}
          />
          <TextEntry
            at={`signs.${i}.note`}
            label="Note"
            hint={
              /fruit/i.test(signs[i]?.kind ?? '')
                ? 'Name the genus where you know it: it tells how it rots.'
                : ''
            }
          />
          <PhotoField at={`signs.${i}.photo`} what={`sign ${i + 1}`} stem={`sign-${i + 1}`} />
        </>
      )}
    />
  );
}
