import { z } from 'zod';

/** What a limit is set on. The reading compared is defined in the measure's own file under `measures/section/`. */
export const ruleMeasures = [
  'undercut',
  'convexity',
  'toe angle',
  'overlap',
  'unequal legs',
  'leg short',
  'throat short',
  'throat over',
  'fusion to plate',
  'root fusion',
  'gap',
  'crater depth',
  'crater short',
] as const;

/** Measured where a run stopped, not along the judged length. */
export const craterMeasures = ['crater depth', 'crater short'] as const;

/** Measured along the judged length. */
export type RunMeasure = Exclude<(typeof ruleMeasures)[number], CraterMeasure>;

/**
 * Every name a line can have. A rule on what is short of or over a size is shown as the size itself ("leg 5.6, at least 5"); a rule on how
 * much of the length may be at its limit has a second line, "..., length"; the last two are limits of the exercise's own.
 */
export type LineMeasure =
  | Exclude<RunMeasure, 'leg short' | 'throat short' | 'throat over'>
  | 'leg'
  | 'throat'
  | `${RunMeasure}, length`
  | 'crater depth'
  | 'leg at the crater'
  | 'size over'
  | 'edge melted back';

/** The same, as values. */
export const lineMeasures: readonly LineMeasure[] = [
  'undercut',
  'convexity',
  'toe angle',
  'overlap',
  'unequal legs',
  'leg',
  'throat',
  'fusion to plate',
  'root fusion',
  'gap',
  'crater depth',
  'leg at the crater',
  'size over',
  'edge melted back',
  ...ruleMeasures.filter((m): m is RunMeasure => !(craterMeasures as readonly string[]).includes(m)).map(lengthOf),
];

/** Name of the line on how much of the length is at a rule's limit. */
export function lengthOf(measure: RunMeasure): LineMeasure {
  return `${measure}, length`;
}

/** What a limit may depend on: thickness of the plate, nominal throat, width of face, nominal leg. */
const basis = z.enum(['plate', 'throat', 'face', 'leg']);

const limitSchema = z.discriminatedUnion('form', [
  /** Not permitted at all. */
  z.strictObject({ form: z.literal('none') }),
  /** `base + slope * basis`, at most `most`. */
  z.strictObject({
    form: z.literal('line'),
    base: z.number(),
    slope: z.number(),
    of: basis,
    most: z.number().nullable(),
  }),
  /** First row whose `upTo` is not below the basis; `upTo: null` takes the rest. `open`: the bound itself belongs to the next row. */
  z.strictObject({
    form: z.literal('steps'),
    of: basis,
    rows: z.array(z.strictObject({ upTo: z.number().nullable(), open: z.boolean(), limit: z.number() })).min(1),
  }),
  /** The reading must be at least this. */
  z.strictObject({ form: z.literal('floor'), value: z.number() }),
]);

/** How much of the length may be at the limit. Lengths in the profile's own unit. */
const extentSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('anywhere') }),
  /** Short imperfections only: at most `share` of the length, or `length` in any `per` of weld where the weld is that long. */
  z.strictObject({ kind: z.literal('short'), share: z.number(), length: z.number(), per: z.number() }),
  /** A deeper limit over an accumulated length in any `per`; nothing on pieces shorter than `per`. */
  z.strictObject({ kind: z.literal('accumulated'), deeper: z.number(), length: z.number(), per: z.number() }),
  /** The limit applies over at most `share` of the length; nothing on pieces shorter than `piece`. */
  z.strictObject({ kind: z.literal('share'), share: z.number(), piece: z.number() }),
]);

const ruleSchema = z.strictObject({
  measure: z.enum(ruleMeasures),
  /** Clause or table as cited on the line. */
  clause: z.string().min(1).max(160),
  status: z.enum(['verified', 'memory']),
  /** Plate thickness the rule holds for, profile's unit: above `over`, up to and including `upTo`. */
  plates: z.strictObject({ over: z.number(), upTo: z.number().nullable() }),
  limit: limitSchema,
  extent: extentSchema,
  note: z.string().max(300).exactOptional(),
});

/** File format of an acceptance profile. */
export const profileSchema = z.strictObject({
  format: z.literal('toehold-profile'),
  version: z.literal(1),
  name: z.string().min(1).max(60),
  title: z.string().min(1).max(120),
  standard: z.string().max(80),
  edition: z.string().max(80),
  /** Unit of every length in this profile. Inch and SI tables are separate profiles and are never converted into each other. */
  unit: z.enum(['mm', 'in']),
  /** Where the values were taken from. */
  source: z.string().max(400),
  notes: z.array(z.string().max(400)).max(12),
  rules: z.array(ruleSchema).min(1).max(60),
});

/** Acceptance limits of one standard and edition, or of a school. */
export type Profile = z.infer<typeof profileSchema>;
/** One limit: on what, from which clause, for which plates, over how much of the length. */
export type Rule = Profile['rules'][number];
/** What a limit is set on. */
export type RuleMeasure = Rule['measure'];
/** A limit as a number or as it depends on plate, throat, face or leg. */
export type Limit = Rule['limit'];
/** How much of the length may be at the limit. */
export type Extent = Rule['extent'];
/** A measure taken where a run stopped. */
type CraterMeasure = (typeof craterMeasures)[number];
