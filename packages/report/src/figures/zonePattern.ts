/**
 * How each kind of zone is drawn, everywhere: by pattern, so that it survives a grey print and any colour vision.
 * Sound wood is a solid tint, incipient decay a sparse diagonal hatch, decayed wood a dense cross-hatch, a void
 * blank with its outline, bark upright dashes, a crack a solid bar, air nothing.
 */
import type { ZoneKind } from '@standfast/engine';
import { hatch } from '../scene/hatch.ts';
import { filled, type Px, ring, stroked } from '../scene/marks.ts';
import type { SceneItem } from '../scene/scene.ts';

export interface PatternOptions {
  /** Turns the pattern with its band, degrees clockwise; 0 for an upright band. */
  turnDeg?: number;
  /** Size of the pattern, 1 as under a trace. */
  scale?: number;
}

/** Marks that fill a region (one ring) as a zone of this kind. */
export function zonePattern(
  kind: ZoneKind,
  region: readonly Px[],
  options: PatternOptions = {},
): SceneItem[] {
  const { turnDeg = 0, scale = 1 } = options;
  const outline = ring(region);
  const edge = stroked(outline, 'ink', { width: 0.5 });
  switch (kind) {
    case 'air':
      return [];
    case 'sound':
      return [filled(outline, 'soundTint'), edge];
    case 'incipient':
      return [
        filled(outline, 'paper'),
        stroked(hatch([region], { angleDeg: turnDeg - 45, spacing: 4.2 * scale }), 'ink', { width: 0.5 }),
        edge,
      ];
    case 'decayed':
      return [
        filled(outline, 'paper'),
        stroked(
          hatch([region], { angleDeg: turnDeg - 45, spacing: 2.6 * scale }) +
            hatch([region], { angleDeg: turnDeg + 45, spacing: 2.6 * scale }),
          'ink',
          { width: 0.5 },
        ),
        edge,
      ];
    case 'void':
      return [filled(outline, 'paper'), stroked(outline, 'ink', { width: 0.9 })];
    case 'bark':
      return [
        filled(outline, 'paper'),
        stroked(
          hatch([region], { angleDeg: turnDeg + 90, spacing: 2.6 * scale, dash: [3.2 * scale, 2 * scale] }),
          'ink',
          { width: 0.6 },
        ),
        edge,
      ];
    case 'crack':
      return [filled(outline, 'ink')];
  }
}
