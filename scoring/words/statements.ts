/** What no attempt here can show, and what everybody should know; printed with every result. */

/** What no attempt here can show. */
export const NOT_MODELLED: readonly string[] = [
  'porosity',
  'cracks',
  'silica islands',
  'arc strikes and spatter on the plate',
  'distortion',
  'undercut drained out of the toe (a melted toe is reported as toe risk instead)',
];

/** Printed with every result. */
export const CAUTIONS: readonly string[] = [
  'A study aid. The local code, the written procedure and the inspector decide; a score qualifies nobody.',
  'Practice here replaces no supervised practice, protective equipment, ventilation, fire watch or qualified procedure.',
  'Welding can blind, burn, shock, gas and set fires.',
];
