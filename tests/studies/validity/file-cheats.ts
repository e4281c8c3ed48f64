import { noFaults, type Pose, weaveHand } from '../../../engine/index.ts';
import type { AttemptRecording, Exercise } from '../../../scoring/index.ts';
import { type HandedIn, handIn } from './handed-in.ts';
import { ownHand } from './hands.ts';
import { exerciseOf, type Said, weldPoses } from './weld.ts';

/**
 * Ways to hand in a file that is not one's own good weld, with the program in hand: whatever is changed is welded again where that helps. `shows` says what
 * is expected of the sheet: a file gives itself away, no file can tell, or there is nothing to tell (the honest hand that the others are compared with).
 */
export interface FileCheat {
  name: string;
  shows: 'itself' | 'nothing' | 'honest';
  tried(): HandedIn;
}

const EXERCISE = exerciseOf({ setting: 'tee, 1.0 wire' });
/** A test: no guides allowed. */
const TEST: Exercise = { ...EXERCISE, aids: { pacer: false, beat: false, toeMarks: false, handRig: false } };
/** Unsteady as a good hand is. */
const GOOD = 0.12;
const MOUSE: AttemptRecording['device'] = {
  kind: 'mouse',
  measures: { tipToWork: false, workAngle: false, travelAngle: false },
  scale: null,
};

/** A person's go; the same person has the same faults and another chance each time. */
function person(who: number, go: number, amount = GOOD): Pose[] {
  return [...weaveHand(EXERCISE.demonstration, ownHand(75_000 + who, amount, 7500 + 10 * who + go))];
}
const [INES, TOM, STRANGER] = [1, 2, 3];

function robot(weave: Partial<Exercise['demonstration']> = {}): Pose[] {
  return [...weaveHand({ ...EXERCISE.demonstration, ...weave }, noFaults(1))];
}

function welded(poses: readonly Pose[], said: Said = {}, exercise = EXERCISE): AttemptRecording {
  return weldPoses(exercise, poses, said).recording;
}

/** Poses at another tempo: every `by` seconds of the new take one of the old. */
function stretched(poses: readonly Pose[], by: number): Pose[] {
  const count = Math.floor((poses.length - 1) * by);
  return Array.from({ length: count }, (_, i) => {
    const at = i / by;
    const a = poses[Math.floor(at)]!;
    const b = poses[Math.min(poses.length - 1, Math.floor(at) + 1)]!;
    const share = at - Math.floor(at);
    return { ...a, u_mm: a.u_mm + share * (b.u_mm - a.u_mm), y_mm: a.y_mm + share * (b.y_mm - a.y_mm) };
  });
}

/** Even noise of an amplitude, the same every time. */
function noisy(poses: readonly Pose[], amplitude_mm: number): Pose[] {
  let state = 20_260_314;
  const next = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (2 * state) / 2 ** 32 - 1;
  };
  return poses.map((p) => ({ ...p, u_mm: p.u_mm + amplitude_mm * next(), y_mm: p.y_mm + amplitude_mm * next() }));
}

let inesWelded: AttemptRecording | null = null;
function ines(): AttemptRecording {
  inesWelded ??= welded(person(INES, 0));
  return inesWelded;
}

/** Handed in alone, by Tom. */
const alone = (recording: AttemptRecording, asked = EXERCISE): HandedIn => handIn([{ who: 'tom', recording }], asked);
/** Ines hands hers in first. */
const afterInes = (recording: AttemptRecording): HandedIn =>
  handIn(
    [
      { who: 'ines', recording: ines() },
      { who: 'tom', recording },
    ],
    EXERCISE,
  );
const edited = (change: (r: AttemptRecording) => void): HandedIn => {
  const copy = structuredClone(ines());
  change(copy);
  return alone(copy);
};

