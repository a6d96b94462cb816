export { type Constant, constant, sourced, statusNote } from './constants.ts';
export { type DragGroup, dragCoefficient, dragGroupFor } from './drag.ts';
export { type Wood, woodFor } from './wood.ts';
