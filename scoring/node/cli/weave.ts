import { Command, Option } from 'commander';
import {
  checkOptions,
  defaultJoint,
  defaultProcess,
  defaultWeave,
  handOfAmount,
  jointHolds_mm2,
  metalLaid_mm2,
  minTipToWork_mm,
  noFaults,
  PATTERNS,
  recordPoses,
  weaveHand,
  wireState,
} from '../../../engine/index.ts';
import { person } from '../../class/roster.ts';
import { freeExercise } from '../../exercises/free.ts';
import { dealPiece, MOST_PLATES } from '../../exercises/piece.ts';
import { exercises } from '../../exercises/ready.ts';
import { profileNamed, profiles } from '../../profiles/ready.ts';
import { type Exercise, sizeAsked } from '../../schema/exercise.ts';
import { describeFound, InputError } from '../../schema/problem.ts';
import { said } from '../../words/names.ts';
import { dayOf, isFolder, nextFile } from '../attempt-files.ts';
import { writeText } from '../files.ts';
import { choicesOf, exerciseFor, type Hand, hand, number, setting, weaveNumber, whole } from './options.ts';
import type { Screen } from './screen.ts';

interface WeaveFlags {
  exercise?: string;
  startWord?: string;
  plateNumber?: number;
  joint?: Exercise['joint']['kind'];
  size?: number;
  plate?: number;
  plateWidth?: number;
  gap?: number;
  startTemp?: number;
  sink?: number;
  tabs?: true;
  length?: number;
  wire?: string;
  feed?: number;
  volts?: number;
  gas?: Exercise['process']['gas'];
  tip?: number;
  nozzle?: number;
  tipToWork?: number;
  workAngle?: number;
  travelAngle?: number;
  pattern?: Exercise['demonstration']['pattern'];
  cyclesPerSecond?: number;
  width?: number;
  pause?: number;
  pauseRight?: number;
  pauseLeft?: number;
  reachAhead?: number;
  firstToe?: 'right' | 'left';
  travel?: number;
  shelf?: number;
  lead?: number;
  hand?: Hand;
  profile?: string;
  trainee?: string;
  bench?: string;
  cell: number;
  out: string;
}

const HELP = `
The robot hand follows the weave you describe and writes a recording, marked as a robot's wherever it is shown.
Lengths are mm, feed m/min, temperatures °C, travel mm/s.

Examples:
  A straight run and a weave with the same settings; then look at the two cuts:
    $ toehold weave --pattern straight --out straight.json
    $ toehold weave --pattern inverted-v --pause 0.3 --out weave.json
    $ toehold section straight.json --at 40 --svg straight.svg
  The arc held 3 mm back in the puddle at the root:
    $ toehold weave --lead -3 --out back.json
  An imperfect hand, the same one every time (seed 7):
    $ toehold weave --hand 7:0.4 --out hand.json
  The demonstration of a ready exercise:
    $ toehold weave --exercise tee-inverted-v --out shown.json

Ready exercises: ${exercises.map((e) => e.name).join(', ')}
Profiles: ${profiles.map((p) => p.name).join(', ')}`;

