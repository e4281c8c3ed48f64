import { createRandom } from '../../engine/index.ts';
import { exerciseDigest } from '../../scoring/exercises/digest.ts';
import { type AttemptRecording, exercises, InputError } from '../../scoring/index.ts';
import { classSheet, type Scored, scoreBytes } from '../../scoring/node/index.ts';
import { byMouse, weld } from '../scoring/welds.ts';
import type { Attack, Try } from './attack.ts';

type Edit = (r: AttemptRecording, by: number) => void;

/** Everything an editor can do to a file to look better, with the program's own numbers left in it. */
const EDITS: Record<string, Edit> = {
  'a smaller size asked': (r, by) => {
    r.exercise!.asked.size_mm = 2 + by;
  },
  'a throat asked for a leg': (r) => {
    r.exercise!.asked.kind = 'throat';
  },
  'half a millimetre judged': (r, by) => {
    r.exercise!.judged = { from_mm: 12, to_mm: 12.2 + by };
    r.exercise!.cuts_mm = [12.1];
  },
  'no cuts fixed': (r) => {
    r.exercise!.cuts_mm = [];
  },
  'another profile asked': (r) => {
    r.exercise!.profile = 'tern-dock';
  },
  'the name of a ready exercise': (r, by) => {
    r.exercise!.name = exercises[Math.floor(by * exercises.length)]!.name;
  },
  'other volts': (r, by) => {
    r.simulation.process.volts_V += 0.1 + by;
  },
  'other volts in file and exercise': (r, by) => {
    r.simulation.process.volts_V += 0.1 + by;
    r.exercise!.process.volts_V = r.simulation.process.volts_V;
  },
  'a thinner plate': (r, by) => {
    r.simulation.joint.plateA_mm -= 1 + by;
  },
  'poses moved': (r, by) => {
    r.poses.y = r.poses.y.map((y) => y + Math.round(10 + 100 * by));
  },
  'a pose changed': (r, by) => {
    r.poses.u[Math.floor(by * r.poses.u.length)]! += 7;
  },
  'poses left out': (r, by) => {
    const at = Math.floor(by * (r.poses.u.length - 20));
    for (const column of Object.values(r.poses)) column.splice(at, 10);
  },
  'the check number left out': (r) => {
    r.stateHash = null;
  },
  'check number and chain left out': (r) => {
    r.stateHash = null;
    r.chain = null;
  },
  'another engine': (r) => {
    r.engine = '9.9.9';
  },
  'another engine, no chain': (r) => {
    r.engine = '9.9.9';
    r.chain = null;
  },
  'another device': (r) => {
    r.device.kind = 'pen';
  },
  'a device that measures': (r) => {
    r.device.measures = { tipToWork: true, workAngle: true, travelAngle: true };
  },
  'guides denied': (r) => {
    r.aids = { ...r.aids, pacer: !r.aids.pacer };
  },
  'another trainee': (r) => {
    r.trainee = { name: 'Somebody Else', bench: 'b9' };
  },
  'another day': (r) => {
    r.started = '2020-01-01T00:00:00Z';
  },
  'an ending': (r) => {
    r.ended = 'stopped';
  },
  'coarse cells': (r, by) => {
    r.simulation.cell_mm = 0.8 + 0.5 * by;
  },
  "a robot's, called a hand's": (r) => {
    r.origin = {
      kind: 'hand',
      faults: {
        seed: 1,
        tremor_mm: 0,
        driftU_mm: 0,
        driftTip_mm: 0,
        driftTravel_deg: 0,
        lag_s: 0,
        timing: 0,
        lead_mm: 0,
      },
    };
  },
};
const NAMES = Object.keys(EDITS);
const JUDGE = { exercise: null, profile: null };
const FILE = '2026-03-14_b1_ines-calder_free_01.json';

let honest: { recording: AttemptRecording; scored: Scored } | null = null;
function base(): NonNullable<typeof honest> {
  if (honest !== null) return honest;
  const recording = weld({ joint: { length_mm: 30 }, weave: { length_mm: 8, shelf_s: 0 }, ...byMouse(6) });
  honest = { recording, scored: scored(recording) };
  return honest;
}

const scored = (r: AttemptRecording): Scored => scoreBytes(new TextEncoder().encode(JSON.stringify(r)), FILE, JUDGE);
/** Attempts that count towards the exercise as the instructor has it. */
const counted = (s: Scored): number =>
  classSheet({ scored: [s], bad: [] }, new Set([exerciseDigest(base().recording.exercise)!])).counted;

/** A file edited by hand, in every way an editor can, never counts. */
export const editedFiles: Attack = {
  name: 'edited files',
  says: 'size, judged length, cuts, profile, settings, poses, check numbers, engine, device, aids, trainee, day, ending, cells or origin changed in an honest recording; refused, or named with its evidence and counted nowhere, while the honest one counts',
  share: 2,
  whole: 4 * NAMES.length,
  tries: (n): Try => {
    const name = NAMES[n % NAMES.length]!;
    const edited = structuredClone(base().recording);
    EDITS[name]!(edited, createRandom(n + 1).next());
    if (counted(base().scored) !== 1) return { inputs: 1, faults: ['the honest file does not count'] };
    try {
      return { inputs: 1, faults: counted(scored(edited)) === 0 ? [] : [`counted: ${name}`] };
    } catch (error) {
      return { inputs: 1, faults: error instanceof InputError ? [] : [`${name}: ${String(error)}`] };
    }
  },
};
