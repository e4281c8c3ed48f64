import { OF_THE_FILE, PRACTICE } from '../node/index.ts';
import type { Evidence } from './evidence.ts';
import type { MarksRule } from './marks-rule.ts';

/** One attempt as the rule sees it. */
export interface MarkedAttempt {
  number: number;
  /** Trend number; null without a verdict, or not scored yet. */
  score: number | null;
  evidence: readonly Evidence[];
}

/** What the rule makes of one trainee's attempts at one exercise. */
export interface Mark {
  /** Null where nothing counts. */
  mark: number | null;
  /** Numbers of the attempts it comes from. */
  from: number[];
  /** Attempts that are left out, each with the reason. */
  leftOut: { number: number; why: string }[];
}

/**
 * Facts that keep an attempt out of the mark until an instructor says otherwise: the class sheet's, and the lab's own. Another engine is none of them: here
 * everything is welded again with the lab's own, after each upgrade too.
 */
const KEEPS_OUT: ReadonlySet<string> = new Set(
  [
    ...['late', 'beyond-attempts', 'no-piece', 'other-piece', 'twin', 'near-twin', 'robot', 'origin-device-mismatch'],
    ...OF_THE_FILE,
    ...PRACTICE,
  ].filter((code) => code !== 'engine-differs'),
);

/** The mark by a rule. What is left out is named; an instructor can set another mark beside it with a reason. */
export function markOf(rule: MarksRule, attempts: readonly MarkedAttempt[]): Mark {
  const leftOut: Mark['leftOut'] = [];
  const counted: { number: number; score: number }[] = [];
  for (const { number, score, evidence } of [...attempts].sort((a, b) => a.number - b.number)) {
    const against = evidence.find((e) => KEEPS_OUT.has(e.code));
    if (against !== undefined) leftOut.push({ number, why: against.text });
    else if (score === null) leftOut.push({ number, why: 'It has no verdict, or is not scored yet.' });
    else counted.push({ number, score });
  }
  return { ...byRule(rule, counted), leftOut };
}

function byRule(rule: MarksRule, counted: readonly { number: number; score: number }[]): Pick<Mark, 'mark' | 'from'> {
  if (counted.length === 0) return { mark: null, from: [] };
  switch (rule.rule) {
    case 'best': {
      const best = counted.reduce((a, b) => (b.score > a.score ? b : a));
      return { mark: best.score, from: [best.number] };
    }
    case 'last': {
      const last = counted.at(-1)!;
      return { mark: last.score, from: [last.number] };
    }
    case 'median of last': {
      const some = counted.slice(-rule.attempts);
      const scores = some.map((a) => a.score).sort((a, b) => a - b);
      const half = scores.length >> 1;
      const mark = scores.length % 2 === 1 ? scores[half]! : (scores[half - 1]! + scores[half]!) / 2;
      return { mark, from: some.map((a) => a.number) };
    }
  }
}
