import { checkOptions, OPTION_RANGES } from '../../engine/index.ts';
import { type Exercise, exerciseSchema } from './exercise.ts';
import { type Band, FREE_AT_MACHINE, FREE_BY_KIND, FREE_IN_HAND, type FreeSetting, isLeft } from './leeway.ts';
import { describeFound, InputError, type Problem, parseWith } from './problem.ts';

/** Cell size of the model an exercise is welded at, unless somebody asks for another, mm. */
const CELL_MM = 0.75;

type Weave = Exercise['demonstration'];
type WeaveNumber = Exclude<{ [K in keyof Weave]: Weave[K] extends number ? K : never }[keyof Weave], undefined>;

/** Least, most and unit of what a weave may be: what a hand can do, and a little over. */
export const WEAVE_RANGES: Record<Exclude<WeaveNumber, 'start_mm' | 'length_mm'>, readonly [number, number, string]> = {
  cyclesPerSecond: [0.2, 5, 'a second'],
  width_mm: [0, 14, 'mm'],
  travel_mmps: [0.4, 12, 'mm/s'],
  pauseA_s: [0, 3, 's'],
  pauseB_s: [0, 3, 's'],
  apex_mm: [-6, 6, 'mm'],
  tipToWork_mm: [5, 40, 'mm'],
  workAngle_deg: [10, 80, '°'],
  travelAngle_deg: [-45, 45, '°'],
  shelf_s: [0, 20, 's'],
};

/**
 * An exercise out of whatever was read or typed: its shape, joint and settings as the engine can weld them, a weave a hand can follow.
 * @throws InputError naming every field that does not fit
 */
export function checkExercise(input: unknown, file: string): Exercise {
  const exercise = parseWith(exerciseSchema, input, file);
  const problems = [
    ...machineProblems(exercise),
    ...freeProblems(exercise),
    ...varyProblems(exercise),
    ...weaveProblems(exercise),
  ];
  if (problems.length > 0) throw new InputError(file, problems);
  return exercise;
}

function machineProblems({ joint, process }: Exercise): Problem[] {
  return checkOptions({ joint, process, cell_mm: CELL_MM }).map(({ path, found, allowed }) => ({
    path,
    found: describeFound(found),
    allowed,
  }));
}

/** From and to within what can be set at all. */
function bandProblems(
  path: string,
  { from, to }: Band,
  [low, high, unit]: readonly [number, number, string],
): Problem[] {
  return [['from', from] as const, ['to', to] as const]
    .filter(([, value]) => value < low || value > high)
    .map(([end, value]) => ({
      path: `${path}.${end}`,
      found: describeFound(value),
      allowed: `${low} to ${high} ${unit}`.replace(' °', '°'),
    }));
}

/** Least, most and unit of a number the engine is given. */
function rangeOf(group: 'joint' | 'process', name: string): readonly [number, number, string] {
  const rule = OPTION_RANGES[group]?.[name];
  return rule !== undefined && 'low' in rule
    ? [rule.low, rule.high, rule.unit]
    : [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, ''];
}

function varyProblems({ vary }: Exercise): Problem[] {
  return (['gap_mm', 'startTemp_C'] as const).flatMap((name) => {
    const band = vary?.[name];
    return band ? bandProblems(`vary.${name}`, band, rangeOf('joint', name)) : [];
  });
}

/** A range ends where machine and hand do, and what is given lies in what is left free. */
function freeProblems({ free, process, hold, demonstration }: Exercise): Problem[] {
  if (free === undefined) return [];
  const problems: Problem[] = [];
  const givenIn = (path: string, name: FreeSetting, value: unknown): void => {
    const left = free[name] ?? null;
    if (left === null || isLeft(free, name, value)) return;
    const allowed =
      'from' in left
        ? `${left.from} to ${left.to}, the range it is free in`
        : `one of those left free: ${left.join(', ')}`;
    problems.push({ path, found: describeFound(value), allowed });
  };
  for (const name of FREE_AT_MACHINE) {
    const band = free[name];
    if (band) problems.push(...bandProblems(`free.${name}`, band, rangeOf('process', name)));
    givenIn(`process.${name}`, name, process[name]);
  }
  for (const name of FREE_BY_KIND) givenIn(`process.${name}`, name, process[name]);
  for (const name of FREE_IN_HAND) {
    const band = free[name];
    if (band) problems.push(...bandProblems(`free.${name}`, band, WEAVE_RANGES[name]));
    givenIn(`demonstration.${name}`, name, demonstration[name]);
    if (hold[name] !== demonstration[name]) givenIn(`hold.${name}`, name, hold[name]);
  }
  return problems;
}

function weaveProblems({ demonstration: weave, joint }: Exercise): Problem[] {
  const problems: Problem[] = [];
  for (const [name, [low, high, unit]] of Object.entries(WEAVE_RANGES)) {
    const found = weave[name as keyof typeof WEAVE_RANGES];
    if (found >= low && found <= high) continue;
    problems.push({
      path: `demonstration.${name}`,
      found: describeFound(found),
      allowed: `${low} to ${high} ${unit}`.replace(' °', '°'),
    });
  }
  if (!(weave.start_mm >= 0 && weave.length_mm > 0 && weave.start_mm + weave.length_mm <= joint.length_mm)) {
    problems.push({
      path: 'demonstration.length_mm',
      found: `${weave.length_mm} from ${weave.start_mm}`,
      allowed: `a length that ends on the joint (${joint.length_mm} mm)`,
    });
  }
  return problems;
}
