import { describeFound, InputError } from './problem.ts';

type Content = Record<string, unknown>;

/** How a file of one version becomes one of the next. */
export type Step = (older: Content) => Content;

/** Which versions of a format are read. */
export interface Versions {
  current: number;
  /** Steps by the version they start from. A version without a step is refused with the reason. */
  steps: ReadonlyMap<number, Step>;
  /** Why a version cannot be brought up, where there is more to say. */
  refused?: ReadonlyMap<number, string>;
}

/** The demonstration torch had another name in version 1. */
function renamedPacer(aids: unknown): unknown {
  if (typeof aids !== 'object' || aids === null || !('ghost' in aids)) return aids;
  const { ghost, ...rest } = aids;
  return { pacer: ghost, ...rest };
}

/** Exercises: 2 calls the demonstration torch a pacer. */
export const exerciseVersions: Versions = {
  current: 2,
  steps: new Map([[1, (c) => ({ ...c, version: 2, aids: renamedPacer(c.aids) })]]),
};

/**
 * Recordings: version 1 is the first that was ever written. 2 adds the chain, who welded and when, which version 1 does not know, and
 * calls the demonstration torch a pacer.
 */
export const recordingVersions: Versions = {
  current: 2,
  steps: new Map([
    [
      1,
      (c) => ({
        ...c,
        version: 2,
        aids: renamedPacer(c.aids),
        exercise: lifted(c.exercise),
        trainee: null,
        started: null,
        chain: null,
      }),
    ],
  ]),
};

/** The exercise inside a recording, brought up where it can be; the schema says what is wrong with the rest. */
function lifted(exercise: unknown): unknown {
  const older = typeof exercise === 'object' && exercise !== null && (exercise as Content).version === 1;
  return older ? upToCurrent({ ...(exercise as Content) }, 'exercise', exerciseVersions) : exercise;
}

/**
 * Brings the content of a file up to the current version, step by step.
 * @throws InputError with the reason, when the file is newer, or so old that there is no way up
 */
export function upToCurrent(content: Content, file: string, versions: Versions): Content {
  const { current, steps } = versions;
  let at = content;
  for (;;) {
    const version = at.version;
    if (version === current) return at;
    const step = typeof version === 'number' ? steps.get(version) : undefined;
    if (step === undefined) throw refusal(content.version, file, versions);
    at = step(at);
    if (typeof at.version !== 'number' || !(at.version > (version as number))) {
      throw new Error(`the step from version ${String(version)} does not lead up`);
    }
  }
}

function refusal(version: unknown, file: string, { current, steps, refused }: Versions): InputError {
  const allowed = [...steps.keys(), current].sort((a, b) => a - b).join(', ');
  const known = typeof version === 'number' ? refused?.get(version) : undefined;
  const why =
    known ??
    (typeof version !== 'number' || !Number.isInteger(version)
      ? 'a file without a version was not written by Toehold'
      : version > current
        ? 'this file was written by another version, a newer one than this, and cannot be read'
        : 'this file was written by another version that is no longer read');
  return new InputError(file, [{ path: 'version', found: describeFound(version), allowed: `${allowed}; ${why}` }]);
}