/** The command's options, a line each, in the order of its help: long because they are many. */
export function weaveCommand(screen: Screen): Command {
  const command = new Command('weave').description('weld a joint with the robot hand and write the recording');
  const add = (flags: string, text: string, parse?: (text: string) => number): void => {
    command.addOption(parse ? new Option(flags, text).argParser(parse) : new Option(flags, text));
  };
  command.optionsGroup('Joint');
  add('--exercise <name>', 'start from an exercise (name, or file): its joint, settings, size and weave');
  add(
    '--start-word <word>',
    'start word on the board: with --plate-number it deals the piece of an exercise that varies',
  );
  add('--plate-number <n>', 'number on the plate', whole(1, MOST_PLATES));
  command.addOption(new Option('--joint <kind>', 'joint (default: tee)').choices(choicesOf('joint', 'kind')));
  add('--size <mm>', 'leg asked for (default: 5)', number(2, 15, 'mm'));
  add('--plate <mm>', 'thickness of both plates (default: 5)', setting('joint', 'plateA_mm'));
  add('--plate-width <mm>', 'width of each plate (default: 75)', setting('joint', 'plateWidth_mm'));
  add('--length <mm>', 'length of the joint (default: 60)', setting('joint', 'length_mm'));
  add('--gap <mm>', 'fit-up gap (default: 0)', setting('joint', 'gap_mm'));
  add('--start-temp <C>', 'temperature of the plates before welding (default: 20)', setting('joint', 'startTemp_C'));
  add(
    '--sink <W/mmK>',
    'heat taken by clamps and bench, per mm and edge (default: 0.0005)',
    setting('joint', 'sink_WpmmK'),
  );
  command.option('--tabs', 'run-on and run-off tabs, 12 mm at each end');
  command.optionsGroup('Machine');
  command.addOption(
    new Option('--wire <mm>', 'wire diameter (default: 0.9)').choices(
      choicesOf('process', 'wire_mm').flatMap((wire) => (wire === '1.0' ? [wire, '1'] : [wire])),
    ),
  );
  add('--feed <m/min>', 'wire feed (default: 4.6)', setting('process', 'feed_mpmin'));
  add('--volts <V>', 'volts at the arc (default: 18)', setting('process', 'volts_V'));
  command.addOption(
    new Option('--gas <name>', 'shielding gas (default: M21-ArC-18)').choices(choicesOf('process', 'gas')),
  );
  add('--tip <mm>', 'contact tip against the nozzle: 0 flush, + out, - in (default: 0)', setting('process', 'tip_mm'));
  add('--nozzle <mm>', 'outside diameter of the nozzle (default: 16)', setting('process', 'nozzle_mm'));
  command.optionsGroup('Hand');
  add('--tip-to-work <mm>', 'contact tip to work (default: 12)', weaveNumber('tipToWork_mm'));
  add('--work-angle <deg>', "wire from the right (back) plate's face (default: 45)", weaveNumber('workAngle_deg'));
  add('--travel-angle <deg>', 'push positive (default: 8)', weaveNumber('travelAngle_deg'));
  command.addOption(new Option('--pattern <name>', 'weave (default: inverted-v)').choices([...PATTERNS]));
  add('--cycles-per-second <n>', 'beat (default: 0.9)', weaveNumber('cyclesPerSecond'));
  add('--width <mm>', 'wire travel from toe to toe, across the view (default: 5)', weaveNumber('width_mm'));
  add('--pause <s>', 'pause at each toe (default: 0.25)', weaveNumber('pauseA_s'));
  add('--pause-right <s>', 'pause at the right toe (back plate) only', weaveNumber('pauseA_s'));
  add('--pause-left <s>', 'pause at the left toe (edge plate) only', weaveNumber('pauseB_s'));
  add('--reach-ahead <mm>', 'reach ahead where the weave crosses the root (default: 2)', weaveNumber('apex_mm'));
  command.addOption(
    new Option('--first-toe <side>', 'toe the weave starts at (default: right)').choices(['right', 'left']),
  );
  add('--travel <mm/s>', 'climb (default: 2.0)', weaveNumber('travel_mmps'));
  add('--shelf <s>', 'hold at the bottom before climbing (default: 0.8)', weaveNumber('shelf_s'));
  add(
    '--lead <mm>',
    'aim shifted up (+) or back into the puddle (-) where it crosses the root (default: 0)',
    number(-8, 8, 'mm'),
  );
  command.addOption(
    new Option('--hand <seed:amount>', 'imperfect hand: seed and amount, 0 none to 1 a beginner').argParser(hand),
  );
  command.optionsGroup('Recording');
  add('--trainee <name>', 'name or number written into the recording');
  add('--bench <name>', 'bench written into the recording');
  add('--profile <name>', 'acceptance profile (default: aws-d11-static-si)');
  command.addOption(
    new Option('--cell <mm>', 'cell size of the model').default(0.75).argParser(number(0.4, 1.5, 'mm')),
  );
  command.requiredOption(
    '--out <file>',
    'file to write; a folder: named there as a class has its files (date_bench_name_exercise_attempt.json)',
  );
  command.addHelpText('after', HELP);
  command.action((flags: WeaveFlags) => weave(flags, screen));
  return command;
}