export const fileCheats: readonly FileCheat[] = [
  { name: 'none: an honest good hand, to compare with', shows: 'honest', tried: () => alone(ines()) },
  {
    name: "a robot's motion, origin and device rewritten, welded again",
    shows: 'itself',
    tried: () => alone(welded(robot())),
  },
  {
    name: "a robot's motion with 0.15 mm of noise, welded again",
    shows: 'itself',
    tried: () => alone(welded(noisy(robot(), 0.15))),
  },
  {
    name: "a robot's motion slowed by a tenth, welded again",
    shows: 'itself',
    tried: () => alone(welded(stretched(robot(), 1.1))),
  },
  {
    name: 'a robot weaving 1 mm wider than shown, welded again',
    shows: 'itself',
    tried: () => alone(welded(robot({ width_mm: EXERCISE.demonstration.width_mm + 1 }))),
  },
  {
    name: "a hand's file with the robot's settings left in its origin",
    shows: 'itself',
    tried: () => edited((r) => Object.assign(r.origin, { faults: noFaults(1) })),
  },
  { name: "a mate's file, pose for pose", shows: 'itself', tried: () => afterInes(ines()) },
  {
    name: "a mate's motion with every third pose a quantum off, welded again",
    shows: 'itself',
    tried: () => afterInes(welded(person(INES, 0).map((p, i) => ({ ...p, u_mm: p.u_mm + (i % 3 === 0 ? 0.01 : 0) })))),
  },
  {
    name: "a mate's motion moved by 0.3 mm across and 1 mm up, welded again",
    shows: 'itself',
    tried: () => afterInes(welded(person(INES, 0).map((p) => ({ ...p, u_mm: p.u_mm + 0.3, y_mm: p.y_mm + 1 })))),
  },
  {
    name: "a mate's motion mirrored, welded again",
    shows: 'itself',
    tried: () => afterInes(welded(person(INES, 0).map((p) => ({ ...p, u_mm: -p.u_mm })))),
  },
  {
    name: "a mate's motion with 0.15 mm of noise, welded again",
    shows: 'itself',
    tried: () => afterInes(welded(noisy(person(INES, 0), 0.15))),
  },
  {
    name: "9 s of a mate's motion spliced into one's own, welded again",
    shows: 'itself',
    tried: () => {
      const [own, mate] = [person(TOM, 0), person(INES, 0)];
      return afterInes(welded([...own.slice(0, 400), ...mate.slice(400, 1300), ...own.slice(1300)]));
    },
  },
  {
    name: "a mate's motion stretched in time by 8 %, welded again",
    shows: 'itself',
    tried: () => afterInes(welded(stretched(person(INES, 0), 1.08))),
  },
  {
    name: "a mate's motion widened by 15 % and made to drift by 1 mm, welded again",
    shows: 'itself',
    tried: () => {
      const poses = person(INES, 0);
      return afterInes(welded(poses.map((p, i) => ({ ...p, u_mm: 1.15 * p.u_mm + i / poses.length }))));
    },
  },
  {
    name: 'the check number left out',
    shows: 'itself',
    tried: () =>
      edited((r) => {
        r.stateHash = null;
        r.chain = null;
      }),
  },
  {
    name: "another engine's name, so that no check number is compared",
    shows: 'itself',
    tried: () =>
      edited((r) => {
        r.engine = '9.9.9';
        r.chain = null;
      }),
  },
  {
    name: 'cells of 0.9 mm, welded again with their own check number',
    shows: 'itself',
    tried: () => alone(welded(person(TOM, 0), { cell_mm: 0.9 })),
  },
  {
    name: 'a day that is none, 30 February',
    shows: 'itself',
    tried: () =>
      edited((r) => {
        r.started = '2026-02-30T08:00:00Z';
      }),
  },
  {
    name: "a mouse's file with a tip-to-work that varies, welded again",
    shows: 'itself',
    tried: () => alone(welded(person(TOM, 0), { device: MOUSE })),
  },
  {
    name: 'an own exercise that asks for 3 mm, welded at it',
    shows: 'itself',
    tried: () =>
      alone(welded(person(TOM, 0), {}, { ...EXERCISE, asked: { ...EXERCISE.asked, size_mm: 3, atMost_mm: 9 } })),
  },
  {
    name: 'an own exercise judged over half a millimetre, welded at it',
    shows: 'itself',
    tried: () =>
      alone(welded(person(TOM, 0), {}, { ...EXERCISE, judged: { from_mm: 24, to_mm: 24.5 }, cuts_mm: [24.2] })),
  },
  {
    name: 'guides denied in the file of a test',
    shows: 'itself',
    tried: () => {
      const recording = structuredClone(welded(person(TOM, 0), { aids: { pacer: true } }, TEST));
      recording.aids.pacer = false;
      return alone(recording, TEST);
    },
  },
  {
    name: 'the same, welded again without the guides that the hand had',
    shows: 'nothing',
    tried: () => alone(welded(person(TOM, 0), {}, TEST), TEST),
  },
  {
    name: "a robot's motion with a hand's unsteadiness put in, welded again as a hand's",
    shows: 'nothing',
    tried: () => alone(welded(person(TOM, 1))),
  },
  {
    name: "a mate's motion stretched in time by 8 % with 0.3 mm of noise, welded again",
    shows: 'nothing',
    tried: () => afterInes(welded(noisy(stretched(person(INES, 0), 1.08), 0.3))),
  },
  {
    name: "a stranger's own hand under a trainee's name",
    shows: 'nothing',
    tried: () => alone(welded(person(STRANGER, 0))),
  },
  {
    name: 'the halves of two goes put together, neither of them handed in',
    shows: 'nothing',
    tried: () => alone(welded([...person(TOM, 2).slice(0, 900), ...person(TOM, 3).slice(900)])),
  },
  {
    name: 'the best of four goes of a middling hand',
    shows: 'nothing',
    tried: () => {
      const goes = [0, 1, 2, 3].map((go) => weldPoses(EXERCISE, person(TOM, 4 + go, 0.5)));
      goes.sort((a, b) => (b.result.score ?? 0) - (a.result.score ?? 0));
      return alone(goes[0]!.recording);
    },
  },
  {
    name: "a day of one's own choosing, welded again with it",
    shows: 'nothing',
    tried: () => alone(welded(person(TOM, 0), { started: '2020-01-01T08:00:00Z' })),
  },
];
