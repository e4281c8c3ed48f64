import type { Recording } from '../../../engine/index.ts';
import {
  type AttemptRecording,
  type Exercise,
  MOST_WORK_S,
  parseJson,
  readExercise,
  readRecording,
  whatIs,
  workOver,
} from '../../../scoring/index.ts';
import type { ChosenFile } from '../chosen-file.ts';
import type { Clock } from '../ports.ts';
import type { Comparer } from './comparer.ts';
import { LARGEST_LOGBOOK_BYTES, readText } from './files.ts';
import type { Keeper } from './keeper.ts';
import type { TakenLogbook } from './logbook-file.ts';
import { problemOf } from './problem.ts';
import { FILE_ID } from './shelf.ts';
import type { State } from './state.ts';

/** An opening under way; it becomes the attempt on the bench only once it has been welded again. */
export interface Opening {
  /** What there is of an attempt that was never ended. */
  unfinished?: true;
  recording: Recording;
  file: string | null;
  id: string;
  made_ms: number;
}

/** Brings attempts from files and from the shelf to the bench; what cannot be opened is said and changes nothing. */
export class Opener {
  constructor(
    private readonly keeper: Keeper,
    private readonly comparer: Comparer,
    private readonly state: State,
    private readonly clock: Clock,
    private readonly weldAgain: (opening: Opening) => void,
    /** Lays an exercise on the bench. */
    private readonly useExercise: (exercise: Exercise) => void,
  ) {}

  file(file: ChosenFile): Promise<void> {
    return this.trying(async () => {
      const text = await readText(file);
      const kind = whatIs(text);
      if (kind === 'exercise') {
        this.useExercise(readExercise(text, file.name));
        return;
      }
      if (kind !== 'recording' && kind !== 'json' && kind !== 'empty') {
        this.state.problem.value = { code: 'other-kind', file: file.name, kind, source: file };
        return;
      }
      const recording = readRecording(text, file.name) as Recording;
      const id = `${FILE_ID}${recording.stateHash}`;
      const opening = { recording, file: file.name, id, made_ms: this.clock.date_ms() };
      this.weighed(recording, file.name, () => this.weldAgain(opening));
    });
  }

  /** Takes the attempts of a logbook file onto the shelf; null where it could not be read, which is said. */
  async logbook(file: ChosenFile): Promise<TakenLogbook | null> {
    let taken: TakenLogbook | null = null;
    await this.trying(async () => {
      const content = parseJson(await readText(file, LARGEST_LOGBOOK_BYTES), file.name, LARGEST_LOGBOOK_BYTES);
      taken = await this.keeper.takeLogbook(content, file.name);
    });
    return taken;
  }

  kept(id: string): Promise<void> {
    return this.trying(async () => {
      const kept = await this.keeper.load(id);
      if (kept === null) return;
      const opening = { recording: kept.recording, file: null, id, made_ms: kept.made_ms };
      this.weighed(kept.recording, null, () => this.weldAgain(opening));
    });
  }

  /** Welds an attempt that was never ended up to where it was left, ends it there and judges it. */
  unfinished(id: string): Promise<void> {
    return this.trying(async () => {
      const { recording, made_ms } = await this.keeper.take(id);
      this.weldAgain({ recording, file: null, id, made_ms, unfinished: true });
    });
  }

  /** Lays a kept attempt beside the one on the bench; null takes it away. */
  beside(id: string | null): Promise<void> {
    this.comparer.close();
    return this.trying(async () => {
      const kept = id === null ? null : await this.keeper.load(id);
      if (kept === null) return;
      this.weighed(kept.recording, null, () =>
        this.comparer.show(kept.id, kept.title, kept.recording, this.state.cutAt.value),
      );
    });
  }

  /** Goes on at once where that takes no longer than the command line would take unasked; else says how long, and goes on only when told to. */
  weighed(recording: Recording, file: string | null, goOn: () => void): void {
    const work = workOver(recording as AttemptRecording);
    if (work === null) goOn();
    else this.state.problem.value = { code: 'much-work', file, work, most_s: MOST_WORK_S, goOn };
  }

  private async trying(open: () => Promise<void>): Promise<void> {
    try {
      await open();
    } catch (error) {
      this.state.problem.value = problemOf(error);
    }
  }
}
