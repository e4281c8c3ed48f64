import { exerciseDigest, type Scored } from '../node/index.ts';
import type { ClassDesk } from './class-desk.ts';
import type { Handed } from './handed.ts';
import { readJudge } from './judge.ts';

/**
 * A class's attempts as scored files under the names the class sheet reads, so that sheet, CSV and JSON lines are those of a folder. Attempts that are
 * waiting or could not be scored come as bad files with the reason.
 */
export async function scoredFiles(
  desk: ClassDesk,
  handed: readonly Handed[],
): Promise<{ scored: Scored[]; bad: { file: string; reason: string }[] }> {
  const judges = new Map<string, ReturnType<typeof readJudge>['exercise']>();
  const scored: Scored[] = [];
  const bad: { file: string; reason: string }[] = [];
  for (const h of handed) {
    const exercise = judges.get(h.assignment.judge) ?? readJudge(await desk.judgeContent(h.assignment)).exercise;
    judges.set(h.assignment.judge, exercise);
    const file = fileNameOf(h, exercise.name);
    if (h.score?.result && h.score.hand !== null) {
      const { result, hand, motion } = h.score;
      // Whose it is the lab knows from who handed it in, not from what a bench wrote into the file.
      const trainee = null;
      scored.push({
        ...{ file, sha256: h.submission.attempt, hand, motion: motion ?? '', exercise: exerciseDigest(exercise) },
        ...{ joint: exercise.joint.kind, trainee, started: null, result },
      });
    } else bad.push({ file, reason: `${file}: ${h.score?.fault ?? 'waiting to be scored'}` });
  }
  return { scored, bad };
}

/** date_bench_name_exercise_attempt.json; what stands for the bench is the lab. */
function fileNameOf({ submission, trainee }: Handed, exercise: string): string {
  const name = trainee.name
    .normalize('NFC')
    .replaceAll(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .toLowerCase();
  const date = submission.received.toISOString().slice(0, 10);
  return `${date}_lab_${name || 'trainee'}_${exercise}_${String(submission.number).padStart(2, '0')}.json`;
}
