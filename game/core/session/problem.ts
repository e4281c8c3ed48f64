import { InputError } from '../../../scoring/index.ts';
import { words } from '../../locale/index.ts';

/** What went wrong, in words for the user. */
export function problemText(error: unknown): string {
  if (error instanceof InputError) return words.problems.input(error);
  return error instanceof Error ? error.message : String(error);
}
