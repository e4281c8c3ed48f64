/** Words the papers share. */

export const LINES_HEAD = [
  'line and rule',
  'reading',
  'limit',
  'inside | beyond',
  'verdict',
  'where, mm',
  'real coupon',
] as const;

/** Cells of the title block that are filled in by hand. */
export const COUPON_CELLS: readonly (readonly [string, string])[] = [
  ['Real coupon, number', ''],
  ['Cut and etched on', ''],
  ['Read by, initials', ''],
  ['Trainee, initials', ''],
];

export const STRIP_SAYS =
  'The root, broken open: filled where it tied in, blank where it did not. Triangles: cuts marked before welding. Heavy rule: judged length, mm.';
