import { z } from 'zod';
import { jointSchema, processSchema, weaveSchema } from './bench.ts';
import { band, leavesAnything, leewaySchema } from './leeway.ts';
import { profileSchema } from './profile.ts';

const name = z
  .string()
  .min(1)
  .max(60)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);

/**
 * The weld size asked for. `leg` is the leg of the largest right-angled isosceles triangle the weld holds, `throat` its height from
 * the root; both per AWS A3.0 / ISO 17659 (from memory).
 */
export const askedSchema = z.strictObject({
  kind: z.enum(['leg', 'throat']),
  size_mm: z.number().min(2).max(15),
  /** The exercise's own upper limit, for profiles that set none; null leaves oversize to the profile. */
  atMost_mm: z.number().min(2).max(25).nullable(),
  /** Lap: most the edge plate's corner may be melted back along its upper face; null where it does not matter. */
  edgeBack_mm: z.number().min(0).max(20).nullable(),
});

/** What the hand is asked to do: bands the coaching speaks of. They explain the bead and never decide the verdict. */
const handTargetSchema = z.strictObject({
  cyclesPerSecond: band.nullable(),
  width_mm: band.nullable(),
  pauseA_s: band.nullable(),
  pauseB_s: band.nullable(),
  /** Arc foot minus upper boundary of the liquid at each root crossing: 0 on the edge of the puddle, negative behind it. */
  lead_mm: band,
  travel_mmps: band,
  tipToWork_mm: band,
  workAngle_deg: band,
  travelAngle_deg: band,
});

/** File format of an exercise. */
export const exerciseSchema = z
  .strictObject({
    format: z.literal('toehold-exercise'),
    version: z.literal(2),
    name,
    title: z.string().min(1).max(120),
    /** The job as told in the workshop. */
    story: z.string().max(600),
    /** What this exercise teaches, in one sentence. */
    teaches: z.string().max(300),
    joint: jointSchema,
    process: processSchema,
    /**
     * `fixed`: joint and settings as given. `own process`: the joint as given, the machine set by ear. `within ranges`: the joint as given,
     * machine and gun free as `free` says.
     */
    settings: z.enum(['fixed', 'own process', 'within ranges']),
    /** Settings left to the trainee, from and to or one of a few; null: as given. Only with `within ranges`. */
    free: leewaySchema.exactOptional(),
    /** Attempts that count for each trainee; left out: all do. */
    attempts: z.int().min(1).max(99).exactOptional(),
    asked: askedSchema,
    /** Length of the joint that is judged; the ends are left out. */
    judged: z.strictObject({ from_mm: z.number().min(0), to_mm: z.number().min(0) }),
    /** Cuts fixed before welding. */
    cuts_mm: z.array(z.number().min(0)).max(10),
    /** Passes the joint is meant to take. More than one pass over a finished bead gets no verdict when this is 1. */
    passes: z.literal(1),
    profile: name,
    /** The profile itself, where it is the school's own: an attempt is then judged alike wherever its file goes. */
    limits: profileSchema.exactOptional(),
    target: handTargetSchema,
    /** The weave the robot hand shows, and previews use. */
    demonstration: weaveSchema,
    /** Aids the trainee may use without the attempt being named as aided. */
    aids: z.strictObject({ pacer: z.boolean(), beat: z.boolean(), toeMarks: z.boolean(), handRig: z.boolean() }),
    /**
     * What may differ from one trainee's piece to the next: gap and start temperature from and to, and by how much each cut may be moved up or
     * down; null and 0: nothing. Where it is there, an attempt without a `piece` is practice.
     */
    vary: z
      .strictObject({ gap_mm: band.nullable(), startTemp_C: band.nullable(), cuts_mm: z.number().min(0).max(20) })
      .exactOptional(),
    /** The piece dealt to one trainee (`dealPiece`): number on the plate, seed, and what stood where it changed something. */
    piece: z
      .strictObject({
        number: z.int().min(1).max(999),
        seed: z.string().regex(/^[0-9a-f]{16}$/),
        from: z.strictObject({ gap_mm: z.number(), startTemp_C: z.number(), cuts_mm: z.array(z.number()).max(10) }),
      })
      .exactOptional(),
    /** What devices that cannot tell tip-to-work or angles are given. */
    hold: z.strictObject({ tipToWork_mm: z.number(), workAngle_deg: z.number(), travelAngle_deg: z.number() }),
  })
  .superRefine((e, ctx) => {
    const length = e.joint.length_mm;
    if (!(e.judged.from_mm < e.judged.to_mm && e.judged.to_mm <= length)) {
      ctx.addIssue({
        code: 'custom',
        path: ['judged'],
        message: `from_mm below to_mm, both on the joint (0 to ${length} mm)`,
      });
    }
    for (const [i, cut] of e.cuts_mm.entries()) {
      if (cut < e.judged.from_mm || cut > e.judged.to_mm) {
        ctx.addIssue({
          code: 'custom',
          path: ['cuts_mm', i],
          message: `a height inside the judged length (${e.judged.from_mm} to ${e.judged.to_mm} mm)`,
        });
      }
    }
    if (e.asked.atMost_mm !== null && e.asked.atMost_mm <= e.asked.size_mm) {
      ctx.addIssue({
        code: 'custom',
        path: ['asked', 'atMost_mm'],
        message: `more than the size asked (${e.asked.size_mm} mm), or null`,
      });
    }
    if (e.piece !== undefined && e.vary === undefined) {
      ctx.addIssue({ code: 'custom', path: ['piece'], message: 'left out, where the exercise lets nothing vary' });
    }
    const ranged = leavesAnything(e.free);
    if (ranged !== (e.settings === 'within ranges')) {
      ctx.addIssue({
        code: 'custom',
        path: ['free'],
        message: ranged
          ? 'left out, unless settings are "within ranges"'
          : 'from and to of at least one setting, such as feed_mpmin or tipToWork_mm, or a choice of wire_mm or gas',
      });
    }
    for (const field of ['edition', 'source'] as const) {
      if (e.limits !== undefined && e.limits[field].trim() === '') {
        ctx.addIssue({
          code: 'custom',
          path: ['limits', field],
          message:
            field === 'edition' ? 'which edition or day these limits are of' : 'where these limits were taken from',
        });
      }
    }
    if (e.limits !== undefined && e.limits.name !== e.profile) {
      ctx.addIssue({
        code: 'custom',
        path: ['profile'],
        message: `the name of its own limits, ${JSON.stringify(e.limits.name)}`,
      });
    }
  });

/** A joint, settings, the size asked for, and how it is judged and taught. */
export type Exercise = z.infer<typeof exerciseSchema>;
/** The weld size asked for. */
export type Asked = Exercise['asked'];
/** The bands the coaching speaks of; they never decide the verdict. */
export type HandTarget = Exercise['target'];

/** The judged length on a piece: a piece shorter than the exercise's ends where it ends. */
export function judgedOn({ judged }: Exercise, { length_mm }: { length_mm: number }): Exercise['judged'] {
  return { from_mm: Math.min(judged.from_mm, length_mm), to_mm: Math.min(judged.to_mm, length_mm) };
}

/** A weld size said both ways. */
export interface SizeAsked {
  leg_mm: number;
  throat_mm: number;
}

/** The size asked for as a leg and as a throat: a = z/√2 for an equal-leg fillet (from memory). */
export function sizeAsked(asked: Asked): SizeAsked {
  return asked.kind === 'leg'
    ? { leg_mm: asked.size_mm, throat_mm: asked.size_mm / Math.SQRT2 }
    : { leg_mm: asked.size_mm * Math.SQRT2, throat_mm: asked.size_mm };
}
