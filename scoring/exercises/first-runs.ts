import { workshopExercise } from './workshop.ts';

/** Before the weave: build a shelf, climb straight, learn to wait at a toe. */

export const straightRun = workshopExercise({
  name: 'straight-run',
  title: 'Straight run up a tee, with a shelf',
  story:
    'Offcuts from the walkway brackets at Tern Dock. Hold at the bottom until the puddle has made a shelf the full width of the bead, then climb on it without weaving.',
  teaches: 'Wait for the shelf, then keep the arc on the front of the puddle and climb steadily.',
  process: { feed_mpmin: 4, volts_V: 19 },
  weave: { pattern: 'straight', travel_mmps: 2.7, width_mm: 0, pauseA_s: 0, pauseB_s: 0, apex_mm: 0, shelf_s: 0.1 },
  asked: { kind: 'leg', size_mm: 3, atMost_mm: 6, edgeBack_mm: null },
  profile: 'tern-dock-first-runs',
  aids: { pacer: true },
});

export const twoToePause = workshopExercise({
  name: 'two-toe-pause',
  title: 'Two-toe pause',
  story:
    'Same offcuts, now from toe to toe. Cross the middle quickly and wait at each side until the metal has wetted in; count one, cross, count one.',
  teaches: 'Pause at the toes, not in the middle, and leave a toe when it has filled.',
  weave: { pattern: 'zigzag', width_mm: 4.5, travel_mmps: 3, pauseA_s: 0.25, pauseB_s: 0.25, apex_mm: 0, shelf_s: 0.1 },
  asked: { kind: 'leg', size_mm: 4, atMost_mm: 7.5, edgeBack_mm: null },
  profile: 'aws-d11-static-si',
  aids: { pacer: true },
});

export const settingsByEar = workshopExercise({
  name: 'settings-by-ear',
  title: 'Settings by ear',
  story:
    'The store has handed out a machine somebody turned down. Set feed and volts until it runs like frying, then weave a bracket corner with them.',
  teaches: 'A flat bead from a cold setting is not a good one: look at the root before you praise the face.',
  process: { feed_mpmin: 3.2, volts_V: 16 },
  settings: 'own process',
  asked: { kind: 'leg', size_mm: 5, atMost_mm: 8, edgeBack_mm: null },
  profile: 'aws-d11-static-si',
});
