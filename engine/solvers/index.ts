/** Both solvers on their own, for checks against other people's numbers: re-exports only. */
export { createHeatPiece, type HeatPiece } from './heat-piece.ts';
export { settleSurface } from './surface-piece.ts';
export type * from './surface-types.ts';
export type * from './types.ts';
