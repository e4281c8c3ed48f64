import { exercise } from './workshop.ts';

/** Lap joints: the back plate wants the longer pause, the edge a short one. */

export const lap = exercise({
  name: 'lap-5',
  title: 'Lap on 5 mm plate',
  story:
    'Doubler plate on a float bracket. The edge melts off before you know it: wait on the back plate, only touch the edge.',
  teaches: 'Long pause on the back plate, short on the edge, and keep the edge square.',
  joint: { kind: 'lap', plateA_mm: 5, plateB_mm: 5 },
  process: { feed_mpmin: 4.4, volts_V: 18.5 },
  weave: { width_mm: 4, travel_mmps: 2.4, pauseA_s: 0.3, pauseB_s: 0.1, apex_mm: 1.5, workAngle_deg: 50 },
  asked: { kind: 'leg', size_mm: 4, atMost_mm: 7, edgeBack_mm: 2 },
  profile: 'aws-d11-static-si',
});
