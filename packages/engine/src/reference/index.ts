export { type Constant, constant, sourced, statusNote } from './constants.ts';
export { type DragGroup, dragCoefficient, dragGroupFor } from './drag.ts';
export { signName, signSpeaksOf } from './signWords.ts';
export { type Wood, woodFor } from './wood.ts';
