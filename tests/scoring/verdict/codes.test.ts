/**
 * Every code a result can carry is given by something: a row for each, made from one welded attempt with a few facts turned. A code without a
 * row does not compile; a row that does not give its code fails.
 */
import { describe, expect, it } from 'vitest';
import { defaultWeave, ENGINE_VERSION, noFaults, weaveHand } from '../../../engine/index.ts';
import { adviceFor } from '../../../scoring/advice/choose.ts';
import type { Facts } from '../../../scoring/advice/facts.ts';
import { type HandCode, handCodes } from '../../../scoring/advice/found.ts';
import { dealPiece, exerciseNamed, type Line, type Motion, type Station } from '../../../scoring/index.ts';
import type { HandCurve, Reading } from '../../../scoring/measures/hand/curve.ts';
import type { Mishap, Mishaps } from '../../../scoring/measures/hand/mishaps.ts';
import { shownCurve } from '../../../scoring/measures/hand/shown.ts';
import type { BeadStop } from '../../../scoring/schema/ends.ts';
import type { Restart, Stop } from '../../../scoring/schema/motion.ts';
import {
  type AdviceCode,
  adviceCodes,
  type NoteCode,
  noteCodes,
  type ReasonCode,
  reasonCodes,
} from '../../../scoring/schema/result.ts';
import { notesFor } from '../../../scoring/verdict/notes.ts';
import { type ReasonQuestion, reasonsFor } from '../../../scoring/verdict/reasons.ts';
import { adviceSaid } from '../../../scoring/words/advice.ts';
import { noteSaid, reasonSaid } from '../../../scoring/words/verdict.ts';
import { byMouse, exerciseOf, judge, MOUSE, seen, weld } from '../welds.ts';

const given = { joint: { length_mm: 40, plateA_mm: 5, plateB_mm: 5 }, process: { feed_mpmin: 4.6, volts_V: 18 } };
const exercise = exerciseOf(given);
const recording = weld({ ...given, ...byMouse(3) });
const attempt = seen(recording);
const result = judge(recording);
const { bead, motion, process: figures } = result;

/** An attempt with nothing against it and nothing of note. */
const sound: ReasonQuestion = {
  recording,
  attempt: { ...attempt, accounts: { ...attempt.accounts, dripped_g: 0 } },
  exercise,
  exerciseGiven: false,
  bead: { ...bead, bare_mm: [] },
  lines: result.lines,
  weldedTwice_mm: 0,
  way: 'up',
};

type Changes = Partial<Omit<ReasonQuestion, 'recording' | 'attempt'>> & {
  recording?: Partial<ReasonQuestion['recording']>;
  attempt?: Partial<ReasonQuestion['attempt']>;
  accounts?: Partial<ReasonQuestion['attempt']['accounts']>;
};

function asked(changes: Changes): ReasonQuestion {
  const accounts = { ...sound.attempt.accounts, ...changes.accounts };
  return {
    ...sound,
    ...changes,
    recording: { ...recording, ...changes.recording },
    attempt: { ...sound.attempt, accounts, ...changes.attempt },
  };
}

const aids = { pacer: false, beat: true, toeMarks: true, plainView: false, handRig: { gun_g: 400, hose: 0.3 } };
const test = exerciseNamed('test-piece')!;
const dealt = dealPiece(
  { ...exercise, vary: { gap_mm: { from: 0, to: 1 }, startTemp_C: null, cuts_mm: 2 } },
  'heron',
  7,
);
const { fed_g } = attempt.accounts;
const shown = [...weaveHand(exercise.demonstration)];
/** Poses of no hand: the demonstration's own. */
const shownPoses = {
  ...recording.poses,
  u: shown.map((p) => Math.round(100 * p.u_mm) || 0),
  y: shown.map((p) => Math.round(100 * p.y_mm) || 0),
  trigger: shown.map((p) => (p.trigger ? 1 : 0)),
};
const later = recording.poses.u.map((u, i) => (i === 250 ? u + 40 : u));

const tooManyVolts = {
  recording: {
    simulation: { ...recording.simulation, process: { ...recording.simulation.process, volts_V: 26 } },
  },
};

