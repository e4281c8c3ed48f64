import type { Result } from '../index.ts';
import { copySaid, OF_THE_FILE } from '../node/index.ts';
import type { NearTwin } from './near-twins.ts';

/** A fact about an attempt that an instructor should know before believing it. Said with what shows it; it never changes a verdict. */
export interface Evidence {
  code: string;
  text: string;
}

/** Another submission with the same hand. */
export interface Twin {
  id: string;
  /** What it is called to whoever asks. */
  said: string;
}

export interface EvidenceQuestion {
  result: Result | null;
  late: boolean;
  /** Which attempt it is, and how many the assignment takes. */
  number: number;
  mostAttempts: number | null;
  /** What is wrong with the piece it was welded on. */
  piece: Evidence | null;
  twins: readonly Twin[];
  nearTwins: readonly NearTwin[];
}

/** Reasons that speak of how it was welded and not of the weld. */
const OF_THE_HOUR = new Set(['aids-in-test', 'machine-too-slow']);

/** Said of every attempt at an exercise of the school's own; here its limits are those the instructor handed out. */
const OWN_LIMITS = 'not-a-ready-exercise';

export function evidenceOf(q: EvidenceQuestion): Evidence[] {
  const found: Evidence[] = [];
  if (q.late) found.push({ code: 'late', text: 'It arrived after the exercise had closed.' });
  if (q.mostAttempts !== null && q.number > q.mostAttempts) {
    found.push({
      code: 'beyond-attempts',
      text: `It is attempt ${q.number}, and ${q.mostAttempts} ${q.mostAttempts === 1 ? 'counts' : 'count'}.`,
    });
  }
  if (q.piece !== null) found.push(q.piece);
  if (q.twins.length > 0) {
    const others = q.twins.map((t) => t.said).join(', ');
    found.push({ code: 'twin', text: `The same hand, pose for pose, as ${others}.` });
  }
  if (q.nearTwins.length > 0) {
    const others = q.nearTwins.map(({ of, copy }) => `${of.said}${copySaid(copy)}`);
    found.push({ code: 'near-twin', text: `Nearly the same motion as ${others.join(', ')}.` });
  }
  for (const { code, text } of q.result?.reasons ?? [])
    if (OF_THE_FILE.has(code) || OF_THE_HOUR.has(code)) found.push({ code, text });
  for (const { code, text } of q.result?.notes ?? []) if (code !== OWN_LIMITS) found.push({ code, text });
  return found;
}
