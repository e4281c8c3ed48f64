import { noFaults, type Pose, weaveHand } from '../../../engine/index.ts';
import {
  type AttemptRecording,
  type Exercise,
  exerciseNamed,
  type Result,
  scoreAttempt,
} from '../../../scoring/index.ts';
import { restartCheats } from './restart-cheats.ts';
import { exerciseOf, weldCase, weldPoses } from './weld.ts';

/**
 * A way to get a good mark without a good weld. `tried` gives what scoring makes of it. The verdict alone has to catch it: what the file says of its
 * motion, which here is a robot's, is left out.
 */
export interface Cheat {
  name: string;
  tried(): { result: Result; counted: boolean };
}

/** Counted in the class sheet: the file is a hand's, and says so on both counts. */
function counted(result: Result): boolean {
  return result.origin.kind === 'hand' && result.device.kind !== 'robot';
}

function judged(recording: AttemptRecording): { result: Result; counted: boolean } {
  const result = scoreAttempt(recording);
  return { result, counted: counted(result) };
}

function hand(exercise: Exercise, change: (poses: Pose[]) => Pose[] = (p) => p): AttemptRecording {
  const poses = [...weaveHand(exercise.demonstration, noFaults(1))];
  return weldPoses(exercise, change(poses)).recording;
}

const tee = (weave: Partial<Exercise['demonstration']> = {}): Exercise => exerciseOf({ setting: 'tee', weave });
const off = (pose: Pose): Pose => ({ ...pose, trigger: false });

/** The ready exercise whose file is tampered with. Welded once. */
let readyWeld: AttemptRecording | null = null;
function ready(): AttemptRecording {
  const exercise = exerciseNamed('tee-thin')!;
  readyWeld ??= hand(exercise);
  return readyWeld;
}

export const cheats: readonly Cheat[] = [
  {
    name: "a robot's file handed in as one's own",
    tried: () => judged(weldCase({ setting: 'tee', seed: 1 }).recording),
  },
  {
    name: "a robot's file with its origin rubbed out, the device left",
    tried: () => judged({ ...weldCase({ setting: 'tee', seed: 1 }).recording, origin: { kind: 'hand' } }),
  },
  { name: 'a machine too slow, or a background tab', tried: () => judged({ ...hand(tee()), ended: 'too-slow' }) },
  {
    name: 'guides left on in a test',
    tried: () => {
      const exercise = { ...tee(), aids: { pacer: false, beat: false, toeMarks: false, handRig: false } };
      const recording = hand(exercise);
      return judged({ ...recording, aids: { ...recording.aids, beat: true, toeMarks: true } });
    },
  },
  { name: 'welding only the easy middle', tried: () => judged(hand(tee({ start_mm: 20, length_mm: 14 }))) },
  {
    name: 'a good second pass over a cold first one',
    tried: () => {
      const cold = [...weaveHand({ ...tee().demonstration, pattern: 'straight', travel_mmps: 8 }, noFaults(1))];
      const wait = Array.from({ length: 600 }, () => off(cold[cold.length - 1]!));
      return judged(hand(tee(), (good) => [...cold, ...wait, ...good]));
    },
  },
  {
    name: 'choosing the stretch that is judged',
    tried: () => {
      const r = ready();
      return judged({ ...r, exercise: { ...r.exercise!, judged: { from_mm: 40, to_mm: 44 }, cuts_mm: [42] } });
    },
  },
  {
    name: 'asking for a smaller weld in the file',
    tried: () => {
      const r = ready();
      return judged({ ...r, exercise: { ...r.exercise!, asked: { ...r.exercise!.asked, size_mm: 2, atMost_mm: 20 } } });
    },
  },
  {
    name: 'an easier profile in the file',
    tried: () => {
      const r = ready();
      return judged({ ...r, exercise: { ...r.exercise!, profile: 'tern-dock-first-runs' } });
    },
  },
  {
    name: 'widest settings: all the machine gives',
    tried: () => {
      const e = tee();
      return judged(hand({ ...e, settings: 'own process', process: { ...e.process, volts_V: 26, feed_mpmin: 9 } }));
    },
  },
  {
    name: 'cold and flat for a pretty face',
    tried: () => {
      const e = tee();
      return judged(hand({ ...e, settings: 'own process', process: { ...e.process, volts_V: 15, feed_mpmin: 3.4 } }));
    },
  },
  {
    name: 'downhill',
    tried: () => judged(hand(tee(), (poses) => poses.map((p) => ({ ...p, y_mm: 50 - p.y_mm })))),
  },
  {
    name: 'pausing with the arc out on a frozen toe, for rhythm',
    tried: () =>
      judged(
        hand(tee({ pauseA_s: 0, pauseB_s: 0 }), (poses) =>
          poses.flatMap((p) =>
            p.trigger && Math.abs(p.u_mm) > 2.4 ? [p, ...Array.from({ length: 6 }, () => off(p))] : [p],
          ),
        ),
      ),
  },
  {
    name: 'settings edited in the file',
    tried: () => {
      const r = hand(tee({ tipToWork_mm: 22 }));
      const process = { ...r.simulation.process, volts_V: 21 };
      return judged({ ...r, simulation: { ...r.simulation, process }, exercise: { ...r.exercise!, process } });
    },
  },
  {
    name: 'poses edited in the file',
    tried: () => {
      const r = hand(tee());
      return judged({ ...r, poses: { ...r.poses, y: r.poses.y.map((y, i) => y + (i % 2)) } });
    },
  },
  {
    name: 'plates warmed in the file',
    tried: () => {
      const r = ready();
      const joint = { ...r.simulation.joint, startTemp_C: 200 };
      return judged({ ...r, simulation: { ...r.simulation, joint } });
    },
  },
  {
    name: 'coarser cells in the file',
    tried: () => {
      const r = hand(tee({ width_mm: 2 }));
      return judged({ ...r, simulation: { ...r.simulation, cell_mm: 1.2 } });
    },
  },
  {
    name: 'leaving out 6 mm and going on',
    tried: () => judged(hand(tee(), (poses) => poses.map((p) => (p.y_mm > 24 && p.y_mm < 31 ? off(p) : p)))),
  },
  {
    name: 'standing still until there is a lump',
    tried: () => judged(hand(tee(), (poses) => poses.slice(0, 1200).map((p) => ({ ...p, u_mm: 0, y_mm: 25 })))),
  },
  {
    name: 'the arc kept on one plate',
    tried: () => judged(hand(tee(), (poses) => poses.map((p) => ({ ...p, u_mm: p.u_mm + 4 })))),
  },
  {
    name: 'scribbling',
    tried: () =>
      judged(
        hand(tee(), (poses) =>
          poses.map((p, i) => ({ ...p, u_mm: 6 * Math.sin(i / 7), y_mm: 25 + 20 * Math.sin(i / 31) })),
        ),
      ),
  },
  ...restartCheats.map(({ name, weave, change }) => ({
    name,
    tried: () => judged(hand(tee(weave), change)),
  })),
];