const reasonRows: Record<ReasonCode, Changes> = {
  'no-exercise': { exercise: null },
  'no-arc': { accounts: { arcTime_s: 0 } },
  'judged-length-not-covered': { bead: { ...bead, bare_mm: [30] } },
  'vertical-down': { way: 'down' },
  'no-climb': { way: 'nowhere' },
  'dropped-out': { accounts: { dripped_g: 0.2 * fed_g } },
  'second-pass': { weldedTwice_mm: 12 },
  'machine-too-slow': { recording: { ended: 'too-slow' } },
  'settings-edited': { exercise: { ...exercise, process: { ...exercise.process, volts_V: 21 } } },
  'recording-edited': { recording: { poses: { ...recording.poses, u: later } } },
  'header-edited': { recording: { device: { ...MOUSE, scale: 7 } } },
  'state-differs': { attempt: { states: attempt.states.map((hash, i) => (i === 3 ? `${hash}0` : hash)) } },
  'exercise-edited': { exercise: { ...test, teaches: 'something else' } },
  'piece-edited': { exercise: { ...dealt, joint: { ...dealt.joint, gap_mm: 0.05 } } },
  'aids-in-test': { exercise: test, recording: { aids } },
  'books-open': { accounts: { energyError: Number.NaN } },
  'outside-transfer': { ...tooManyVolts, lines: [] },
  'exercise-too-little': { exercise: { ...exercise, judged: { from_mm: 20, to_mm: 20.5 } } },
};

const noteRows: Record<NoteCode, Changes> = {
  robot: { recording: { origin: { kind: 'robot', weave: defaultWeave(), faults: noFaults() } } },
  piece: { exercise: dealt },
  aids: { exercise: test, recording: { aids } },
  'hand-rig': { recording: { aids } },
  'engine-differs': { recording: { engine: '0.0.1' } },
  'no-chain': { recording: { chain: null } },
  'origin-device-mismatch': { recording: { device: { ...recording.device, kind: 'robot' } } },
  'robot-left-in-origin': { recording: { origin: { kind: 'hand', faults: noFaults() } } },
  'unmeasured-varies': {
    recording: { poses: { ...recording.poses, tip: recording.poses.tip.map((t, i) => t + (i % 9)) } },
  },
  'no-check-number': { recording: { stateHash: null } },
  'study-cell': { recording: { simulation: { ...recording.simulation, cell_mm: 1 } } },
  'follows-demonstration': { recording: { poses: shownPoses } },
  'machine-beat': { recording: { poses: shownPoses } },
  'not-a-ready-exercise': { exercise: { ...exercise, name: 'own-bracket' } },
  'size-over-6': { exercise: { ...exercise, asked: { ...exercise.asked, size_mm: 8 } } },
  'profile-changed': { exercise: { ...exercise, profile: 'iso-5817-c' } },
  'stopped-early': { recording: { ended: 'stopped' }, bead: { ...bead, bare_mm: [30] } },
  'metal-dropped': { accounts: { dripped_g: 0.05 * fed_g } },
  'outside-transfer': tooManyVolts,
  'left-the-room': { accounts: { leftTheRoom: true } },
};

describe('a reason against a verdict', () => {
  it('is not given of a sound attempt, and no note either', () => {
    expect(recording.engine).toBe(ENGINE_VERSION);
    expect(reasonsFor(sound)).toEqual([]);
    expect(notesFor(sound, exercise.profile)).toEqual([]);
  });

  it.each(reasonCodes)('%s is given where it should be, and said', (code) => {
    const found = reasonsFor(asked(reasonRows[code]));
    expect(found.map((r) => r.code)).toContain(code);
    for (const reason of found) expect(reasonSaid(reason).text).toMatch(/^[A-Z0-9].*\.$/);
  });
});

describe('a note', () => {
  it.each(noteCodes)('%s is given where it should be, and said', (code) => {
    const found = notesFor(asked(noteRows[code]), 'aws-d11-static-si');
    expect(found.map((n) => n.code)).toContain(code);
    for (const note of found) expect(noteSaid(note).text).toMatch(/^[A-Za-z0-9].*\.$/);
  });
});

