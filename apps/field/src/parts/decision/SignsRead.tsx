/** What the signs that were recorded mean for the decision, with the source of each rule. */
import type { SignReading } from '@standfast/engine';
import { textInUnits } from '@standfast/report';
import { useSettings } from '../../state/settings.ts';
import { Group } from '../Group.tsx';

export function SignsRead({ signs }: { signs: readonly SignReading[] }) {
  const { units } = useSettings();
  if (signs.length === 0) return null;
  return (
    <Group title="What the signs tell">
      <ul className="signs-read">
        {signs.map(({ index, sign, text, floor, source }) => (
          <li key={`${index} ${text}`}>
            <strong>{sign}</strong>
            <p>{textInUnits(text, units)}</p>
            <p className="hint">
              {floor && `Likelihood of failure at least ${floor}. `}
              {source}
            </p>
          </li>
        ))}
      </ul>
    </Group>
  );
}
