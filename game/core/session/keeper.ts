import type { Result } from '../../../scoring/index.ts';
import type { AttemptStore } from '../ports.ts';
import { entryOf, type StoredAttempt } from './shelf.ts';
import { exerciseOf, type Finished, type State } from './state.ts';

/** Keeps every attempt in the browser, so that a reload or a crash loses none. */
export class Keeper {
  constructor(
    private readonly store: AttemptStore,
    private readonly state: State,
  ) {}

  async keep(done: Finished, result: Result | null): Promise<void> {
    try {
      await this.store.put({
        id: done.id,
        made_ms: done.made_ms,
        title: exerciseOf(done.recording)?.title ?? null,
        recording: done.recording,
        result,
      });
      await this.refresh();
    } catch {
      this.state.problem.value = { code: 'not-kept' };
    }
  }

  async forget(id: string): Promise<void> {
    try {
      await this.store.remove(id);
      await this.refresh();
    } catch {
      this.state.problem.value = { code: 'not-kept' };
    }
  }

  load(id: string): Promise<StoredAttempt | undefined> {
    return this.store.get(id);
  }

  async refresh(): Promise<void> {
    try {
      this.state.shelf.value = (await this.store.all()).map(entryOf);
    } catch {
      this.state.shelf.value = [];
    }
  }
}
