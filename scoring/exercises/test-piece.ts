import { exercise } from './workshop.ts';

/** The test piece: longer, judged to a code's level, nothing to lean on. */

export const testPiece = exercise({
  name: 'test-piece',
  title: 'Test piece without guides',
  story:
    'The piece that goes to the bench by the office. 150 mm, cuts marked before you start, no beat, no marks, settings as given.',
  teaches: 'Everything at once, on your own.',
  joint: { length_mm: 150 },
  asked: { kind: 'leg', size_mm: 5.5, atMost_mm: 8.5, edgeBack_mm: null },
  profile: 'iso-5817-d',
  aids: { beat: false, toeMarks: false, handRig: true },
});
