import { type OnRoster, person, platesOf, readRoster } from '../../../scoring/index.ts';
import type { ChosenFile } from '../chosen-file.ts';
import { readText } from '../session/files.ts';
import type { Keeper } from '../session/keeper.ts';
import { problemOf } from '../session/problem.ts';
import type { AttemptEntry } from '../session/shelf.ts';
import type { State } from '../session/state.ts';

/** Who welds at this bench: chosen once, written into every attempt until the next one is, and forgotten when asked. */
export class Trainees {
  constructor(
    private readonly state: State,
    private readonly keeper: Pick<Keeper, 'forget' | 'forgetPractice'>,
    private readonly clearBench: () => void,
    /** Scores of a class kept here carry names too. */
    private readonly forgetScores: () => Promise<void>,
  ) {}

  /**
   * The next trainee takes the bench; a cold piece lies on it, dealt where the exercise deals everybody one of their own.
   * @param plate number on the plate; null: the roster's for this name, or none
   * @returns false where name or bench cannot be one, which is said
   */
  next(name: string, bench: string, plate: number | null = null): boolean {
    try {
      const who = person(name, bench);
      const { preferences } = this.state;
      const own = platesOf(preferences.value.roster).find((p) => p.name === who.name)?.plate ?? null;
      preferences.value = {
        ...preferences.value,
        trainee: who.name,
        bench: who.bench ?? '',
        plate: plate ?? own,
      };
      this.clearBench();
      return true;
    } catch (error) {
      this.state.problem.value = problemOf(error);
      return false;
    }
  }

  /** Takes the start word on the board; the piece on the bench is dealt anew. */
  word(word: string): void {
    this.state.setPreference('startWord', word);
    this.clearBench();
  }

  /** Whoever stands after the present trainee on the roster: the first where nobody is there yet, null after the last. */
  following(): OnRoster | null {
    const { roster, trainee } = this.state.preferences.value;
    const at = roster.findIndex((p) => p.name === trainee);
    return roster[at + 1] ?? null;
  }

  /** Takes over a roster as pasted. @returns how many are on it; 0 where it cannot be read, which is said */
  roster(text: string, file?: string): number {
    try {
      const people = readRoster(text, file);
      this.state.setPreference('roster', people);
      return people.length;
    } catch (error) {
      this.state.problem.value = problemOf(error);
      return 0;
    }
  }

  async rosterFile(file: ChosenFile): Promise<number> {
    try {
      return this.roster(await readText(file), file.name);
    } catch (error) {
      this.state.problem.value = problemOf(error);
      return 0;
    }
  }

  /** Attempts kept in this browser that carry a trainee's name. */
  named(): AttemptEntry[] {
    return this.state.shelf.value.filter((entry) => (entry.trainee ?? null) !== null);
  }

  /** Forgets trainee, bench, plate, start word and roster; with `attempts` what they welded here as well. */
  async forget(attempts: boolean): Promise<void> {
    const { preferences } = this.state;
    const named = attempts ? this.named() : [];
    preferences.value = { ...preferences.value, trainee: null, bench: '', plate: null, startWord: '', roster: [] };
    // What lies on the bench carries the name it was welded under.
    this.clearBench();
    for (const { id } of named) await this.keeper.forget(id);
    if (attempts) await this.keeper.forgetPractice();
    // Forgotten is forgotten: nothing is left to be put back.
    this.state.removed.value = null;
    await this.forgetScores();
  }
}
