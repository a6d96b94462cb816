/**
 * One trace to look into: zoomed with buttons, pinch or wheel, moved by dragging, and read off at a cursor that a
 * finger, a mouse or the arrow keys move.
 */
import type { DrillingAssessment, Zone } from '@standfast/engine';
import { darkTheme, lightTheme, toData, toPx, toSvg, traceFigure } from '@standfast/report';
import { ChevronLeft, ChevronRight, Maximize2, ZoomIn, ZoomOut } from 'lucide-react';
import { type PointerEvent, useEffect, useId, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { useSettings, useThemeShown } from '../state/settings.ts';
import { quantityText, sureText } from '../units/quantities.ts';
import { sharedAssessor } from '../work/assessor.ts';
import type { TraceSamples } from '../work/assessor.worker.ts';
import { between, clampWindow, firstAtOrBeyond, traceWindow, zoomWindow } from '../work/traceWindow.ts';
import { useWidth } from './Figure.tsx';

type Stretch = readonly [fromMm: number, toMm: number];

interface TraceViewProps {
  drilling: DrillingAssessment;
  /** Where its samples are kept. */
  file: { path: string; sha256: string } | null;
  /** Top of the resistance axis, shared by the tree's drillings. */
  topPct: number;
}

export function TraceView({ drilling, file, topPct }: TraceViewProps) {
  const holder = useRef<HTMLDivElement>(null);
  const width = useWidth(holder, 1400);
  const theme = useThemeShown();
  const { units } = useSettings();
  const samples = useSamples(file);
  const idPrefix = `trace${useId().replace(/[^a-z0-9]/gi, '')}`;
  const whole: Stretch = [
    Math.min(0, drilling.drawn.depthMm[0] ?? 0),
    Math.max(drilling.drawn.depthMm.at(-1) ?? 1, drilling.zones.at(-1)?.toMm ?? 1),
  ];
  const [wished, setWished] = useState<Stretch | null>(null);
  const stretch = wished ? clampWindow(wished, whole) : whole;
  const [from, to] = stretch;
  const [cursor, setCursor] = useState(() =>
    // Where the wall ends is what one looks at first; without an end, the middle.
    drilling.residualWallAtLeast ? (whole[0] + whole[1]) / 2 : drilling.woodFromMm + drilling.residualWallMm,
  );

  const figure = useMemo(() => {
    if (width === 0) return null;
    const drawn = samples ? traceWindow(samples, drilling.drawn, from, to, width) : drilling.drawn;
    return traceFigure(
      { ...drilling, drawn },
      {
        width,
        units,
        textSize: width < 600 ? 12 : 13,
        plotHeight: width < 600 ? 210 : 280,
        depthRangeMm: [from, to],
        topPct,
        bare: true,
      },
    );
  }, [width, samples, drilling, from, to, units, topPct]);
  const svg = useMemo(
    () => (figure ? toSvg(figure, { theme: theme === 'dark' ? darkTheme : lightTheme, idPrefix }) : ''),
    [figure, theme, idPrefix],
  );

  const depthAt = (clientX: number) => {
    const left = holder.current?.getBoundingClientRect().left ?? 0;
    return figure ? toData(figure.plot.depthMm, clientX - left) : 0;
  };
  const zoom = (factor: number, about = (from + to) / 2) => setWished(zoomWindow(stretch, factor, about));
  const move = (share: number) => setWished([from + share * (to - from), to + share * (to - from)]);
  const gestures = useGestures({
    depthAt,
    stretch,
    show: setWished,
    tap: (depthMm) => setCursor(Math.min(whole[1], Math.max(whole[0], depthMm))),
  });
  useWheelZoom(holder, (factor, clientX) => zoom(factor, depthAt(clientX)), move);

  const inSight = cursor >= from && cursor <= to;
  const reading = readOut(drilling, samples, cursor);
  const zoomed = to - from < whole[1] - whole[0] - 0.5;
  const axis = figure?.plot.depthMm;
  return (
    <div className="trace-view">
      <div ref={holder} className="figure trace-figure" data-zoomed={zoomed ? '' : undefined} {...gestures}>
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: the report's printer makes it, and escapes all text. */}
        <div dangerouslySetInnerHTML={{ __html: svg }} />
        {figure && axis && inSight && (
          <span
            className="trace-cursor"
            style={{
              left: toPx(axis, cursor),
              top: figure.plot.resistancePct.range[1],
              height: figure.plot.bands[1] - figure.plot.resistancePct.range[1],
            }}
          />
        )}
      </div>
      <div className="trace-tools">
        <fieldset className="button-row">
          <legend className="out-of-sight">Part of the trace shown</legend>
          <Button
            className="icon-button edged"
            aria-label="Closer"
            onPress={() => zoom(1.6, cursorOr(cursor, stretch))}
          >
            <ZoomIn aria-hidden />
          </Button>
          <Button
            className="icon-button edged"
            aria-label="Wider"
            isDisabled={!zoomed}
            onPress={() => zoom(1 / 1.6)}
          >
            <ZoomOut aria-hidden />
          </Button>
          <Button
            className="icon-button edged"
            aria-label="Shallower"
            isDisabled={from <= whole[0]}
            onPress={() => move(-0.5)}
          >
            <ChevronLeft aria-hidden />
          </Button>
          <Button
            className="icon-button edged"
            aria-label="Deeper"
            isDisabled={to >= whole[1]}
            onPress={() => move(0.5)}
          >
            <ChevronRight aria-hidden />
          </Button>
          <Button
            className="icon-button edged"
            aria-label="Whole trace"
            isDisabled={!zoomed}
            onPress={() => setWished(null)}
          >
            <Maximize2 aria-hidden />
          </Button>
        </fieldset>
        <label className="trace-slider">
          <span className="out-of-sight">Depth of the read-out</span>
          <input
            type="range"
            min={from}
            max={to}
            step={Math.max(0.1, (to - from) / 400)}
            value={Math.min(to, Math.max(from, cursor))}
            aria-valuetext={readOutText(reading, units)}
            onChange={(event) => setCursor(Number(event.target.value))}
          />
        </label>
      </div>
      <dl className="read-out" data-testid="read-out">
        <div>
          <dt>Depth</dt>
          <dd>{depthText(reading.depthMm, units)}</dd>
        </div>
        <div>
          <dt>Reading</dt>
          <dd>{reading.levelPct === null ? '–' : `${reading.levelPct.toFixed(1)} %`}</dd>
        </div>
        <div>
          <dt>Shaft friction</dt>
          <dd>{`${reading.frictionPct.toFixed(1)} %`}</dd>
        </div>
        <div>
          <dt>Zone</dt>
          <dd>{reading.zone?.kind ?? '–'}</dd>
        </div>
        <div>
          <dt>Probability</dt>
          <dd>{reading.zone ? sureText(reading.zone.confidence) : '–'}</dd>
        </div>
      </dl>
    </div>
  );
}

interface ReadOut {
  depthMm: number;
  levelPct: number | null;
  frictionPct: number;
  zone: Zone | undefined;
}

function readOut(drilling: DrillingAssessment, samples: TraceSamples | null, depthMm: number): ReadOut {
  const { drawn, zones } = drilling;
  let levelPct: number | null = null;
  if (samples && samples.depthMm.length > 0) {
    const next = Math.min(samples.depthMm.length - 1, firstAtOrBeyond(samples.depthMm, depthMm));
    const before = Math.max(0, next - 1);
    const nearer =
      Math.abs(samples.depthMm[next]! - depthMm) < Math.abs(samples.depthMm[before]! - depthMm)
        ? next
        : before;
    levelPct = samples.resistancePct[nearer]!;
  }
  return {
    depthMm,
    levelPct,
    frictionPct: between(drawn.depthMm, drawn.frictionPct, depthMm),
    zone: zones.find(({ fromMm, toMm }) => depthMm >= fromMm && depthMm < toMm) ?? zones.at(-1),
  };
}

function depthText(depthMm: number, units: 'metric' | 'us'): string {
  return units === 'us' ? `${(depthMm / 25.4).toFixed(2)} in` : `${depthMm.toFixed(1)} mm`;
}

function readOutText({ depthMm, levelPct, zone }: ReadOut, units: 'metric' | 'us'): string {
  const parts = [quantityText(depthMm, 'lengthMm', units)];
  if (levelPct !== null) parts.push(`${levelPct.toFixed(0)} percent`);
  if (zone) parts.push(`${zone.kind}, probability ${sureText(zone.confidence)}`);
  return parts.join(', ');
}

function cursorOr(cursor: number, [from, to]: Stretch): number {
  return cursor >= from && cursor <= to ? cursor : (from + to) / 2;
}

/** All samples of the trace, once they have come from the worker; until then the drawn columns serve. */
function useSamples(file: TraceViewProps['file']): TraceSamples | null {
  const [samples, setSamples] = useState<TraceSamples | null>(null);
  const path = file?.path;
  const sha256 = file?.sha256;
  useEffect(() => {
    let gone = false;
    setSamples(null);
    if (path !== undefined && sha256 !== undefined) {
      sharedAssessor()
        .samples(path, sha256)
        .then(
          (got) => !gone && setSamples(got),
          // The drawn columns stay; the fault itself is told by the assessment.
          () => undefined,
        );
    }
    return () => {
      gone = true;
    };
  }, [path, sha256]);
  return samples;
}

interface GestureWork {
  depthAt: (clientX: number) => number;
  stretch: Stretch;
  show: (stretch: Stretch) => void;
  tap: (depthMm: number) => void;
}

/** One finger moves along and taps, two zoom. Up and down stay the page's. */
function useGestures({ depthAt, stretch, show, tap }: GestureWork) {
  const fingers = useRef(new Map<number, number>());
  const start = useRef<{ stretch: Stretch; depths: number[]; xs: number[]; moved: boolean } | null>(null);

  const begin = () => {
    const xs = [...fingers.current.values()];
    start.current = {
      stretch,
      xs,
      depths: xs.map(depthAt),
      moved: (start.current?.moved ?? false) && xs.length > 0,
    };
  };
  const perPx = (element: Element, [from, to]: Stretch) =>
    (to - from) / Math.max(1, element.clientWidth - 44);
  return {
    onPointerDown(event: PointerEvent) {
      fingers.current.set(event.pointerId, event.clientX);
      begin();
    },
    onPointerMove(event: PointerEvent) {
      if (!fingers.current.has(event.pointerId) || !start.current) return;
      fingers.current.set(event.pointerId, event.clientX);
      const xs = [...fingers.current.values()];
      const began = start.current;
      const scale = perPx(event.currentTarget, began.stretch);
      if (xs.length === 1) {
        const shift = xs[0]! - began.xs[0]!;
        if (Math.abs(shift) > 6 && !began.moved) {
          began.moved = true;
          event.currentTarget.setPointerCapture(event.pointerId);
        }
        if (began.moved) show([began.stretch[0] - shift * scale, began.stretch[1] - shift * scale]);
      } else if (xs.length === 2) {
        began.moved = true;
        const apart = Math.max(20, Math.abs(xs[1]! - xs[0]!));
        const factor = apart / Math.max(20, Math.abs(began.xs[1]! - began.xs[0]!));
        show(zoomWindow(began.stretch, factor, (began.depths[0]! + began.depths[1]!) / 2));
      }
    },
    onPointerUp(event: PointerEvent) {
      if (start.current && !start.current.moved && fingers.current.size === 1) tap(depthAt(event.clientX));
      fingers.current.delete(event.pointerId);
      if (fingers.current.size > 0) begin();
      else start.current = null;
    },
    onPointerCancel(event: PointerEvent) {
      fingers.current.delete(event.pointerId);
      start.current = null;
    },
  };
}

/** Ctrl and wheel (or a pinch on a touchpad) zooms, a sideways wheel moves; a plain wheel scrolls the page. */
function useWheelZoom(
  holder: { current: HTMLElement | null },
  zoom: (factor: number, clientX: number) => void,
  move: (share: number) => void,
) {
  const latest = useRef({ zoom, move });
  latest.current = { zoom, move };
  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    const turn = (event: WheelEvent) => {
      if (event.ctrlKey || event.metaKey) {
        event.preventDefault();
        latest.current.zoom(Math.exp(-event.deltaY / 240), event.clientX);
      } else if (Math.abs(event.deltaX) > Math.abs(event.deltaY) || event.shiftKey) {
        event.preventDefault();
        latest.current.move((event.deltaX || event.deltaY) / Math.max(1, element.clientWidth));
      }
    };
    element.addEventListener('wheel', turn, { passive: false });
    return () => element.removeEventListener('wheel', turn);
  }, [holder]);
}
