import type { Result } from '../../../scoring/index.ts';
import { keepAttempt, listAttempts, removeAttempt } from '../../browser/stores/attempts.ts';
import { words } from '../../locale/index.ts';
import { exerciseOf, type Finished, problem, shelf } from './state.ts';

/** Keeps every attempt in the browser, so that a reload or a crash loses none. */
export async function keep(done: Finished, result: Result | null): Promise<void> {
  try {
    await keepAttempt({
      id: done.id,
      made_ms: done.made_ms,
      title: exerciseOf(done.recording)?.title ?? words.shelf.untitled,
      recording: done.recording,
      result,
    });
    await refreshShelf();
  } catch {
    problem.value = words.problems.notKept;
  }
}

export async function forget(id: string): Promise<void> {
  try {
    await removeAttempt(id);
    await refreshShelf();
  } catch {
    problem.value = words.problems.notKept;
  }
}

export async function refreshShelf(): Promise<void> {
  try {
    shelf.value = await listAttempts();
  } catch {
    shelf.value = [];
  }
}
