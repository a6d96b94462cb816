/** The map itself: a canvas that follows finger, wheel and keys without a new rendering of the page. */

import type { KeyboardEvent, PointerEvent, Ref } from 'react';
import { useEffect, useImperativeHandle, useLayoutEffect, useMemo, useRef } from 'react';
import { type Cluster, clustered, gapFor } from '../../map/clusters.ts';
import {
  coloursOf,
  type DrawnLines,
  drawMap,
  type MapColours,
  type MapTree,
  type OwnPlace,
} from '../../map/draw.ts';
import { afterKey } from '../../map/keys.ts';
import type { Plane, PlanePoint } from '../../map/plane.ts';
import { fitted, type MapView, panned, type ScreenSize, toScreen, zoomed } from '../../map/view.ts';
import { useSettings, useThemeShown } from '../../state/settings.ts';

const MARK_GAP_PX = 28;
const HIT_PX = 26;
/** A press that moves less is a tap. */
const TAP_PX = 8;
/** How long a movement must rest before the list beside it is brought up to date. */
const REST_MS = 140;

export interface MapHandle {
  zoomBy(factor: number): void;
  showAll(): void;
  /** Brings a place to the middle, without zooming. */
  centre(point: PlanePoint): void;
}

interface TreeMapProps {
  handle: Ref<MapHandle>;
  plane: Plane;
  trees: readonly MapTree[];
  lines: DrawnLines | null;
  own: OwnPlace | null;
  chosen: ReadonlySet<string>;
  onChoose: (ids: readonly string[]) => void;
  /** Told of the trees in view when a movement comes to rest. */
  onRest: (ids: readonly string[]) => void;
}

