import { attemptOf } from '../attempt/attempt.ts';
import { sectionSvg } from '../draw/section-svg.ts';
import type { Svg } from '../draw/svg.ts';
import { checkAccounts } from '../measures/open-accounts.ts';
import { readSection } from '../measures/section/station.ts';
import { textOf } from '../schema/bytes.ts';
import { cleanJson } from '../schema/clean.ts';
import { readRecording } from '../schema/read.ts';
import type { Result } from '../schema/result.ts';
import { scoreAttempt } from '../score.ts';

/** Files made of one attempt, with the command line's bytes. */

/** A result as `toehold score --json` prints it. */
export function resultText(result: Result): string {
  return `${cleanJson(result, 2)}\n`;
}

/** The result of an attempt's file. @throws InputError, EngineError */
export function resultOfFile(bytes: Uint8Array, file: string): string {
  return resultText(scoreAttempt(readRecording(textOf(bytes, file), file)));
}

/** A cut of an attempt, drawn as `toehold section --svg` draws it. */
export interface CutOfFile {
  y_mm: number;
  svg: Svg;
}

/**
 * The cut of an attempt's file where its result points: at the first fix, else at the middle one of the cuts fixed beforehand, else in the middle.
 * @throws InputError, EngineError
 */
export function cutOfFile(bytes: Uint8Array, file: string, result: Result): CutOfFile {
  const recording = readRecording(textOf(bytes, file), file);
  const attempt = attemptOf(recording);
  checkAccounts(attempt.accounts, file);
  const cuts_mm = result.exercise?.cuts_mm ?? [];
  const y_mm = result.advice[0]?.y_mm ?? cuts_mm[cuts_mm.length >> 1] ?? recording.simulation.joint.length_mm / 2;
  const section = attempt.section(y_mm);
  return { y_mm, svg: sectionSvg(section, readSection(section)?.station ?? null) };
}
