import { ENGINE_VERSION } from '../../engine/index.ts';
import { digest } from '../exercises/digest.ts';
import { exercises } from '../exercises/ready.ts';
import { profiles } from '../profiles/ready.ts';
import { SCORING_VERSION } from '../version.ts';
import { type Judge, type Scored, scoredSchema } from './scored.ts';

/** A finished score without the name of its file: the same bytes under another name are the same score. */
export const keptScoreSchema = scoredSchema.omit({ file: true });

/** What was judged by, as a digest: ready exercises and profiles, and those given. */
export function judgeDigest(judge: Judge): string {
  return digest(JSON.stringify([exercises, profiles, judge.exercise, judge.profile]));
}

/**
 * What a finished score stands for: a file's content, judge, engine and scoring together. Where it is kept under this key it need not be made
 * again.
 * @param sha256 of the file's bytes
 */
export function scoreKey(sha256: string, judge: Judge): string {
  return [sha256, judgeDigest(judge), ENGINE_VERSION, SCORING_VERSION].join(' ');
}

/** A kept score under the name its file has now; null where what was kept is none, or is of other bytes. */
export function keptScore(kept: unknown, file: string, sha256: string): Scored | null {
  const parsed = keptScoreSchema.safeParse(kept);
  return parsed.success && parsed.data.sha256 === sha256 ? { file, ...parsed.data } : null;
}