function weave(flags: WeaveFlags, screen: Screen): void {
  const exercise = exerciseFrom(flags);
  const joint = { ...exercise.joint, ...jointFlags(flags) };
  const process = { ...exercise.process, ...processFlags(flags) };
  const pattern = { ...exercise.demonstration, ...handFlags(flags) };
  if (flags.length !== undefined) pattern.length_mm = joint.length_mm - 2 * pattern.start_mm;
  const simulation = { joint, process, cell_mm: flags.cell };
  const problems = checkOptions(simulation);
  if (problems.length > 0) {
    throw new InputError(
      'weave',
      problems.map((p) => ({ path: p.path, found: describeFound(p.found), allowed: p.allowed })),
    );
  }
  const trainee = traineeFrom(flags);
  const { seed, amount } = flags.hand ?? { seed: 1, amount: 0 };
  const base = amount > 0 ? handOfAmount(seed, amount) : noFaults(seed);
  const faults = { ...base, lead_mm: base.lead_mm + (flags.lead ?? 0) };
  const recording = recordPoses(
    {
      simulation,
      origin: { kind: 'robot', weave: pattern, faults },
      device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 },
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
      trainee,
    },
    weaveHand(pattern, faults),
  );
  const out = isFolder(flags.out)
    ? nextFile(flags.out, {
        date: dayOf(new Date()),
        bench: trainee === null || trainee.bench === '' ? null : trainee.bench,
        trainee: trainee?.name ?? null,
        exercise: exercise.name,
      })
    : flags.out;
  writeText(out, `${JSON.stringify(recording)}\n`);
  const leg = sizeAsked(exercise.asked).leg_mm;
  const state = wireState(process, pattern.tipToWork_mm);
  screen.say(
    `${jointSentence(joint, leg)} - ${process.wire_mm} wire, ${said(process.feed_mpmin)} m/min, ${said(process.volts_V)} V, ${process.gas}: ${said(state.current_A, 0)} A, ${state.regime}.`,
    `Laying ${said(metalLaid_mm2(process, pattern.travel_mmps), 0)} mm², the joint holds ${said(jointHolds_mm2(joint, leg), 0)} at size ${said(leg)}.`,
    ...floorSentence(process, pattern.tipToWork_mm, pattern.workAngle_deg),
    `Robot hand: ${patternSentence(pattern)}, ${said(pattern.travel_mmps, 2)} mm/s up; ${said(recording.poses.u.length / 100)} s, check number ${recording.stateHash}.`,
    `Written to ${out}`,
  );
}

/** @throws InputError when the name cannot be one, or there is a bench without anybody at it */
function traineeFrom({ trainee, bench }: WeaveFlags): { name: string; bench: string } | null {
  if (trainee !== undefined) {
    const found = person(trainee, bench ?? '', 'weave');
    return { name: found.name, bench: found.bench ?? '' };
  }
  if (bench === undefined) return null;
  throw new InputError('weave', [{ path: '--bench', found: 'no --trainee', allowed: 'together with --trainee' }]);
}

function floorSentence(process: Exercise['process'], tip_mm: number, workAngle_deg: number): string[] {
  const least = minTipToWork_mm(process, workAngle_deg);
  return tip_mm < least
    ? [
        `The ${said(process.nozzle_mm)} mm nozzle stops at ${said(least)} mm tip-to-work in a bare corner; ${said(tip_mm)} was asked.`,
      ]
    : [];
}

function jointSentence(joint: Exercise['joint'], leg: number): string {
  const plates =
    joint.plateA_mm === joint.plateB_mm
      ? said(joint.plateA_mm)
      : `${said(joint.plateA_mm)} and ${said(joint.plateB_mm)}`;
  const kind = joint.kind.charAt(0).toUpperCase() + joint.kind.slice(1);
  return `${kind}, ${plates} mm plates ${said(joint.plateWidth_mm)} wide, ${said(joint.length_mm)} long, size ${said(leg)}${joint.gap_mm > 0 ? `, gap ${said(joint.gap_mm)}` : ''}`;
}

