import { workshopExercise } from './workshop.ts';

/** Weaves on a tee. */

export const invertedVee = workshopExercise({
  name: 'tee-inverted-v',
  title: 'Inverted V on a 6 mm tee',
  story:
    'Walkway bracket, web to flange, 6 mm on 6 mm. Toe, up over the root, toe; the arc meets the front of the puddle at every crossing.',
  teaches: 'Reach ahead over the root at each crossing, then wait at each toe.',
  asked: { kind: 'leg', size_mm: 5, atMost_mm: 8, edgeBack_mm: null },
  profile: 'aws-d11-static-si',
});

export const triangle = workshopExercise({
  name: 'tee-triangle',
  title: 'Looping triangle on a 5 mm tee',
  story:
    'A lighter bracket, 5 mm on 5 mm, with a looping triangle: across the shelf from toe to toe, up into the root, and down to the first toe, always the same way round.',
  teaches: 'Keep going one way round, and let the point of the triangle reach the root.',
  joint: { plateA_mm: 5, plateB_mm: 5 },
  process: { feed_mpmin: 6.2, volts_V: 21 },
  weave: {
    pattern: 'triangle',
    cyclesPerSecond: 1.1,
    width_mm: 5,
    travel_mmps: 3,
    pauseA_s: 0.15,
    pauseB_s: 0.15,
    apex_mm: 1.5,
    shelf_s: 0.2,
  },
  asked: { kind: 'leg', size_mm: 4.5, atMost_mm: 7.5, edgeBack_mm: null },
  profile: 'aws-d11-static-si',
});

export const crescent = workshopExercise({
  name: 'tee-crescent',
  title: 'Crescent on a 6 mm tee',
  story:
    'A bracket that will be seen from the walkway. A shallow crescent from toe to toe, judged to ISO 5817 level C.',
  teaches: 'Even steps and equal pauses: the face takes the shape of your timing.',
  weave: {
    pattern: 'crescent',
    apex_mm: 1.2,
    shelf_s: 0.2,
    pauseA_s: 0.2,
    pauseB_s: 0.2,
    cyclesPerSecond: 1,
  },
  asked: { kind: 'leg', size_mm: 5, atMost_mm: null, edgeBack_mm: null },
  profile: 'iso-5817-c',
});

export const gapTee = workshopExercise({
  name: 'tee-gap',
  title: 'Tee with a 1.5 mm gap',
  story:
    'The web was cut short and stands 1.5 mm off the flange. The leg has to grow by the gap before the joint carries the same.',
  teaches: 'A gap takes metal and throat: slow down enough to make it up, and keep the root.',
  joint: { gap_mm: 1.5 },
  process: { feed_mpmin: 5.2, volts_V: 19 },
  weave: { width_mm: 6, travel_mmps: 1.9 },
  asked: { kind: 'leg', size_mm: 4, atMost_mm: 8, edgeBack_mm: null },
  profile: 'aws-d11-static-si',
});

export const thinTee = workshopExercise({
  name: 'tee-thin',
  title: 'Thin tee, 4 mm plate',
  story: 'Cable-tray brackets in 4 mm. Less metal, less heat, and less time before the plate lets go.',
  teaches: 'Turn down, narrow the weave and keep moving.',
  joint: { plateA_mm: 4, plateB_mm: 4 },
  process: { feed_mpmin: 4.4, volts_V: 19 },
  weave: { width_mm: 4, travel_mmps: 2.8, cyclesPerSecond: 1.1, pauseA_s: 0.2, pauseB_s: 0.2, apex_mm: 1.5 },
  asked: { kind: 'leg', size_mm: 4, atMost_mm: 7, edgeBack_mm: null },
  profile: 'iso-5817-d',
});

export const warmTee = workshopExercise({
  name: 'tee-warm-narrow',
  title: 'Warm narrow plates',
  story:
    'Second piece straight after the first, on strips only 50 mm wide and still at 120 °C. The top end runs hot: climb faster as it warms.',
  teaches: 'Read the puddle and not the beat: a hot plate wants more travel.',
  joint: { plateWidth_mm: 50, startTemp_C: 120, length_mm: 120 },
  process: { feed_mpmin: 5.2, volts_V: 20 },
  weave: { apex_mm: 1.5, pauseA_s: 0.2, pauseB_s: 0.2 },
  asked: { kind: 'leg', size_mm: 4.5, atMost_mm: 8, edgeBack_mm: null },
  profile: 'aws-d11-static-si',
});

/** Lap joints: the back plate wants the longer pause, the edge a short one. */

export const lap = workshopExercise({
  name: 'lap-5',
  title: 'Lap on 5 mm plate',
  story:
    'Doubler plate on a float bracket. The edge melts off before you know it: wait on the back plate, only touch the edge.',
  teaches: 'Long pause on the back plate, short on the edge, and keep the edge square.',
  joint: { kind: 'lap', plateA_mm: 5, plateB_mm: 5 },
  process: { feed_mpmin: 4.6, volts_V: 20 },
  weave: { width_mm: 4.3, travel_mmps: 2.7, pauseA_s: 0.2, pauseB_s: 0.1, apex_mm: 1.5, workAngle_deg: 50 },
  asked: { kind: 'leg', size_mm: 3.5, atMost_mm: 7, edgeBack_mm: 2 },
  profile: 'aws-d11-static-si',
});

/** The test piece: longer, judged to a code's level, nothing to lean on. */

export const testPiece = workshopExercise({
  name: 'test-piece',
  title: 'Test piece without guides',
  story:
    'The piece that goes to the bench by the office. 120 mm, cuts marked before you start, no beat, no marks, settings as given.',
  teaches: 'Everything at once, on your own.',
  joint: { length_mm: 120 },
  asked: { kind: 'leg', size_mm: 5, atMost_mm: 8, edgeBack_mm: null },
  profile: 'iso-5817-d',
  aids: { beat: false, toeMarks: false, handRig: true },
});
