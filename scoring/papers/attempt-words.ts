import type { Result } from '../schema/result.ts';
import { measureName, said } from '../words/names.ts';
import {
  COUPON_CELLS,
  handSentences,
  LINES_HEAD,
  PROVENANCE,
  STRIP_SAYS,
  settingsSentence,
  TREND,
} from './sentences.ts';

type Verdict = Result['verdict'];

/** Every word on the report of an attempt, in English; the type of every other language. */
export const attemptWords = {
  said,
  measureName,
  settingsSentence,
  handSentences,
  untitled: 'Attempt without an exercise',
  judgedBy: (profile: string, file: string | null): string =>
    `Judged by ${profile}.${file === null ? '' : ` File ${file}.`}`,
  noProfile: 'no profile',
  verdict: {
    within: 'within',
    outside: 'outside',
    'too close to call': 'too close to call',
    'no verdict': 'no verdict',
  } satisfies Record<Verdict, string>,
  sense: { 'at most': 'at most', 'at least': 'at least' },
  trend: (score: number): string => `Trend number ${score}: ${TREND}`,
  why: {
    asked: 'as asked for',
    first: 'where the first fix points',
    middle: 'middle of the judged length',
    marked: 'marked before welding',
  },
  at: (mm: string): string => `at ${mm} mm`,
  into: (s: string): string => `${s} s into the attempt`,
  cycle: (n: number): string => `weave cycle ${n}`,
  more: (places: string, n: number): string => `${places} and ${n} more`,
  robot: 'robot hand',
  block: {
    trainee: 'Trainee',
    date: 'Date, bench',
    exercise: 'Exercise, attempt',
    none: 'none',
    own: ' (own)',
    welded: 'Welded with; engine, check number',
  },
  cut: (y: string, why: string): string => `The cut at ${y} mm, ${why}. Heavy strokes: not fused.`,
  marked: (y: string): string => `marked, ${y} mm`,
  after: 'Then',
  because: 'No verdict because',
  toKnow: 'To know',
  nothing: 'Nothing to say about the hand.',
  notMeasured: 'Not measured',
  allMeasured: 'nothing: this device measures all of it',
  notModelled: 'Not modelled',
  provenance: PROVENANCE,
  stripSays: STRIP_SAYS,
  head: LINES_HEAD as readonly string[],
  couponCells: COUPON_CELLS,
};
export type AttemptWords = typeof attemptWords;
