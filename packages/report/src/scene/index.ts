export * from './drawScene.ts';
export * from './hatch.ts';
export * from './marks.ts';
export * from './scene.ts';
export * from './textWidth.ts';
export * from './toSvg.ts';
