/**
 * The crown as a sail: its silhouette's width over height, and the same cut into horizontal slices.
 *
 * Areas and centroids of the outlines are those of plane geometry (crown-shapes.csv): widths come from the outline, so
 * the slices' areas tend to them as the slices get thin.
 */
import type { CrownInput, CrownShape } from '../case.ts';
import { InputFault } from '../faults.ts';
import { crownShapes } from '../reference/tables.generated.ts';

/** Width of the silhouette, as a share of the greatest, at a share `t` of the crown's height from its base. */
const WIDTH: Record<CrownShape, (t: number) => number> = {
  ellipse: (t) => 2 * Math.sqrt(Math.max(0, t * (1 - t))),
  dome: (t) => Math.sqrt(Math.max(0, 1 - t * t)),
  cone: (t) => 1 - t,
  paraboloid: (t) => Math.sqrt(Math.max(0, 1 - t)),
  rectangle: () => 1,
  rhombus: (t) => 1 - Math.abs(2 * t - 1),
  'inverted-cone': (t) => t,
};

/** A crown's silhouette. */
export interface CrownProfile {
  baseM: number;
  topM: number;
  areaM2: number;
  /** Height of the area's centroid above ground, m. */
  centroidM: number;
  /** Width at a height above ground, m; 0 outside the crown. */
  widthM(heightM: number): number;
}

/**
 * The silhouette of a crown whose top is the tree's top.
 * @throws InputFault for a shape not known, or a base or width that cannot be.
 */
export function crownProfile(crown: CrownInput, treeHeightM: number): CrownProfile {
  const shape = crownShapes.find((row) => row.shape === crown.shape);
  if (!shape) {
    throw new InputFault(
      `"${String(crown.shape)}" is no crown shape; use one of ${crownShapes.map((row) => row.shape).join(', ')}.`,
      'tree.crown.shape',
    );
  }
  const { baseHeightM: baseM, widthM } = crown;
  if (!(baseM >= 0 && baseM < treeHeightM)) {
    throw new InputFault(
      `The crown's base at ${baseM} m must lie between the ground and the tree's top at ${treeHeightM} m.`,
      'tree.crown.baseHeightM',
    );
  }
  if (!(widthM > 0 && widthM <= 80)) {
    throw new InputFault(
      `A crown width of ${widthM} m cannot be; give metres, up to 80.`,
      'tree.crown.widthM',
    );
  }
  const heightM = treeHeightM - baseM;
  const relative = WIDTH[crown.shape];
  return {
    baseM,
    topM: treeHeightM,
    areaM2: shape.areaFactor * widthM * heightM,
    centroidM: baseM + shape.centroidFactor * heightM,
    widthM: (z) => (z < baseM || z > treeHeightM ? 0 : widthM * relative((z - baseM) / heightM)),
  };
}
