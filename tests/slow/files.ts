/**
 * Files outside this folder that take too long for every change. `npm test` leaves WHOLE_HERE to the slow suite; of SHARED_HERE it runs a
 * share (tests/support/share.ts), and the slow suite all.
 */
export const WHOLE_HERE = [
  'tests/engine/option-space.test.ts',
  'tests/lab/{backup,class-pdf,compose,fuzz,instructors,marks,migrations,nightly,pieces,port,proxy,retention,school,walls,worker,xapi}.test.ts',
  'tests/library/package.test.ts',
  'tests/reference/corner.test.ts',
  'tests/repro/advice.test.ts',
  'tests/scoring/advice/welded.test.ts',
  'tests/scoring/measures/ends.test.ts',
  'tests/scoring/node/batch.test.ts',
  'tests/scoring/range/range.test.ts',
  'tests/scoring/trials/prove.test.ts',
  'tests/scoring/verdict/hands.test.ts',
  'tests/tendencies/knobs.test.ts',
];

export const SHARED_HERE = [
  'tests/engine/{bounds,laws}.test.ts',
  'tests/golden/{results,welds}.test.ts',
  'tests/reference/reference.test.ts',
  'tests/scoring/advice/causes.test.ts',
  'tests/scoring/exercises/exercises.test.ts',
  'tests/scoring/verdict/validity.test.ts',
];

/** Days in the browser, acted out in real time: a stage of its own before the slow suite's other tests, one file at a time. */
export const IN_BROWSER = [
  'tests/browser/{crowded,desk,devices,everyone,lab,lesson,offline,practice,shelf,slow,view,zoom}.test.ts',
];

/** What goes on in the browser for minutes and welds nothing that has to keep time: beside the slow suite's other tests. */
export const BESIDE = [
  'tests/browser/{class-paper,coupon,german,lab-house,lab-phone,level,measure,notices,proof,stranger}.test.ts',
];
