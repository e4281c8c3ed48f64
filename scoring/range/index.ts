export { mapOf, RANGE_CAUTION, RANGE_LABEL, type RangeMap, workingRange } from './map.ts';
export type { Middle } from './middle.ts';
export { type Axis, axes, MOST_POINTS, pointsOf, type RangePlan, type RangePoint } from './plan.ts';
export { rangeSvg } from './range-svg.ts';
export { type RangeRow, rangeCsv, rangeRows } from './table.ts';
export { type RangeResult, weldPoint } from './weld-point.ts';
export { middleSentences } from './words.ts';
