import { profileNamed, profiles } from '../profiles/ready.ts';
import { withoutPiece } from '../schema/asked.ts';
import type { Exercise } from '../schema/exercise.ts';
import { checkExercise } from '../schema/exercise-check.ts';
import { type Band, FREE_IN_HAND, type Leeway } from '../schema/leeway.ts';
import { describeFound, InputError } from '../schema/problem.ts';
import type { Profile } from '../schema/profile.ts';
import { FREE_NAME } from './free.ts';
import { exerciseNamed, exercises } from './ready.ts';
import { judgedOf, targetFor, thirds } from './workshop.ts';

/** Name of a file an exercise is saved in. */
export function exerciseFileName({ name }: Exercise): string {
  return `${name}.exercise.json`;
}

/**
 * A draft to begin with: another exercise under a name that is free.
 * @param taken names that are not free, beside those of the ready exercises
 */
export function draftFrom(exercise: Exercise, taken: readonly string[]): Exercise {
  const used = new Set([...taken, FREE_NAME, ...exercises.map((e) => e.name)]);
  const stem = (exercise.name === FREE_NAME ? 'own' : exercise.name).replace(/-\d+$/, '').slice(0, 50);
  let n = 2;
  while (used.has(`${stem}-${n}`)) n++;
  return { ...withoutPiece(exercise), name: `${stem}-${n}` };
}

/** What of an exercise follows from the rest: bands around the weave, what devices hold, how far up the weave goes. */
export function withConsequences(draft: Exercise): Exercise {
  const { start_mm } = draft.demonstration;
  const demonstration = { ...draft.demonstration, length_mm: draft.joint.length_mm - 2 * start_mm };
  const { tipToWork_mm, workAngle_deg, travelAngle_deg } = demonstration;
  const { free } = draft;
  const target = targetFor(demonstration);
  return {
    ...draft,
    demonstration,
    target: { ...target, ...Object.fromEntries(FREE_IN_HAND.map((name) => [name, hull(target[name], free?.[name])])) },
    hold: { tipToWork_mm, workAngle_deg, travelAngle_deg },
  };
}

/** A band that takes in what is left free as well: who holds the gun where it may be held is not told off for it. */
function hull(band: Band, free: Band | null | undefined): Band {
  return free ? { from: Math.min(band.from, free.from), to: Math.max(band.to, free.to) } : band;
}

/** How far feed and volts are free where nobody has said yet, to either side. */
const USUAL_GIVE = { feed_mpmin: 0.4, volts_V: 1 } as const;

/** The optional parts of a draft as its other fields want them: ranges where settings are free within them, nothing where nothing is said. */
export function withOptions(draft: Exercise): Exercise {
  const { free, vary, attempts, limits, ...rest } = draft;
  const { process } = rest;
  const around = (x: number, give: number): Band => ({ from: tenth(x - give), to: tenth(x + give) });
  const usual = {
    feed_mpmin: around(process.feed_mpmin, USUAL_GIVE.feed_mpmin),
    volts_V: around(process.volts_V, USUAL_GIVE.volts_V),
  };
  const varied = { gap_mm: null, startTemp_C: null, cuts_mm: 0, ...vary };
  const varies = varied.gap_mm !== null || varied.startTemp_C !== null || varied.cuts_mm !== 0;
  return {
    ...rest,
    ...(rest.settings === 'within ranges' ? { free: said({ ...usual, ...free }) } : {}),
    ...(varies ? { vary: varied } : {}),
    ...((attempts ?? null) === null ? {} : { attempts: attempts! }),
    ...(limits === undefined ? {} : { limits }),
  };
}

/** Without what is left out anyhow: an exercise reads the same whether a range was never given or taken away again. */
function said({ feed_mpmin, volts_V, ...others }: Leeway): Leeway {
  const given = Object.fromEntries(Object.entries(others).filter(([, left]) => left !== null));
  return { feed_mpmin, volts_V, ...given };
}

function tenth(x: number): number {
  return Math.round(10 * x) / 10;
}

/** A school's own limits to begin with: another profile under a name of its own. @param edition of the new ones, such as the day */
export function ownLimits(from: Profile, edition: string, taken: readonly string[] = []): Profile {
  const used = new Set([...taken, ...profiles.map((p) => p.name)]);
  const stem = from.name.replace(/^own-|-\d+$/g, '').slice(0, 48);
  let n = 1;
  const name = (): string => `own-${stem}${n === 1 ? '' : `-${n}`}`;
  while (used.has(name())) n++;
  return {
    ...from,
    name: name(),
    title: `${from.title}, our own`,
    edition,
    source: `Changed from ${from.title}, ${from.edition}.`,
  };
}

/** Name of a file acceptance limits are saved in. */
export function profileFileName({ name }: Profile): string {
  return `${name}.profile.json`;
}

/** Judged length and cuts as the workshop's own exercises have them on a joint of this length. */
export function usualLengths(length_mm: number): Pick<Exercise, 'judged' | 'cuts_mm'> {
  const judged = judgedOf(length_mm);
  return { judged, cuts_mm: thirds(judged) };
}

/**
 * An exercise made by somebody, checked as a file of it would be; besides, its name must be its own and its profile one that is here.
 * @throws InputError naming every field that does not fit
 */
export function checkMade(draft: unknown, file = 'exercise'): Exercise {
  const exercise = checkExercise(draft, file);
  if (exercise.name === FREE_NAME || exerciseNamed(exercise.name) !== undefined) {
    throw new InputError(file, [
      {
        path: 'name',
        found: describeFound(exercise.name),
        allowed: 'a name of its own; that one belongs to an exercise that comes with Toehold',
      },
    ]);
  }
  const ready = profileNamed(exercise.profile) !== undefined;
  if (exercise.limits === undefined && !ready) {
    throw new InputError(file, [
      {
        path: 'profile',
        found: describeFound(exercise.profile),
        allowed: `${profiles.map((p) => p.name).join(', ')}, or one whose limits the exercise carries`,
      },
    ]);
  }
  if (exercise.limits !== undefined && ready) {
    throw new InputError(file, [
      {
        path: 'limits.name',
        found: describeFound(exercise.limits.name),
        allowed: 'a name of its own; that one belongs to a profile that comes with Toehold',
      },
    ]);
  }
  return exercise;
}