const weave: Motion = {
  ...motion,
  period_s: 1.1,
  periodCv: 0.05,
  pauseA_s: 0.25,
  pauseB_s: 0.25,
  toeFilledShareA: 1,
  toeFilledShareB: 1,
  arcOnFrontShare: 1,
  travel_mmps: 2,
  tipToWork_mm: null,
  reachA_mm: 3,
  reachB_mm: 3,
  crossings: [],
  stops: [],
};
const level: Station = { ...bead.mean!, legA_mm: 6, legB_mm: 6, size_mm: 5.5, faceWidth_mm: 8, convexity_mm: 1 };
const stations = Array.from({ length: 15 }, (_, i) => ({ ...level, y_mm: 15 + i }));

/** The workshop's own settings for this joint, and its hand. */
const machine = exerciseNamed('tee-thin')!.process;
const joint = { ...exercise.joint, plateA_mm: 4, plateB_mm: 4 };
const thin = exerciseNamed('tee-thin')!;
const taught = {
  ...exercise,
  joint,
  process: machine,
  asked: thin.asked,
  target: thin.target,
  demonstration: { ...thin.demonstration, length_mm: 36 },
};
const asShown = shownCurve(taught);

/** A weave that holds every line, and neither a fault nor a habit to speak of. */
const holding: Facts = {
  joint,
  process: machine,
  exercise: taught,
  motion: weave,
  curve: asShown,
  bead: { ...bead, stations, bare_mm: [], mean: level, worst: level, stops: [], undersize_mm: 0, oversize_mm: 0 },
  stamps: [],
  lines: [],
  figures: { ...figures, laid_mm2: 14, holds_mm2: 14 },
  verdict: 'within',
  reasons: [],
  weldedTwice_mm: 0,
};

function line(measure: Line['measure'], more: Partial<Line> = {}): Line {
  return {
    measure,
    side: null,
    reading: 3,
    plusMinus: 0.2,
    unit: 'mm',
    limit: 1,
    sense: 'at most',
    rule: 'made up',
    status: 'exercise',
    verdict: 'outside',
    y_mm: 20,
    places: [{ from_mm: 20, to_mm: 20 }],
    ...more,
  };
}

const root = line('root fusion', { sense: 'at least', limit: 0, reading: -0.6 });
const close = line('root fusion', { sense: 'at least', limit: 0, reading: -0.05, verdict: 'too close to call' });
const toe = (measure: Line['measure']): Line => line(measure, { side: 'A' });
const bare = (code: ReasonCode): Partial<Facts> => ({
  verdict: 'no verdict',
  reasons: reasonsFor(asked(reasonRows[code])),
});
const outside = (lines: Line[], more: Partial<Facts> = {}): Partial<Facts> => ({ verdict: 'outside', lines, ...more });

const restart: Restart = { t_s: 9, y_mm: 30, above_mm: 10, back_mm: 0, inCrater_s: 1, way: 'above and back' };
const stop: Stop = {
  t_s: 8,
  y_mm: 20,
  craterFrom_mm: 16,
  craterTo_mm: 22,
  reStrikes: 0,
  reStrikeTime_s: 0,
  out_s: 1,
  restart,
};
const stopped: BeadStop = {
  y_mm: 20,
  craterDepth_mm: 1.4,
  craterAt_mm: 20,
  plusMinus_mm: 0.3,
  hollow_mm: 0,
  leastSize_mm: 3,
  leastSizeAt_mm: 20,
  filled: false,
  flaw: null,
};
const restarted = (way: Restart['way'], out_s = 1): Partial<Facts> => ({
  motion: { ...weave, stops: [{ ...stop, out_s, restart: { ...restart, way } }] },
});
const far = { ...level, legA_mm: 8 };

type Readings = { [K in keyof HandCurve]: HandCurve[K] extends readonly Reading[] ? K : never }[keyof HandCurve];
/** The hand as shown but for one quantity, that much off all along. */
function hand(what: Readings, by: number): Partial<Facts> {
  return { curve: { ...asShown, [what]: asShown[what].map((r) => ({ ...r, value: r.value + by })) } };
}
const happened: Mishap = { y_mm: 20, t_s: 8, much: 6, side: 'A', from_mm: 18, to_mm: 22 };
function mishap(what: Exclude<keyof Mishaps, 'standing'>): Partial<Facts> {
  return { curve: { ...asShown, mishaps: { ...asShown.mishaps, [what]: [happened] } } };
}
const uneven = asShown.pauseA_s.map((r, k) => ({ ...r, value: r.value + (k % 2 === 0 ? 0.25 : -0.18) }));
const drifting = asShown.centre_mm.map((r) => ({ ...r, value: (r.y_mm - 13) * 0.3 }));

