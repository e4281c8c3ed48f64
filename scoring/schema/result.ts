import { z } from 'zod';
import { aidsInUseSchema, deviceSchema, originSchema } from './bench.ts';
import { beadStartSchema, beadStopSchema } from './ends.ts';
import { askedSchema } from './exercise.ts';
import { motionSchema } from './motion.ts';
import { lineMeasures } from './profile.ts';
import { consistencySchema, stationSchema } from './station.ts';

/** How a line can be judged. */
export const lineVerdicts = ['within', 'outside', 'too close to call'] as const;
/** Every verdict there is. */
export const verdicts = [...lineVerdicts, 'no verdict'] as const;

const stretch = z.strictObject({ from_mm: z.number(), to_mm: z.number() });

/** One reading against one limit. Reading, plus-minus and limit share `unit`. */
const lineSchema = z.strictObject({
  measure: z.enum(lineMeasures),
  /** Which toe or plate; null where the measure has no side. */
  side: z.enum(['A', 'B']).nullable(),
  reading: z.number(),
  plusMinus: z.number(),
  unit: z.enum(['mm', 'in', 'deg', '%']),
  limit: z.number(),
  /** `at most`: the reading may not be above the limit; `at least`: not below it. */
  sense: z.enum(['at most', 'at least']),
  rule: z.string(),
  status: z.enum(['verified', 'memory', 'exercise']),
  verdict: z.enum(lineVerdicts),
  /** Height of the deciding reading. */
  y_mm: z.number(),
  /** Stretches of the judged length where the line is not within. */
  places: z.array(stretch),
});

/** A change of one thing, in a step a hand can feel. Kept apart from the sentence so that it can be tried by welding again. */
export const changeSchema = z.strictObject({
  what: z.enum([
    'travel_mmps',
    'feed_mpmin',
    'volts_V',
    'width_mm',
    'pauseA_s',
    'pauseB_s',
    'lead_mm',
    'tipToWork_mm',
    'cyclesPerSecond',
    'centre_mm',
    'workAngle_deg',
    'travelAngle_deg',
  ]),
  by: z.number(),
});

/** Ways in which a hand was not as asked. */
export const handCodes = [
  'arc-back-on-puddle',
  'tip-too-far',
  'tip-too-close',
  'pushed-far',
  'dragged',
  'work-angle-off',
  'too-narrow',
  'too-wide',
  'to-one-side',
  'drifted',
  'toe-skipped',
  'toe-left-early',
  'toes-left-early',
  'waited-long',
  'beat-slow',
  'beat-fast',
  'climbed-fast',
  'climbed-slowly',
  'stalled',
  'jumped',
  'slipped',
  'fits-and-starts',
  'uneven-rhythm',
  'uneven-waits',
  'shaky',
] as const;
/** A way in which a hand was not as asked. */
export type HandCode = (typeof handCodes)[number];

/** Ways in which the machine does not fit the joint. */
export const settingsCodes = [
  'cold-root',
  'cold-toe',
  'too-much-metal',
  'too-hot',
  'too-little-wire',
  'gap-takes-metal',
] as const;
/** A way in which the machine does not fit the joint. */
export type SettingsCode = (typeof settingsCodes)[number];

/** Everything advice can be about. */
export const adviceCodes = [
  'weld-the-judged-length',
  'climb',
  'no-climb',
  'one-pass',
  'metal-dropped',
  'let-go-early',
  'arc-lost',
  'restart-on-crater',
  'restart-not-back',
  'restart-overfilled',
  ...handCodes,
  'either',
  ...settingsCodes,
  'root-just-short',
  'toe-melted-open',
  'crowned-straight',
  'undersize',
  'oversize',
  'one-sided',
  'crater-open',
  'edge-melted-back',
  'hot-top',
  'measure-a-real-one',
  'keep-it',
  'see-the-cut',
] as const;

export const adviceSchema = z.strictObject({
  code: z.enum(adviceCodes),
  text: z.string(),
  y_mm: z.number().nullable(),
  t_s: z.number().nullable(),
  /** Weave cycle that made the place, counted from 1; null for a straight run or where none could be tied to it. */
  cycle: z.number().nullable(),
  side: z.enum(['A', 'B']).nullable(),
  change: changeSchema.nullable(),
});

/** Every reason against a verdict. */
export const reasonCodes = [
  'no-exercise',
  'no-arc',
  'judged-length-not-covered',
  'vertical-down',
  'no-climb',
  'dropped-out',
  'second-pass',
  'machine-too-slow',
  'settings-edited',
  'recording-edited',
  'header-edited',
  'state-differs',
  'exercise-edited',
  'piece-edited',
  'aids-in-test',
  'books-open',
  'exercise-too-little',
  'outside-transfer',
] as const;

const reasonSchema = z.strictObject({ code: z.enum(reasonCodes), text: z.string() });

