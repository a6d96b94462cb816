/** Every word the figures and the report print, in English. Another language is another file of this shape. */
import type { ZoneKind } from '@standfast/engine';

const zoneNames: Record<ZoneKind, string> = {
  air: 'air',
  bark: 'bark',
  sound: 'sound',
  incipient: 'incipient',
  decayed: 'decayed',
  void: 'void',
  crack: 'crack',
};

export function zoneName(kind: ZoneKind): string {
  return zoneNames[kind];
}

/** Words within drawings: short, the trade's. */
export const figureWords = {
  traceTitle: (id: string) => `Drilling resistance along ${id}`,
  traceDescription:
    'Drilling resistance in percent of full scale against depth along the needle. Zones from the entry:',
  wall: 'residual wall',
  wallAtLeast: 'residual wall at least',
  offRadial: 'off the radial',
  down: 'down',
  resistanceAxis: 'resistance, %',
  referenceTitle: 'Level of sound wood in this tree, with the modelled friction added',
  frictionTitle: 'Modelled friction of the shaft',
  frictionLegend: 'shaft friction',
  referenceLegend: (level: string, sd: string) => `sound reference ${level} ± ${sd} %, with friction`,
  confidence: 'confidence',
};
