export { openedRoot, type RootPlace } from './opened-root.ts';
export { type Outline, outlineOf, type Toe } from './outline.ts';
export { type PlusMinusName, plusMinus, plusMinusAt } from './plus-minus.ts';
export { type FreezeStamps, type Reading, readSection } from './station.ts';