export function TreeMap(props: TreeMapProps) {
  const { handle, plane, trees, lines, own, chosen, onChoose, onRest } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const { units } = useSettings();
  const theme = useThemeShown();
  const state = useRef<{
    view: MapView | null;
    size: ScreenSize;
    frame: number;
    rest: ReturnType<typeof setTimeout> | undefined;
    gapM: number;
    clusters: Cluster[];
    colours: MapColours | null;
  }>({
    view: null,
    size: { width: 0, height: 0 },
    frame: 0,
    rest: undefined,
    gapM: 0,
    clusters: [],
    colours: null,
  });
  const pointers = useRef(new Map<number, PlanePoint>());
  const travelled = useRef(0);

  const draw = useRef(() => {});
  draw.current = () => {
    const element = canvas.current;
    const context = element?.getContext('2d');
    const { view, size } = state.current;
    if (!element || !context || !view || size.width === 0) return;
    const gapM = gapFor(view.scale, MARK_GAP_PX);
    if (gapM !== state.current.gapM) {
      state.current.gapM = gapM;
      state.current.clusters = clustered(trees, gapM);
    }
    state.current.colours ??= coloursOf(element);
    const ratio = devicePixelRatio || 1;
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    const { clusters, colours } = state.current;
    drawMap(context, { view, size, plane, trees, clusters, lines, own, chosen, units }, colours);
  };
  const rested = useRef(() => {});
  rested.current = () => {
    const { view, size } = state.current;
    if (!view) return;
    const inView = trees.filter((tree) => {
      const { x, y } = toScreen(view, size, tree);
      return x >= 0 && y >= 0 && x <= size.width && y <= size.height;
    });
    onRest(inView.map(({ id }) => id));
  };

  const steer = useMemo(() => {
    const show = () => {
      cancelAnimationFrame(state.current.frame);
      state.current.frame = requestAnimationFrame(() => draw.current());
      clearTimeout(state.current.rest);
      state.current.rest = setTimeout(() => rested.current(), REST_MS);
    };
    return {
      show,
      change(change: (view: MapView, size: ScreenSize) => MapView) {
        const { view, size } = state.current;
        if (!view) return;
        state.current.view = change(view, size);
        show();
      },
    };
  }, []);

  const middle = (size: ScreenSize) => ({ x: size.width / 2, y: size.height / 2 });
  useImperativeHandle(handle, () => ({
    zoomBy: (factor) => steer.change((view, size) => zoomed(view, size, factor, middle(size))),
    showAll: () => steer.change((_, size) => fitted(trees, size)),
    centre: (point) => steer.change((view) => ({ ...view, x: point.x, y: point.y })),
  }));

  // Sharp on every screen, and as large as its box.
  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element) return;
    const fit = () => {
      const { width, height } = element.getBoundingClientRect();
      const ratio = devicePixelRatio || 1;
      element.width = Math.round(width * ratio);
      element.height = Math.round(height * ratio);
      state.current.size = { width, height };
      draw.current();
    };
    fit();
    const watching = new ResizeObserver(fit);
    watching.observe(element);
    return () => watching.disconnect();
  }, []);

  // Other trees are shown as a whole; what else changes is drawn where one is.
  const places = trees.map(({ id, x, y }) => `${id} ${x.toFixed(2)} ${y.toFixed(2)}`).join('\n');
  const shownPlaces = useRef('');
  useEffect(() => {
    state.current.gapM = 0;
    if (shownPlaces.current !== places || !state.current.view) {
      shownPlaces.current = places;
      state.current.view = fitted(trees, state.current.size);
    }
    steer.show();
  }, [places, trees, steer]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each of these changes what is drawn.
  useEffect(() => {
    state.current.colours = null;
    steer.show();
  }, [theme, lines, own, chosen, units, steer]);
  useEffect(() => {
    // Letters that come late are drawn once they are there.
    document.fonts?.ready.then(() => draw.current());
    const { current } = state;
    return () => {
      cancelAnimationFrame(current.frame);
      clearTimeout(current.rest);
    };
  }, []);

  // A wheel turns the map and not the page; only a listener that is not passive may say so.
  useEffect(() => {
    const element = canvas.current;
    const turn = (event: WheelEvent) => {
      event.preventDefault();
      const box = element!.getBoundingClientRect();
      const at = { x: event.clientX - box.left, y: event.clientY - box.top };
      const pixels = event.deltaMode === 1 ? event.deltaY * 16 : event.deltaY;
      steer.change((view, size) => zoomed(view, size, Math.exp(-pixels * 0.0016), at));
    };
    element?.addEventListener('wheel', turn, { passive: false });
    return () => element?.removeEventListener('wheel', turn);
  }, [steer]);

  const placeOf = (event: PointerEvent): PlanePoint => {
    const box = event.currentTarget.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const down = (event: PointerEvent) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    if (pointers.current.size === 0) travelled.current = 0;
    else travelled.current = Number.POSITIVE_INFINITY;
    pointers.current.set(event.pointerId, placeOf(event));
  };
  const move = (event: PointerEvent) => {
    const before = pointers.current.get(event.pointerId);
    if (!before) return;
    const now = placeOf(event);
    const other = [...pointers.current].find(([id]) => id !== event.pointerId)?.[1];
    travelled.current += Math.hypot(now.x - before.x, now.y - before.y);
    pointers.current.set(event.pointerId, now);
    if (!other) {
      if (travelled.current > TAP_PX)
        steer.change((view) => panned(view, now.x - before.x, now.y - before.y));
      return;
    }
    const span = (point: PlanePoint) => Math.max(10, Math.hypot(point.x - other.x, point.y - other.y));
    const at = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 };
    steer.change((view, size) =>
      zoomed(
        panned(view, (now.x - before.x) / 2, (now.y - before.y) / 2),
        size,
        span(now) / span(before),
        at,
      ),
    );
  };
  const up = (event: PointerEvent) => {
    const at = pointers.current.get(event.pointerId);
    pointers.current.delete(event.pointerId);
    if (at && event.type === 'pointerup' && travelled.current <= TAP_PX) tap(at);
  };
  const tap = (at: PlanePoint) => {
    const { view, size, clusters } = state.current;
    if (!view) return;
    let hit: Cluster | null = null;
    let nearest = HIT_PX;
    for (const cluster of clusters) {
      const { x, y } = toScreen(view, size, cluster);
      const distance = Math.hypot(x - at.x, y - at.y);
      if (distance < nearest) [hit, nearest] = [cluster, distance];
    }
    const members = hit?.members.map((member) => trees[member]!) ?? [];
    const closer = members.length > 1 ? fitted(members, size) : null;
    // Trees that zooming parts are zoomed to; those at one place, or nearly so, are told together.
    if (closer && closer.scale > view.scale * 1.05 && spread(members) > 1) steer.change(() => closer);
    else onChoose(members.map(({ id }) => id));
  };
  const press = (event: KeyboardEvent) => {
    const { view, size } = state.current;
    if (!view || event.ctrlKey || event.metaKey || event.altKey) return;
    const next = event.key === '0' ? fitted(trees, size) : afterKey(event.key, view, size);
    if (!next) return;
    event.preventDefault();
    steer.change(() => next);
  };

  return (
    <div
      className="map-stage"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys move the map.
      tabIndex={0}
      aria-label={`Map of ${trees.length} ${trees.length === 1 ? 'tree' : 'trees'}. Arrow keys move it, plus and minus zoom, 0 shows all; the list beside it holds the trees in view.`}
      onKeyDown={press}
    >
      <canvas ref={canvas} onPointerDown={down} onPointerMove={move} onPointerUp={up} onPointerCancel={up} />
    </div>
  );
}

/** Greatest extent of the trees, metres of the plane. */
function spread(trees: readonly PlanePoint[]): number {
  const xs = trees.map(({ x }) => x);
  const ys = trees.map(({ y }) => y);
  return Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}