function patternSentence(w: Exercise['demonstration']): string {
  if (w.pattern === 'straight') return 'straight run';
  const pauses =
    w.pauseA_s === w.pauseB_s
      ? `${said(w.pauseA_s, 2)} s at each toe`
      : `${said(w.pauseA_s, 2)} s right and ${said(w.pauseB_s, 2)} s left`;
  return `${w.pattern.replace('-', ' ')} ${said(w.width_mm)} wide, ${said(w.cyclesPerSecond, 2)} cycles a second, ${pauses}`;
}

function exerciseFrom(flags: WeaveFlags): Exercise {
  const { startWord, plateNumber } = flags;
  if (flags.exercise !== undefined) {
    const asked = exerciseFor(flags.exercise, 'weave');
    if (startWord === undefined && plateNumber === undefined) return asked;
    if (asked.vary !== undefined && startWord !== undefined && plateNumber !== undefined)
      return dealPiece(asked, startWord, plateNumber);
  }
  if (startWord !== undefined || plateNumber !== undefined) {
    const alone = startWord === undefined ? '--plate-number' : '--start-word';
    const what =
      (startWord === undefined) === (plateNumber === undefined) ? 'no exercise that deals pieces' : 'it alone';
    throw new InputError('weave', [
      {
        path: alone,
        found: what,
        allowed: 'both --start-word and --plate-number, with an --exercise that lets something vary',
      },
    ]);
  }
  const profile = flags.profile ?? 'aws-d11-static-si';
  if (profileNamed(profile) === undefined) {
    throw new InputError('weave', [
      { path: '--profile', found: describeFound(profile), allowed: profiles.map((p) => p.name).join(', ') },
    ]);
  }
  const joint = { ...defaultJoint(), plateA_mm: 5, plateB_mm: 5, length_mm: 60, ...jointFlags(flags) };
  return freeExercise({
    joint,
    process: { ...defaultProcess(), ...processFlags(flags) },
    weave: { ...defaultWeave(), start_mm: 2, length_mm: joint.length_mm - 4, ...handFlags(flags) },
    leg_mm: flags.size ?? 5,
    profile,
  });
}

/** Keeps the fields that were given. */
function given<T extends object>(fields: { [K in keyof T]: T[K] | undefined }): Partial<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<T>;
}

function jointFlags(f: WeaveFlags): Partial<Exercise['joint']> {
  return given<Exercise['joint']>({
    kind: f.joint,
    plateA_mm: f.plate,
    plateB_mm: f.plate,
    plateWidth_mm: f.plateWidth,
    length_mm: f.length,
    gap_mm: f.gap,
    startTemp_C: f.startTemp,
    ambient_C: undefined,
    sink_WpmmK: f.sink,
    tabs: f.tabs,
  });
}

function processFlags(f: WeaveFlags): Partial<Exercise['process']> {
  return given<Exercise['process']>({
    wire_mm: f.wire === undefined ? undefined : (Number(f.wire) as Exercise['process']['wire_mm']),
    feed_mpmin: f.feed,
    volts_V: f.volts,
    gas: f.gas,
    tip_mm: f.tip,
    nozzle_mm: f.nozzle,
  });
}

function handFlags(f: WeaveFlags): Partial<Exercise['demonstration']> {
  return given<Exercise['demonstration']>({
    pattern: f.pattern,
    cyclesPerSecond: f.cyclesPerSecond,
    width_mm: f.width,
    travel_mmps: f.travel,
    pauseA_s: f.pauseRight ?? f.pause,
    pauseB_s: f.pauseLeft ?? f.pause,
    apex_mm: f.reachAhead,
    firstToe: f.firstToe === undefined ? undefined : f.firstToe === 'right' ? 'A' : 'B',
    tipToWork_mm: f.tipToWork,
    workAngle_deg: f.workAngle,
    travelAngle_deg: f.travelAngle,
    shelf_s: f.shelf,
    start_mm: undefined,
    length_mm: undefined,
  });
}
