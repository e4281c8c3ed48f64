import type { Result, Verdict } from '../../../scoring/index.ts';

/** Answers of the lab as these pages read them; the lab's own document says more. */
export interface ClassInfo {
  id: string;
  name: string;
  code: string;
  pins: boolean;
  marks: { rule: 'best' } | { rule: 'last' } | { rule: 'median of last'; attempts: number };
}

export interface Trainee {
  id: string;
  name: string;
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
    commonFaultSays: string | null;
  }[];
  seeFirst: { trainee: string; says: string; times: number; of: number }[];
  waiting: string[];
  notes: string[];
}
