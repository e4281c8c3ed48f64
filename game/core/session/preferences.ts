import { z } from 'zod';
import { checkMade, type Exercise, languages, MOST_PLATES } from '../../../scoring/index.ts';

/** Bounds of the hand rig's sliders. */
export const RIG_RANGE = { gun_g: { from: 200, to: 1500 }, hose: { from: 0, to: 1 } } as const;

const rig = z.object({
  /** Weight of the gun in the hand, g. */
  gun_g: z.number().min(RIG_RANGE.gun_g.from).max(RIG_RANGE.gun_g.to),
  /** Drag of the hose, 0 none to 1 stiff. */
  hose: z.number().min(RIG_RANGE.hose.from).max(RIG_RANGE.hose.to),
});

/** Those that still are exercises; a spoilt one costs only itself. */
function onlyExercises(kept: readonly unknown[]): Exercise[] {
  return kept.flatMap((one) => {
    try {
      return [checkMade(one)];
    } catch {
      return [];
    }
  });
}

const flag = (usual: boolean) => z.boolean().catch(usual);

/**
 * What the user has set for this browser; every field falls back by itself, so that an older or spoilt entry costs only itself. Some of
 * these are written into attempts (rig, guides, plain view): what is not of this shape and range never gets there.
 */
const preferencesSchema = z.object({
  exercise: z.string().max(60).nullable().catch(null),
  /** Language on screen and paper; null: the browser's. */
  language: z.enum(languages).nullable().catch(null),
  /** Inches are shown beside millimetres. */
  inches: flag(false),
  /** The page is laid out for a left hand. */
  leftHanded: flag(false),
  /** What the arc sounds like is said in words, too. */
  captions: flag(false),
  cautionsRead: flag(false),
  /** A torch that shows the weave to go by. */
  pacer: flag(false),
  beatSeen: flag(true),
  beatHeard: flag(false),
  toeMarks: flag(true),
  plainView: flag(false),
  handRig: rig.nullable().catch(null),
  /** A key press of Space keeps the trigger until the next one. */
  latchTrigger: flag(false),
  sound: z.number().min(0).max(1).catch(0.25),
  /** Device pixels per millimetre of this screen, from the bank card; null before calibration. */
  devicePxPerMm: z.number().gt(0.5).lt(60).nullable().catch(null),
  oneToOne: flag(false),
  penTilts: flag(false),
  /** Cuts open without readings, until measured or asked for. */
  measureFirst: flag(false),
  /** Guides as set here, whatever the level says. */
  ownGuides: flag(false),
  /** Whether the trainee judges an attempt before the verdict is shown. */
  judgeFirst: z.enum(['lessons', 'always', 'never']).catch('lessons'),
  /** Seen guides go while the hand is inside the band. */
  fadeGuides: flag(true),
  /** Step of the first lesson to go on with, 'done' after its end; null: never begun. */
  lesson: z.enum(['joint', 'weave', 'robot', 'straight', 'cut', 'root', 'done']).nullable().catch(null),
  /** The first lesson has been offered, begun or declined. */
  lessonOffered: flag(false),
  /** Who welds at this bench now, as written; null: nobody has said. */
  trainee: z.string().min(1).max(120).nullable().catch(null),
  /** Which bench this is; empty: not said. */
  bench: z.string().max(60).catch(''),
  /** Number on the plate that the trainee at the bench has; null: not said. */
  plate: z.number().int().min(1).max(MOST_PLATES).nullable().catch(null),
  /** The start word on the board; empty: none. */
  startWord: z.string().max(60).catch(''),
  /** Who is to weld here, in order. */
  roster: z
    .array(
      z.object({
        name: z.string().min(1).max(120),
        bench: z.string().max(60).nullable(),
        plate: z.number().int().min(1).max(MOST_PLATES).nullable().default(null),
      }),
    )
    .max(200)
    .catch([]),
  /** Exercises made or opened here, the one used last first. */
  exercises: z.array(z.unknown()).catch([]).transform(onlyExercises),
  /** Names are left off the screen, for a room that looks on. */
  namesHidden: flag(false),
  /** The browser has once been asked to keep the attempts for good. */
  persistenceAsked: flag(false),
});

export type Preferences = z.infer<typeof preferencesSchema>;

/** Preferences out of whatever was kept. */
export function preferencesFrom(kept: unknown): Preferences {
  const fields = typeof kept === 'object' && kept !== null && !Array.isArray(kept) ? kept : {};
  // The pacer had another name in entries of earlier days.
  return preferencesSchema.parse('ghost' in fields ? { pacer: fields.ghost, ...fields } : fields);
}
