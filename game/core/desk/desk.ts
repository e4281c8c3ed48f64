import { effect } from '@preact/signals-core';
import type { Recording } from '../../../engine/index.ts';
import {
  type AttemptRecording,
  type Entry,
  type Exercise,
  type ExercisePrint,
  exercisePrintHtml,
  exercisePrintPdf,
  type KnownPieces,
  readExercise,
  readRecording,
} from '../../../scoring/index.ts';
import type { ChosenFiles, Ports } from '../ports.ts';
import type { Comparer } from '../session/comparer.ts';
import { readText } from '../session/files.ts';
import type { Keeper } from '../session/keeper.ts';
import type { Opener } from '../session/opener.ts';
import type { Preferences } from '../session/preferences.ts';
import { problemOf } from '../session/problem.ts';
import { exerciseOf, type State } from '../session/state.ts';
import { type ClassExport, ClassRoom } from './class-room.ts';
import { Editor } from './editor.ts';
import { Readers } from './readers.ts';
import { Techniques } from './techniques.ts';

/** The instructor's desk: a class from its files. What goes wrong is said, and nothing on the bench or the desk is lost by it. */
export class Desk {
  readonly classRoom: ClassRoom;
  readonly editor: Editor;
  readonly techniques: Techniques;
  readonly readers: Readers;

  constructor(
    private readonly ports: Ports,
    private readonly state: State,
    private readonly opener: Opener,
    private readonly comparer: Comparer,
    private readonly keeper: Pick<Keeper, 'load'>,
    private readonly bench: { cutAt(y_mm: number): void; use(exercise: Exercise): void },
  ) {
    this.classRoom = new ClassRoom(
      ports,
      () => state.preferences.value.exercises,
      () => piecesKnown(state.preferences.value),
      () => state.language.value,
      () => state.preferences.peek().inches,
    );
    this.editor = new Editor(ports, state, (exercise) => this.bench.use(exercise));
    this.techniques = new Techniques(ports);
    this.readers = new Readers(ports, state);
    ports.links.hear(() => void this.openLink());
    void this.openLink();
    ports.papers.onPrint(() => this.paperOnTop());
  }

  /** The exercise that the page's address carries, if it carries one. */
  private async openLink(): Promise<void> {
    let text: string | null;
    try {
      text = await this.ports.links.carried();
    } catch {
      this.state.problem.value = { code: 'spoilt-link' };
      return;
    }
    if (text !== null) await this.trying(async () => this.bench.use(readExercise(text, 'link')));
  }

  addClass(chosen: ChosenFiles | Promise<ChosenFiles>): Promise<void> {
    return this.trying(async () => this.classRoom.add(await chosen));
  }

  printClass(): void {
    this.ports.papers.print(this.classRoom.html());
  }

  /** Prints what goes with the exercise being made: its sheet, the sheet for macros of its coupons, the card for the booth. */
  printOf(what: ExercisePrint): void {
    const exercise = this.editor.exercise();
    if (exercise === null) return;
    this.ports.papers.print(
      exercisePrintHtml(exercise, what, this.state.language.value, this.state.preferences.peek().inches),
    );
  }

  /** Saves one of these as a PDF: the command line's bytes. */
  savePdfOf(what: ExercisePrint): Promise<void> {
    return this.trying(async () => {
      const exercise = this.editor.exercise();
      if (exercise === null) return;
      const { files, papers } = this.ports;
      const pdf = await exercisePrintPdf(
        exercise,
        what,
        await papers.fonts(),
        this.state.language.value,
        this.state.preferences.peek().inches,
      );
      files.saveAs(pdf, `${exercise.name}-${what}.pdf`, 'application/pdf');
    });
  }

  printReport(): void {
    const html = this.state.paper.value;
    if (html !== null) this.ports.papers.print(html);
  }

  /** What the browser's own print key prints: the sheet on top; null: the page as it stands. */
  private paperOnTop(): string | null {
    const classOnTop = this.state.onTop.value === 'class' && this.classRoom.view.value.sheet !== null;
    return classOnTop ? this.classRoom.html() : this.state.paper.value;
  }

  /** Brings an attempt of the class to the bench. @param y_mm where to cut it; null: where the bench is cut now */
  async openOfClass(file: string, y_mm: number | null): Promise<void> {
    const chosen = this.classRoom.file(file);
    if (chosen === null) return;
    await this.opener.file(chosen);
    if (y_mm !== null) this.bench.cutAt(y_mm);
  }

  /** Brings an attempt of the class to the bench and lays another beside it. */
  async openBoth(file: string, beside: string): Promise<void> {
    await this.openOfClass(file, null);
    if ((await this.onBench(file)) && this.state.problem.value === null) await this.besideOfClass(beside);
  }

  /** Waits until a file's attempt lies on the bench. @returns false where another came instead, or it could not be opened */
  private onBench(file: string): Promise<boolean> {
    return new Promise((resolve) => {
      let stop: () => void = () => undefined;
      stop = effect(() => {
        const { finished, busy, problem } = this.state;
        const lies = finished.value?.file === file;
        if (!lies && busy.value !== null && problem.value === null) return;
        resolve(lies);
        queueMicrotask(() => stop());
      });
    });
  }

  /** Saws through both halves of the attempt on the bench. @param at_mm where the hand changed; null: in the middle */
  async sawHalves(at_mm: number | null): Promise<void> {
    const done = this.state.finished.value;
    if (done) await this.techniques.halves(done.recording as AttemptRecording, at_mm);
  }

  /** Saws through the attempt on the bench and another kept here as two sides of one joint. */
  sawSides(id: string): Promise<void> {
    return this.trying(async () => {
      const done = this.state.finished.value;
      const kept = await this.keeper.load(id);
      if (done && kept)
        await this.techniques.sides(done.recording as AttemptRecording, kept.recording as AttemptRecording);
    });
  }

  async saveClass(kind: ClassExport): Promise<void> {
    await this.trying(() => this.classRoom.save(kind));
  }

  /** Saves a file made of one attempt of the class. */
  saveOfClass(entry: Entry, what: 'result' | 'cut'): Promise<void> {
    return this.trying(() => this.classRoom.saveOf(entry, what));
  }

  /** Lays an attempt of the class beside the one on the bench. */
  besideOfClass(file: string): Promise<void> {
    return this.trying(async () => {
      const chosen = this.classRoom.file(file);
      if (chosen === null || this.state.finished.value === null) return;
      const recording = readRecording(await readText(chosen), file) as Recording;
      this.opener.weighed(recording, file, () =>
        this.comparer.show(file, exerciseOf(recording)?.title ?? null, recording, this.state.cutAt.value),
      );
    });
  }

  private async trying(what: () => Promise<void>): Promise<void> {
    try {
      await what();
    } catch (error) {
      this.state.problem.value = problemOf(error);
    }
  }
}

/** What is known here of the pieces dealt: the start word, and whose plate is whose. */
function piecesKnown({ startWord, roster }: Preferences): KnownPieces {
  return { ...(startWord.trim() === '' ? {} : { word: startWord }), ...(roster.length === 0 ? {} : { roster }) };
}
