/**
 * A photo to work on: seen nearer with buttons, pinch or wheel, moved by dragging, with handles to drag and a magnifier
 * beside the thumb. What is drawn on it is in photo pixels.
 */
import type { PointPx } from '@standfast/engine';
import { Maximize2, ZoomIn, ZoomOut } from 'lucide-react';
import {
  createContext,
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  useContext,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { Button } from 'react-aria-components';
import {
  kept,
  lensPlace,
  type Size,
  type StageView,
  toPhoto,
  toStage,
  wholePhoto,
  zoomed,
} from '../work/stageView.ts';
import { useWidth } from './Figure.tsx';

export type StrokePhase = 'start' | 'move' | 'end' | 'cancel';

/** A photo as it is drawn: itself, and a smaller copy for views that show no more than that holds. */
export interface PhotoShown {
  bitmap: ImageBitmap;
  small: ImageBitmap;
}

interface PhotoStageProps {
  shown: PhotoShown;
  /** What the picture is, for a reader who cannot see it. */
  label: string;
  /** Drawn over the photo, in photo pixels. */
  overlay: ReactNode;
  /** Handles and labels; placed by `PhotoHandle` and `PhotoLabel`. */
  children?: ReactNode;
  /** Takes one finger's strokes; without it one finger moves the photo. */
  onStroke?: (phase: StrokePhase, px: PointPx, screenPxPerPhotoPx: number) => void;
  /** Shows what is under the finger while it draws. */
  magnify?: boolean;
}

type Point = readonly [number, number];

interface Stage {
  view: StageView;
  photo: Size;
  setLens: (at: PointPx | null) => void;
}

const StageContext = createContext<Stage | null>(null);

function useStage(): Stage {
  const stage = useContext(StageContext);
  if (!stage) throw new Error('There is no photo around this handle.');
  return stage;
}

const LENS_PX = 136;
/** The magnifier shows each photo pixel this much larger than the stage does, and never smaller than it is. */
const LENS_TIMES = 3;

export function PhotoStage({ shown, label, overlay, children, onStroke, magnify }: PhotoStageProps) {
  const holder = useRef<HTMLDivElement>(null);
  const width = useWidth(holder, 2000);
  const photo: Size = { width: shown.bitmap.width, height: shown.bitmap.height };
  const most = Math.max(240, Math.round(0.5 * innerHeight));
  const height = Math.min(most, Math.max(240, Math.round((width * photo.height) / photo.width)));
  const size: Size = { width, height };
  const [wished, setWished] = useState<StageView | null>(null);
  const [lens, setLens] = useState<PointPx | null>(null);
  const whole = wholePhoto(size, photo);
  const view = wished ? kept({ ...wished, scale: Math.max(wished.scale, whole.scale) }, size, photo) : whole;
  const near = view.scale > whole.scale * 1.001;
  const zoom = (factor: number, about: readonly [number, number] = [width / 2, height / 2]) =>
    setWished(zoomed(view, factor, about, size, photo));
  const gestures = useFingers({
    view,
    size,
    photo,
    show: setWished,
    onStroke,
    setLens: magnify ? setLens : () => undefined,
  });
  useWheel(holder, zoom);
  return (
    <StageContext value={{ view, photo, setLens }}>
      <div className="photo-stage">
        <div
          ref={holder}
          className="stage"
          style={{ height }}
          data-tool={onStroke ? '' : undefined}
          data-near={near ? '' : undefined}
          {...gestures}
        >
          {width > 0 && (
            <>
              <PhotoCanvas shown={shown} view={view} size={size} label={label} />
              <svg
                className="stage-overlay"
                aria-hidden="true"
                viewBox={`${view.x} ${view.y} ${width / view.scale} ${height / view.scale}`}
              >
                {overlay}
              </svg>
              {children}
              {lens && <Lens shown={shown} view={view} size={size} at={lens} />}
            </>
          )}
        </div>
        <fieldset className="button-row stage-tools">
          <legend className="out-of-sight">Part of the photo shown</legend>
          <Button className="icon-button edged" aria-label="Photo closer" onPress={() => zoom(1.7)}>
            <ZoomIn aria-hidden />
          </Button>
          <Button
            className="icon-button edged"
            aria-label="Photo wider"
            isDisabled={!near}
            onPress={() => zoom(1 / 1.7)}
          >
            <ZoomOut aria-hidden />
          </Button>
          <Button
            className="icon-button edged"
            aria-label="Whole photo"
            isDisabled={!near}
            onPress={() => setWished(null)}
          >
            <Maximize2 aria-hidden />
          </Button>
        </fieldset>
      </div>
    </StageContext>
  );
}

interface PhotoCanvasProps {
  shown: PhotoShown;
  view: StageView;
  size: Size;
  label: string;
}

function PhotoCanvas({ shown, view, size, label }: PhotoCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { scale, x, y } = view;
  const { width, height } = size;
  // Drawn anew only when another part is shown: a photo of many pixels takes its time.
  useLayoutEffect(() => {
    paint(canvas.current, shown, { scale, x, y }, { width, height });
  }, [shown, scale, x, y, width, height]);
  return <canvas ref={canvas} className="stage-photo" role="img" aria-label={label} />;
}

function paint(canvas: HTMLCanvasElement | null, shown: PhotoShown, view: StageView, size: Size): void {
  const pen = canvas?.getContext('2d');
  if (!canvas || !pen) return;
  const fine = devicePixelRatio || 1;
  canvas.width = Math.round(size.width * fine);
  canvas.height = Math.round(size.height * fine);
  const [left, top] = toStage(view, [-0.5, -0.5]);
  pen.imageSmoothingEnabled = view.scale < 4;
  pen.imageSmoothingQuality = 'high';
  pen.setTransform(fine, 0, 0, fine, 0, 0);
  const { bitmap, small } = shown;
  const enough = view.scale * fine * bitmap.width <= small.width;
  pen.drawImage(enough ? small : bitmap, left, top, bitmap.width * view.scale, bitmap.height * view.scale);
}

interface LensProps {
  shown: PhotoShown;
  view: StageView;
  size: Size;
  at: PointPx;
}

/** What is under the thumb, larger, with a cross where the point is. */
function Lens({ shown, view, size, at }: LensProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const scale = Math.max(1, LENS_TIMES * view.scale);
    const half = LENS_PX / (2 * scale);
    paint(
      canvas.current,
      shown,
      { scale, x: at[0] - half, y: at[1] - half },
      { width: LENS_PX, height: LENS_PX },
    );
  });
  const [left, top] = lensPlace(toStage(view, at), size, LENS_PX);
  return (
    <span className="lens" aria-hidden="true" style={{ left, top, width: LENS_PX, height: LENS_PX }}>
      <canvas ref={canvas} />
    </span>
  );
}

