/** What a key does to the map. */
import { type MapView, panned, type ScreenSize, zoomed } from './view.ts';

const PAN_PX = 80;
const ZOOM = 1.5;

/** The view after a key, or null where the key does nothing here. */
export function afterKey(key: string, view: MapView, size: ScreenSize): MapView | null {
  const middle = { x: size.width / 2, y: size.height / 2 };
  switch (key) {
    case 'ArrowLeft':
      return panned(view, PAN_PX, 0);
    case 'ArrowRight':
      return panned(view, -PAN_PX, 0);
    case 'ArrowUp':
      return panned(view, 0, PAN_PX);
    case 'ArrowDown':
      return panned(view, 0, -PAN_PX);
    case '+':
    case '=':
      return zoomed(view, size, ZOOM, middle);
    case '-':
      return zoomed(view, size, 1 / ZOOM, middle);
    default:
      return null;
  }
}
