import type { AdviceCode, Result, Verdict } from '../../../scoring/index.ts';

/** Answers of the lab as these pages read them; the lab's own document says more. */
export interface ClassInfo {
  id: string;
  name: string;
  code: string;
  pins: boolean;
  marks: { rule: 'best' } | { rule: 'last' } | { rule: 'median of last'; attempts: number };
}

/** An exercise of the instructor's own, as its file has it. */
export interface OwnExercise {
  id: string;
  title: string;
  exercise: Record<string, unknown>;
}

export interface Instructor {
  id: string;
  name: string;
  /** In charge of the lab. */
  keeper: boolean;
  classes: number;
}

export interface Trainee {
  id: string;
  name: string;
  plate: number | null;
  hasPin: boolean;
}

export interface Assignment {
  id: string;
  title: string;
  exercise: string;
  opens: string;
  closes: string | null;
  mostAttempts: number | null;
}

export interface Handed {
  id: string;
  trainee: { id: string; name: string };
  assignment: { id: string; title: string };
  number: number;
  received: string;
  late: boolean;
  state: 'waiting' | 'scored' | 'could not be scored';
  verdict: Verdict | null;
  score: number | null;
  firstFix: string | null;
  fault: string | null;
  /** What speaks against it; in the list alone. */
  evidence?: { code: string; text: string }[];
  /** Among it, whether its motion is nearly another's. */
  compared?: boolean;
}

/** Somebody of the class as told while it happens. */
interface Present {
  id: string;
  name: string;
  plate: number | null;
}

/** What a class is at just now. */
export interface Now {
  welding: Present[];
  waiting: (Present & { attempts: number })[];
}

/** A thing done to the class's data. */
export interface Trail {
  at: string;
  role: string;
  who: string;
  did: string;
  detail: Record<string, unknown>;
}

interface Summary {
  verdict: Verdict | null;
  score: number | null;
  fault: string | null;
}

/** What two versions judge differently. */
export interface Differences {
  compared: number;
  differing: { id: string; trainee: string; assignment: string; number: number; before: Summary; after: Summary }[];
}

interface Version {
  engine: string;
  scoring: string;
}

/** What stands behind the class's tables. */
export interface Records {
  trail: Trail[];
  current: Version;
  versions: (Version & { scores: number })[];
  retention: { keepDays: number | null; before: string | null; trainees: string[]; attempts: number };
}

export interface OneHanded {
  handed: Handed;
  result: Result | null;
  evidence: { code: string; text: string }[];
}

export interface MarkRow {
  trainee: { id: string; name: string };
  attempts: number;
  computed: { mark: number | null; from: number[]; leftOut: { number: number; why: string }[] };
  set: number | null;
  history: { mark: number | null; reason: string; by: string; at: string }[];
}

export interface ClassTable {
  rows: {
    trainee: string;
    exercise: string | null;
    attempts: number;
    within: number;
    median: number | null;
    commonFault: AdviceCode | null;
  }[];
  seeFirst: { trainee: string; faultCode: AdviceCode; says: string; times: number; of: number }[];
  waiting: string[];
  notes: string[];
}
