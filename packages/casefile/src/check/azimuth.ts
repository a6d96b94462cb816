/**
 * Azimuths run from 0 to 360 degrees clockwise from north. A negative one down to -180 is the common way of counting
 * to the west and is taken as such, with a note. Anything else is refused and not wrapped: 400 may be 40 with a
 * figure too many as well as a turn past north, and a drilling in the wrong place is a wrong answer.
 */
import { addFault, addNotice, type Findings } from './findings.ts';

/** Checks one azimuth; `path` is where it stands in the file, `place` what it concerns. */
export function checkAzimuth(findings: Findings, azimuthDeg: number, path: string, place: string): void {
  if (azimuthDeg >= 0 && azimuthDeg <= 360) return;
  if (azimuthDeg >= -180 && azimuthDeg < 0) {
    addNotice(
      findings,
      'note',
      place,
      `an azimuth of ${azimuthDeg} degrees is taken as ${wrapAzimuth(azimuthDeg)}, clockwise from north.`,
    );
    return;
  }
  addFault(
    findings,
    path,
    `is ${azimuthDeg}: an azimuth runs from 0 to 360 degrees clockwise from north; correct it`,
  );
}

/** The azimuth in [0, 360). */
export function wrapAzimuth(azimuthDeg: number): number {
  const wrapped = azimuthDeg % 360;
  return wrapped < 0 ? wrapped + 360 : wrapped + 0;
}