/** Every fact about an attempt that changes no reading but should be known to whoever looks at it. */
export const noteCodes = [
  'robot',
  'piece',
  'aids',
  'hand-rig',
  'engine-differs',
  'no-chain',
  'origin-device-mismatch',
  'robot-left-in-origin',
  'unmeasured-varies',
  'no-check-number',
  'study-cell',
  'follows-demonstration',
  'machine-beat',
  'not-a-ready-exercise',
  'size-over-6',
  'profile-changed',
  'stopped-early',
  'metal-dropped',
  'outside-transfer',
  'left-the-room',
] as const;

const noteSchema = z.strictObject({ code: z.enum(noteCodes), text: z.string() });

/** File format of a result. */
export const resultSchema = z.strictObject({
  format: z.literal('toehold-result'),
  version: z.literal(2),
  verdict: z.enum(verdicts),
  reasons: z.array(reasonSchema),
  /** 0 to 100, for the trend of one hand at one exercise; null without a verdict. */
  score: z.number().nullable(),
  /** Versions of the model that welded and of the measuring and judging. */
  engine: z.string(),
  scoring: z.string(),
  stateHash: z.string(),
  exercise: z
    .strictObject({
      name: z.string(),
      title: z.string(),
      ready: z.boolean(),
      asked: askedSchema,
      judged: stretch,
      cuts_mm: z.array(z.number()),
      /** Attempts that count for each trainee; left out: all do. */
      attempts: z.int().exactOptional(),
      /** Every trainee has a piece of their own. */
      varies: z.literal(true).exactOptional(),
      piece: z.strictObject({ number: z.int(), seed: z.string() }).exactOptional(),
    })
    .nullable(),
  profile: z.strictObject({ name: z.string(), title: z.string(), edition: z.string() }).nullable(),
  origin: originSchema,
  device: deviceSchema,
  aids: aidsInUseSchema,
  notes: z.array(noteSchema),
  motion: motionSchema,
  bead: z.strictObject({
    stations: z.array(stationSchema),
    /** Heights in the judged length with no metal. */
    bare_mm: z.array(z.number()),
    /** Each measure at its worst, and the height where that is. */
    worst: stationSchema.nullable(),
    worstAt_mm: z.record(z.string(), z.number()),
    mean: stationSchema.nullable(),
    rootFusedShare: z.number().nullable(),
    /** Standard deviations along the judged length; null with too few stations. */
    consistency: consistencySchema.nullable(),
    /** Length of the judged joint surely under and surely over the size asked, plus-minus taken off; mm. */
    undersize_mm: z.number(),
    oversize_mm: z.number(),
    /** Both ends of every run, judged or not; null where there is no bead, or none long enough to have settled. */
    start: beadStartSchema.nullable(),
    stops: z.array(beadStopSchema),
  }),
  process: z.strictObject({
    current_A: z.number().nullable(),
    voltage_V: z.number().nullable(),
    heatInput_kJpmm: z.number().nullable(),
    heatInputRule: z.string(),
    laid_mm2: z.number().nullable(),
    holds_mm2: z.number().nullable(),
    arcTime_s: z.number(),
    /** Null where the accounts are open. */
    deposited_g: z.number().nullable(),
    spatter_g: z.number().nullable(),
    dripped_g: z.number().nullable(),
  }),
  /** Shares of metal and energy that the accounts miss; null: no number at all, which is worse. */
  books: z.strictObject({ massError: z.number().nullable(), energyError: z.number().nullable() }),
  lines: z.array(lineSchema),
  advice: z.array(adviceSchema),
  notMeasured: z.array(z.strictObject({ what: z.string(), why: z.string() })),
  notModelled: z.array(z.string()),
  cautions: z.array(z.string()),
});

/** What an attempt came to; the same object from the game and from `toehold score --json`. */
export type Result = z.infer<typeof resultSchema>;
/** One reading held against one limit. */
export type Line = z.infer<typeof lineSchema>;
/** How one reading stands to its limit, its plus-minus counted. */
export type LineVerdict = Line['verdict'];
/** What the worst line makes of the attempt. */
export type Verdict = Result['verdict'];
/** One thing to change or keep: a sentence, its place, and the change as data where there is one. */
export type Advice = z.infer<typeof adviceSchema>;
/** What a piece of advice is about. */
export type AdviceCode = Advice['code'];
/** A setting or habit and by how much, in the unit its name ends in. */
export type Change = z.infer<typeof changeSchema>;
/** Why an attempt gets no verdict. */
export type Reason = z.infer<typeof reasonSchema>;
/** A fact about the attempt that changes no reading. */
export type Note = z.infer<typeof noteSchema>;
/** What a reason is about. */
export type ReasonCode = Reason['code'];
/** What a note is about. */
export type NoteCode = Note['code'];
/** What a result keeps of its exercise. */
export type ExerciseInResult = NonNullable<Result['exercise']>;
