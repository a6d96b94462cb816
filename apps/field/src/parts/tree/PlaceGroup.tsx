/** Where the tree stands. The device's position is asked for only when its button is pressed. */
import { setCaseField } from '@standfast/casefile';
import { LocateFixed } from 'lucide-react';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useSettings } from '../../state/settings.ts';
import { complain, say } from '../../state/toast.tsx';
import { useSession, useSessionView } from '../../state/useSession.tsx';
import { measure } from '../../units/quantities.ts';
import { NumberEntry, TextEntry } from '../entries.tsx';
import { Group } from '../Group.tsx';

/** How long to wait for a position, and how old a known one may be, ms. */
const WAIT_MS = 20_000;
const FRESH_MS = 10_000;

const REFUSED: Record<number, string> = {
  1: 'The position was not taken: this browser may not use it. Allow it for this page, or type it in.',
  2: 'The device could not tell where it is. Try in the open, or type the position in.',
  3: 'The device took too long to tell where it is. Try again in the open, or type the position in.',
};

/** Six digits of a degree, about a tenth of a metre. */
const rounded = (degrees: number) => Number(degrees.toFixed(6));

export function PlaceGroup() {
  const session = useSession();
  const { writer } = useSessionView();
  const { units } = useSettings();
  const [waiting, setWaiting] = useState(false);
  const locate = () => {
    if (!('geolocation' in navigator)) {
      complain('This browser cannot tell where it is. Type the position in.');
      return;
    }
    setWaiting(true);
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        setWaiting(false);
        session.edit('Position', (caseFile) =>
          setCaseField(caseFile, 'place', {
            ...caseFile.place,
            latitude: rounded(coords.latitude),
            longitude: rounded(coords.longitude),
          }),
        );
        say(`Position taken, good to about ${measure(coords.accuracy, 'heightM', units)}.`);
      },
      ({ code }) => {
        setWaiting(false);
        complain(REFUSED[code] ?? REFUSED[2]!);
      },
      { enableHighAccuracy: true, timeout: WAIT_MS, maximumAge: FRESH_MS },
    );
  };
  return (
    <Group title="Where it stands" id="where">
      <div className="fields">
        <TextEntry at="place.name" label="Place" hint="Street, park, plot." />
        <NumberEntry
          at="place.latitude"
          label="Latitude"
          hint="North positive."
          quantity="coordinateDeg"
          limits={{ min: -90, max: 90 }}
        />
        <NumberEntry
          at="place.longitude"
          label="Longitude"
          hint="East positive."
          quantity="coordinateDeg"
          limits={{ min: -180, max: 180 }}
        />
      </div>
      <Button className="button" onPress={locate} isDisabled={writer !== true || waiting}>
        <LocateFixed aria-hidden /> {waiting ? 'Asking the device…' : 'Use this position'}
      </Button>
    </Group>
  );
}