interface PhotoHandleProps {
  at: PointPx;
  /** What is dragged, for example `Top left corner`. */
  name: string;
  /** Short text on the handle. */
  mark: string;
  tone?: 'corner' | 'point';
  onMove: (to: PointPx) => void;
  onEnd?: () => void;
}

const ARROWS: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** A point on the photo to drag; arrow keys nudge it by a photo pixel, with Shift by ten. */
export function PhotoHandle({ at, name, mark, tone = 'corner', onMove, onEnd }: PhotoHandleProps) {
  const { view, photo, setLens } = useStage();
  /** Where finger and point were when the finger came down. */
  const grip = useRef<{ finger: Point; at: PointPx } | null>(null);
  const [left, top] = toStage(view, at);
  const inside = ([x, y]: PointPx): PointPx => [
    Math.min(photo.width - 1, Math.max(0, x)),
    Math.min(photo.height - 1, Math.max(0, y)),
  ];
  const move = (to: PointPx) => {
    const there = inside(to);
    setLens(there);
    onMove(there);
  };
  const press = (event: KeyboardEvent) => {
    const arrow = ARROWS[event.key];
    if (!arrow) return;
    event.preventDefault();
    const step = event.shiftKey ? 10 : 1;
    move([at[0] + step * arrow[0], at[1] + step * arrow[1]]);
  };
  const letGo = (event: PointerEvent) => {
    event.stopPropagation();
    if (!grip.current) return;
    grip.current = null;
    setLens(null);
    onEnd?.();
  };
  return (
    <button
      type="button"
      className={`photo-handle ${tone}`}
      style={{ left, top }}
      aria-label={`${name}, ${Math.round(at[0])} px across, ${Math.round(at[1])} px down. Arrow keys move it.`}
      onKeyDown={press}
      onKeyUp={(event) => {
        if (ARROWS[event.key]) onEnd?.();
      }}
      onBlur={() => setLens(null)}
      onPointerDown={(event) => {
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
        grip.current = { finger: [event.clientX, event.clientY], at };
        setLens(at);
      }}
      onPointerMove={(event) => {
        event.stopPropagation();
        if (!grip.current) return;
        // The point keeps its distance from the finger, wherever the page has moved meanwhile.
        const { finger, at: began } = grip.current;
        const [x, y] = [event.clientX - finger[0], event.clientY - finger[1]];
        move([began[0] + x / view.scale, began[1] + y / view.scale]);
      }}
      onPointerUp={letGo}
      onPointerCancel={letGo}
    >
      <span aria-hidden="true">{mark}</span>
    </button>
  );
}

