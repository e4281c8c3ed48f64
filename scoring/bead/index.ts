export { openedRoot, type RootPlace } from '../measures/bead/opened-root.ts';
export { type PlusMinusName, plusMinus, plusMinusAt } from '../measures/plus-minus.ts';
export { type Outline, outlineOf, type Toe } from '../measures/section/outline.ts';
export { type FreezeStamps, type Reading, readSection } from '../measures/section/station.ts';
