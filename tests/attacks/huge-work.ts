import { createRandom, defaultOptions, workOf } from '../../engine/index.ts';
import {
  type AttemptRecording,
  checkRecording,
  checkWork,
  exercises,
  InputError,
  MOST_WORK_S,
} from '../../scoring/index.ts';
import { scoreBytes } from '../../scoring/node/index.ts';
import { byMouse, weld } from '../scoring/welds.ts';
import type { Attack, Try } from './attack.ts';

let short: AttemptRecording | null = null;

/** A small valid file that asks for hours: a long thick joint in small cells, and an arc that goes everywhere. */
function huge(n: number): AttemptRecording {
  short ??= weld({ joint: { length_mm: 30 }, weave: { length_mm: 3, shelf_s: 0 }, ...byMouse(9) });
  const random = createRandom(n + 1);
  const between = (low: number, high: number): number => low + (high - low) * random.next();
  const { joint, process } = defaultOptions();
  const length_mm = Math.round(between(200, 300));
  const plate = Math.round(between(10, 20));
  const poses = Math.round(between(30_000, 120_000));
  const jump = 1 + Math.floor(between(0, 300));
  const column = (value: (i: number) => number): number[] => Array.from({ length: poses }, (_, i) => value(i));
  return {
    ...short,
    exercise: null,
    simulation: {
      joint: { ...joint, length_mm, plateA_mm: plate, plateB_mm: plate, tabs: true },
      process,
      cell_mm: between(0.4, 0.5),
    },
    poses: {
      u: column(() => 0),
      y: column((i) => (Math.floor(i / jump) % 2 === 0 ? 100 : 100 * length_mm)),
      tip: column(() => 1200),
      work: column(() => 450),
      travel: column(() => 80),
      trigger: column(() => 1),
    },
  };
}

/** What would take hours is refused before it is begun; what is welded at a bench never is. */
export const hugeWork: Attack = {
  name: 'huge work',
  says: 'valid recordings of 5 to 20 minutes with the arc jumping along 200 to 300 mm of thick joint in the smallest cells; each refused by name before any of it is welded, while every ready exercise is a small part of the limit',
  share: 3,
  whole: 40,
  tries: (n): Try => {
    const recording = huge(n);
    const file = `${n}.json`;
    const faults: string[] = [];
    const { core_s } = workOf(recording);
    if (!(core_s > MOST_WORK_S)) faults.push(`reckoned at ${core_s} s`);
    try {
      checkWork(checkRecording(recording, file), file);
      faults.push('would be welded');
    } catch (error) {
      if (!(error instanceof InputError && error.message.startsWith(`${file}: found some `)))
        faults.push(String(error));
    }
    // The same way in as a folder's, with a limit under which even a short file falls: were it not asked, this would end in a score and not in hours.
    try {
      scoreBytes(new TextEncoder().encode(JSON.stringify(short)), file, { exercise: null, profile: null }, 1e-6);
      faults.push('was welded');
    } catch (error) {
      if (!(error instanceof InputError)) faults.push(String(error));
    }
    const exercise = exercises[n % exercises.length]!;
    const honest = workOf({
      simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 },
      poses: climbing(exercise.joint.length_mm),
    });
    if (!(honest.core_s < MOST_WORK_S / 5)) faults.push(`${exercise.name} is reckoned at ${honest.core_s} s`);
    return { inputs: 2, faults };
  },
};

/** Three minutes up the whole joint: slower than anybody climbs. */
function climbing(length_mm: number): AttemptRecording['poses'] {
  const column = (value: (i: number) => number): number[] => Array.from({ length: 18_000 }, (_, i) => value(i));
  const none = column(() => 0);
  return {
    u: none,
    y: column((i) => Math.round((100 * length_mm * i) / 18_000)),
    tip: none,
    work: none,
    travel: none,
    trigger: column(() => 1),
  };
}