/** A few words on the photo. */
export function PhotoLabel({ at, children }: { at: PointPx; children: ReactNode }) {
  const { view } = useStage();
  const [left, top] = toStage(view, at);
  return (
    <span className="photo-label" aria-hidden="true" style={{ left, top }}>
      {children}
    </span>
  );
}

interface FingerWork {
  view: StageView;
  size: Size;
  photo: Size;
  show: (view: StageView) => void;
  onStroke: PhotoStageProps['onStroke'];
  setLens: (at: PointPx | null) => void;
}

/** One finger draws with the tool or moves the photo, two bring it nearer. */
function useFingers({ view, size, photo, show, onStroke, setLens }: FingerWork) {
  const fingers = useRef(new Map<number, Point>());
  const began = useRef<{ view: StageView; fingers: Point[]; stroke: boolean } | null>(null);
  const where = (event: PointerEvent): Point => {
    const box = event.currentTarget.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  };
  const stroke = (phase: StrokePhase, at: Point) => {
    const px = toPhoto(view, at);
    setLens(phase === 'start' || phase === 'move' ? px : null);
    onStroke?.(phase, px, view.scale);
  };
  const begin = () => {
    began.current = { view, fingers: [...fingers.current.values()], stroke: false };
  };
  const lift = (event: PointerEvent, phase: 'end' | 'cancel') => {
    const at = fingers.current.get(event.pointerId);
    fingers.current.delete(event.pointerId);
    if (at && began.current?.stroke) stroke(phase, at);
    if (fingers.current.size > 0) begin();
    else began.current = null;
  };
  return {
    onPointerDown(event: PointerEvent) {
      event.currentTarget.setPointerCapture(event.pointerId);
      const at = where(event);
      const alone = fingers.current.size === 0;
      if (!alone && began.current?.stroke) stroke('cancel', at);
      fingers.current.set(event.pointerId, at);
      begin();
      if (alone && onStroke && began.current) {
        began.current.stroke = true;
        stroke('start', at);
      }
    },
    onPointerMove(event: PointerEvent) {
      const start = began.current;
      if (!start || !fingers.current.has(event.pointerId)) return;
      const at = where(event);
      fingers.current.set(event.pointerId, at);
      if (start.stroke) {
        stroke('move', at);
        return;
      }
      const now = [...fingers.current.values()];
      const [a, b] = [middle(start.fingers), middle(now)];
      const factor = now.length > 1 ? apart(now) / Math.max(20, apart(start.fingers)) : 1;
      const moved = {
        ...start.view,
        x: start.view.x - (b[0] - a[0]) / start.view.scale,
        y: start.view.y - (b[1] - a[1]) / start.view.scale,
      };
      show(zoomed(moved, factor, b, size, photo));
    },
    onPointerUp: (event: PointerEvent) => lift(event, 'end'),
    onPointerCancel: (event: PointerEvent) => lift(event, 'cancel'),
  };
}

function middle(points: readonly Point[]): Point {
  const sum = points.reduce(([x, y], [px, py]) => [x + px, y + py] as const, [0, 0] as const);
  return [sum[0] / Math.max(1, points.length), sum[1] / Math.max(1, points.length)];
}

function apart([a, b]: readonly Point[]): number {
  return a && b ? Math.hypot(b[0] - a[0], b[1] - a[1]) : 1;
}

/** Ctrl and wheel (or a pinch on a touchpad) comes nearer; a plain wheel scrolls the page. */
function useWheel(
  holder: { current: HTMLElement | null },
  zoom: (factor: number, about: readonly [number, number]) => void,
) {
  const latest = useRef(zoom);
  latest.current = zoom;
  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    const turn = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      latest.current(Math.exp(-event.deltaY / 240), [event.clientX - box.left, event.clientY - box.top]);
    };
    element.addEventListener('wheel', turn, { passive: false });
    return () => element.removeEventListener('wheel', turn);
  }, [holder]);
}