const handRows: Record<HandCode, Partial<Facts>> = {
  'arc-back-on-puddle': hand('ahead_mm', -3),
  'tip-too-far': hand('tipToWork_mm', 9),
  'tip-too-close': hand('tipToWork_mm', -5),
  'pushed-far': hand('travelAngle_deg', 20),
  dragged: hand('travelAngle_deg', -24),
  'work-angle-off': hand('workAngle_deg', 18),
  'too-narrow': hand('width_mm', -2),
  'too-wide': hand('width_mm', 3),
  'to-one-side': hand('centre_mm', 2),
  drifted: { curve: { ...asShown, centre_mm: drifting } },
  'toe-skipped': mishap('skips'),
  'toe-left-early': hand('pauseA_s', -0.2),
  'toes-left-early': {
    curve: { ...asShown, ...hand('pauseA_s', -0.2).curve, pauseB_s: hand('pauseB_s', -0.2).curve!.pauseB_s },
  },
  'waited-long': hand('pauseB_s', 0.4),
  'beat-slow': hand('period_s', 1.2),
  'beat-fast': hand('period_s', -0.4),
  'climbed-fast': hand('travel_mmps', 1.2),
  'climbed-slowly': hand('travel_mmps', -1),
  stalled: mishap('stalls'),
  jumped: mishap('jumps'),
  slipped: mishap('slips'),
  'fits-and-starts': { curve: { ...asShown, mishaps: { ...asShown.mishaps, standing: 0.4 } } },
  'uneven-rhythm': { curve: { ...asShown, periodCv: 0.4 } },
  'uneven-waits': { curve: { ...asShown, pauseA_s: uneven } },
  shaky: { curve: { ...asShown, shake_mm: 1.2 } },
};

const all = { places: [{ from_mm: 13, to_mm: 30 }] };
const set = (process: Partial<Facts['process']>): Partial<Facts> => ({ process: { ...machine, ...process } });
const short = line('leg', { sense: 'at least', reading: 3, limit: 4, ...all });
const open = { ...joint, gap_mm: 1.5 };

const adviceRows: Record<AdviceCode, Partial<Facts>> = {
  ...handRows,
  'weld-the-judged-length': { ...bare('judged-length-not-covered'), bead: { ...holding.bead, bare_mm: [30] } },
  climb: bare('vertical-down'),
  'no-climb': bare('no-climb'),
  'one-pass': bare('second-pass'),
  'metal-dropped': {
    ...bare('dropped-out'),
    ...set({ feed_mpmin: 2.6, volts_V: 16 }),
    figures: { ...figures, dripped_g: 1 },
  },
  'let-go-early': {
    ...bare('judged-length-not-covered'),
    motion: { ...weave, stops: [{ ...stop, restart: null }] },
    bead: { ...holding.bead, bare_mm: [28, 29] },
  },
  'arc-lost': restarted('not back'),
  'restart-on-crater': restarted('on the crater', 6),
  'restart-not-back': restarted('not back', 6),
  'restart-overfilled': outside([line('convexity')], restarted('above and back')),
  either: outside([root], hand('tipToWork_mm', 2.3)),
  'cold-root': outside([{ ...root, ...all }]),
  'cold-toe': outside([{ ...toe('overlap'), ...all }]),
  'too-much-metal': outside([line('convexity', all)], set({ feed_mpmin: 6 })),
  'too-hot': outside([line('undercut', { side: 'A', ...all })], set({ volts_V: 22 })),
  'too-little-wire': outside([short], set({ feed_mpmin: 2.8 })),
  'gap-takes-metal': outside([short], { joint: open, exercise: { ...taught, name: 'own-gap', joint: open } }),
  'root-just-short': outside([close]),
  'toe-melted-open': outside([toe('undercut')]),
  'crowned-straight': outside([line('convexity')], { motion: { ...weave, period_s: null } }),
  undersize: outside([line('leg', { sense: 'at least', reading: 4, limit: 5 })]),
  oversize: outside([line('size over')]),
  'one-sided': { bead: { ...holding.bead, mean: far } },
  'crater-open': outside([line('crater depth')], {
    motion: { ...weave, stops: [{ ...stop, restart: null }] },
    bead: { ...holding.bead, stops: [stopped] },
  }),
  'edge-melted-back': outside([line('edge melted back', { side: 'B' })]),
  'hot-top': {
    bead: { ...holding.bead, stations: stations.map((s, i) => ({ ...s, faceWidth_mm: 7 + i / 5 })) },
  },
  'measure-a-real-one': { verdict: 'too close to call', lines: [line('throat', { verdict: 'too close to call' })] },
  'keep-it': {},
  'see-the-cut': outside([line('unequal legs')]),
};

