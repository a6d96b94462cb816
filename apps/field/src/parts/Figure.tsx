/**
 * A figure of the report on screen: the same drawing, printed at the width there is, in the theme of the screen.
 * Parts of it can be pressed; for keyboards each has a twin in a list beside the figure, so the figure itself takes
 * no focus.
 */
import { darkTheme, lightTheme, type Scene, toSvg } from '@standfast/report';
import { type PointerEvent, useId, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { useThemeShown } from '../state/settings.ts';

interface FigureProps<S extends Scene> {
  /** Draws at a width in px; must be stable (useCallback), or the figure is drawn again each time. */
  draw: (width: number) => S;
  /** A part was pressed: its `data-part` and `data-ref`. */
  onPart?: (part: string, ref: string) => void;
  /** Widest the figure is drawn, px. */
  maxWidth?: number;
  className?: string;
}

export function Figure<S extends Scene>({ draw, onPart, maxWidth = 1200, className }: FigureProps<S>) {
  const holder = useRef<HTMLDivElement>(null);
  const width = useWidth(holder, maxWidth);
  const theme = useThemeShown();
  const idPrefix = `figure${useId().replace(/[^a-z0-9]/gi, '')}`;
  const svg = useMemo(
    () =>
      width > 0 ? toSvg(draw(width), { theme: theme === 'dark' ? darkTheme : lightTheme, idPrefix }) : '',
    [draw, width, theme, idPrefix],
  );
  const press = (event: PointerEvent) => {
    const part = (event.target as Element).closest('[data-ref]');
    if (part && onPart) onPart(part.getAttribute('data-part') ?? '', part.getAttribute('data-ref') ?? '');
  };
  return (
    <div
      ref={holder}
      className={`figure ${onPart ? 'pressable' : ''} ${className ?? ''}`}
      onPointerUp={onPart ? press : undefined}
      // biome-ignore lint/security/noDangerouslySetInnerHtml: the report's printer makes it, and escapes all text.
      dangerouslySetInnerHTML={{ __html: svg }}
    />
  );
}

/** Width of an element, px, whole, at most `most`; 0 until it is laid out. */
export function useWidth(holder: { current: HTMLElement | null }, most: number): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = holder.current;
    if (!element) return;
    const measure = () => setWidth(Math.min(most, Math.floor(element.clientWidth)));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [holder, most]);
  return width;
}
