import type { z } from 'zod';
import { clean } from './clean.ts';

/** One thing wrong with a piece of input. */
export interface Problem {
  /** Field path, such as `simulation.process.volts_V` or `poses.u[17]`; empty when the whole input is meant. */
  path: string;
  /** What stood there, shortened. */
  found: string;
  /** What may stand there, in words. */
  allowed: string;
}

/** Longest piece of found input quoted back. */
const QUOTED = 60;

/**
 * Input from outside (a file, an option, a typed-in value) that cannot be used. The message names file, field, what was found and what
 * is allowed, a clean line a problem; `problems` carries the same as data.
 */
export class InputError extends Error {
  override readonly name = 'InputError';
  readonly file: string;
  readonly problems: readonly Problem[];

  constructor(file: string, problems: readonly Problem[]) {
    super(problems.map((p) => sentence(file, p)).join('\n'));
    this.file = file;
    this.problems = problems;
  }
}

function sentence(file: string, p: Problem): string {
  const where = p.path === '' ? file : `${file}: ${p.path}`;
  return clean(`${where}: found ${p.found}, allowed: ${p.allowed}`);
}

/** Names a value as found: short JSON for plain values, the kind and size for the rest. */
export function describeFound(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number' && !Number.isFinite(value)) return String(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return `an object with ${Object.keys(value).length} fields`;
  const text = JSON.stringify(value) ?? typeof value;
  return text.length > QUOTED ? `${text.slice(0, QUOTED)}... (${text.length} characters)` : text;
}

/** Writes a path the way it is read in the file: `poses.u[17]`. */
function pathText(path: readonly PropertyKey[]): string {
  let text = '';
  for (const key of path) {
    if (typeof key === 'number') text += `[${key}]`;
    else text += text === '' ? String(key) : `.${String(key)}`;
  }
  return text;
}

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  let at: unknown = input;
  for (const key of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[key];
  }
  return at;
}

function allowedBy(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected === 'int' ? 'a whole number' : article(issue.expected);
    case 'too_small':
      return bound(issue.origin, 'at least', issue.minimum, issue.inclusive !== false);
    case 'too_big':
      return bound(issue.origin, 'at most', issue.maximum, issue.inclusive !== false);
    case 'invalid_value':
      return issue.values.map((v) => JSON.stringify(v)).join(', ');
    case 'invalid_format':
      // The pattern knows how long each month is; nobody reads that out of it.
      if (issue.format === 'datetime') return 'a day and time that there is, such as 2026-03-14T09:30:00Z (ISO 8601)';
      return issue.pattern ? `text matching ${issue.pattern}` : `text in the form ${issue.format}`;
    case 'not_multiple_of':
      return `a multiple of ${issue.divisor}`;
    default:
      return issue.message;
  }
}

function article(kind: string): string {
  return /^[aeio]/.test(kind) ? `an ${kind}` : `a ${kind}`;
}

function bound(origin: string, words: string, limit: number | bigint, inclusive: boolean): string {
  const count = origin === 'array' ? ' entries' : origin === 'string' ? ' characters' : '';
  return `${words} ${limit}${count}${inclusive ? '' : ' (not equal)'}`;
}

/** Turns schema issues into problems; an unknown field is named by its own path. */
function problemsOf(error: z.ZodError, input: unknown): Problem[] {
  const problems: Problem[] = [];
  for (const issue of error.issues) {
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) {
        problems.push({
          path: pathText([...issue.path, key]),
          found: describeFound(valueAt(input, [...issue.path, key])),
          allowed: 'no such field here; check the spelling',
        });
      }
      continue;
    }
    problems.push({
      path: pathText(issue.path),
      found: describeFound(valueAt(input, issue.path)),
      allowed: allowedBy(issue),
    });
  }
  return problems;
}

/**
 * Checks a value against a schema.
 * @throws InputError naming `file` and every field that does not fit.
 */
export function parseWith<S extends z.ZodType>(schema: S, input: unknown, file: string): z.infer<S> {
  const parsed = schema.safeParse(input);
  if (!parsed.success) throw new InputError(file, problemsOf(parsed.error, input));
  return parsed.data;
}