describe('a piece of advice', () => {
  it('is to keep it and nothing else of a weld that holds', () => {
    expect(adviceFor(holding).map((a) => a.code)).toEqual(['keep-it']);
  });

  it.each(handCodes)(
    '%s comes first where the hand did it, whatever the bead shows, and never with "same again"',
    (code) => {
      for (const lines of [[], [{ ...root, ...all }]]) {
        const verdict = lines.length === 0 ? 'within' : 'outside';
        const found = adviceFor({ ...holding, lines, verdict, ...handRows[code] });
        expect(found[0]!.code).toBe(code);
        expect(found.map((a) => a.code)).not.toContain('keep-it');
        expect(found.map((a) => a.code)).not.toContain('cold-root');
      }
    },
  );

  it.each([
    ['more wire', { feed_mpmin: machine.feed_mpmin + 1 }, 'too-much-metal'],
    ['hotter', { feed_mpmin: machine.feed_mpmin + 1.2, volts_V: machine.volts_V + 3 }, 'too-hot'],
    ['more volts alone', { volts_V: machine.volts_V + 2 }, 'too-hot'],
    ['colder', { feed_mpmin: machine.feed_mpmin - 1, volts_V: machine.volts_V - 2.5 }, 'cold-root'],
  ] as const)('names settings of one’s own that are far off although the bead held: %s', (_, process, code) => {
    for (const dripped_g of [0, 1]) {
      const found = adviceFor({ ...holding, ...set(process), figures: { ...figures, dripped_g } });
      expect(found.map((a) => a.code)).toEqual([code]);
      const { text } = adviceSaid(found[0]!);
      expect(text).toContain('It held this time');
      expect(text.includes('1 g dropped out')).toBe(dripped_g > 0);
      expect(text).toContain('the workshop welds such a joint at');
      expect(text).not.toMatch(/same again|same hand/i);
    }
  });

  it('names settings that are far off where all held and only the transfer keeps it from a verdict', () => {
    const { reasons } = bare('outside-transfer');
    const transfer = reasons!.filter((r) => r.code === 'outside-transfer');
    const globular = { ...bare('outside-transfer'), reasons: transfer };
    const found = adviceFor({ ...holding, ...set({ volts_V: machine.volts_V + 2 }), ...globular });
    expect(found.map((a) => a.code)).toEqual(['too-hot']);
    expect(adviceSaid(found[0]!).text).not.toContain('It held');
  });

  it('says of a size that is short at a place only where it is, and to climb slower only where it is short over the run', () => {
    const leg = { sense: 'at least', reading: 4.4, limit: 5 } as const;
    const said = (more: Partial<Line>) =>
      adviceSaid(adviceFor({ ...holding, ...outside([line('leg', { ...leg, ...more })]) })[0]!);
    const little = said({ reading: 4.7 });
    expect(little.code).toBe('undersize');
    expect(little.change).toBeNull();
    expect(little.text).toContain('at 20 mm; the rest holds. That is little');
    expect(said({}).text).toMatch(/at 20 mm; the rest holds. Weld/);
    const run = said(all);
    expect(run.change).toEqual({ what: 'travel_mmps', by: -0.2 });
    expect(run.text).toContain('climb slower');
    expect(little.text).not.toContain('slower');
  });

  it.each(adviceCodes)('%s is given where it should be, and said', (code) => {
    const found = adviceFor({ ...holding, ...adviceRows[code] });
    expect(found.map((a) => a.code)).toContain(code);
    for (const advice of found) {
      const { text } = adviceSaid(advice);
      expect(text).toMatch(/^[A-Z0-9].*\.$/);
      expect(text).not.toMatch(/undefined|null|NaN|object/);
    }
  });
});
