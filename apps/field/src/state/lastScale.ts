/** The scale of the last strip kept on this device: strips of one drill are alike, so it is offered for the next. */
import type { ChartKnown } from '@standfast/engine';

const KEY = 'standfast:strip-scale';

type Scale = Pick<ChartKnown, 'depthMm' | 'resistance'>;

export function lastScale(): Scale | null {
  try {
    const { depthMm, resistance } = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Scale;
    const pair = (value: unknown): value is [number, number] =>
      Array.isArray(value) && value.length === 2 && value.every((each) => Number.isFinite(each));
    return pair(depthMm) && pair(resistance) ? { depthMm, resistance } : null;
  } catch {
    return null;
  }
}

export function rememberScale({ depthMm, resistance }: Scale): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ depthMm, resistance }));
  } catch {
    // Without storage the next strip is asked for its scale again.
  }
}
