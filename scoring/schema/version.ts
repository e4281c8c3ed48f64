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

/** Recordings: version 1 is the first that was ever written. */
export const recordingVersions: Versions = { current: 1, steps: new Map() };

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
