import { describeFound, InputError, type Problem } from './problem.ts';
import { kindOfFormat, type OwnKind } from './what-is.ts';

/** A whole file of ours, of another kind than was asked for. */
export class OtherKind extends InputError {
  constructor(
    file: string,
    readonly kind: OwnKind,
    problem: Problem,
  ) {
    super(file, [problem]);
  }
}

/** What a file of each kind is, and what it is good for. */
const KINDS = {
  recording: 'a recording of an attempt',
  exercise: 'an exercise',
  profile: 'an acceptance profile',
  coupon: 'the marks of a real coupon',
  result: 'a result, which is read off a recording',
  logbook: 'a logbook',
} as const;

/** What can be done with a file of another kind than was asked for. */
const INSTEAD: Partial<Record<keyof typeof KINDS, string>> = {
  recording: 'score it, or open it on the bench',
  exercise: 'judge attempts by it (--exercise), or open it on the bench',
  profile: "judge attempts by it (--profile), or take it as an exercise's own limits at the desk",
  coupon: 'open it under “a real coupon” beside a cut',
  logbook: 'take it in under Attempts',
};

/**
 * Refuses a file of another kind in one sentence, where its content says which kind it is; lets everything else pass on to the schema.
 * @throws OtherKind
 */
export function refuseOtherKind(found: unknown, asked: keyof typeof KINDS, file: string): void {
  const format = typeof found === 'object' && found !== null ? (found as { format?: unknown }).format : undefined;
  const kind = kindOfFormat(format);
  if (kind === null || kind === asked) return;
  const instead = INSTEAD[kind];
  throw new OtherKind(file, kind, {
    path: 'format',
    found: `${describeFound(format)}, ${KINDS[kind]}`,
    allowed: `"toehold-${asked}", ${KINDS[asked]}${instead === undefined ? '' : `; with this file you can ${instead}`}`,
  });
}
