/** What was recorded of the roots and of tests on them: cuts, barriers and static load tests. */
import type { CaseFile } from '../schema/schema.ts';
import { checkAzimuth } from './azimuth.ts';
import { addNotice, type Findings } from './findings.ts';
import { checkRange, RANGES } from './ranges.ts';

export function checkRoots(findings: Findings, caseFile: CaseFile): void {
  const sides = [
    ...(caseFile.rootCuts ?? []).map((cut, i) => ({ side: cut, path: `rootCuts[${i}]` })),
    ...(caseFile.rootSpace ?? []).map((barrier, i) => ({ side: barrier, path: `rootSpace[${i}]` })),
  ];
  for (const { side, path } of sides) {
    checkAzimuth(findings, side.azimuthDeg, `${path}.azimuthDeg`, path);
    checkRange(findings, side.distanceM, RANGES.cutDistanceM, `${path}.distanceM`, path);
    checkRange(findings, side.widthDeg, RANGES.cutWidthDeg, `${path}.widthDeg`, path);
  }
  (caseFile.rootCuts ?? []).forEach(({ depthM, year }, i) => {
    checkRange(findings, depthM, RANGES.cutDepthM, `rootCuts[${i}].depthM`, `rootCuts[${i}]`);
    const visited = caseFile.visitedOn === undefined ? undefined : Number(caseFile.visitedOn.slice(0, 4));
    if (year !== undefined && (year < 1900 || (visited !== undefined && year > visited))) {
      addNotice(findings, 'caution', `rootCuts[${i}].year`, `the cut is dated ${year}: is the year right?`);
    }
  });
  (caseFile.staticTests ?? []).forEach(({ directionDeg, momentNm, tiltDeg }, i) => {
    const path = `staticTests[${i}]`;
    checkAzimuth(findings, directionDeg, `${path}.directionDeg`, path);
    checkRange(findings, momentNm, RANGES.testMomentNm, `${path}.momentNm`, path);
    checkRange(findings, tiltDeg, RANGES.testTiltDeg, `${path}.tiltDeg`, path);
  });
}
