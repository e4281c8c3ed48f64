import type { Recording } from '../../../engine/index.ts';
import { readRecording } from '../../../scoring/index.ts';
import type { ChosenFiles, Ports } from '../ports.ts';
import type { Comparer } from '../session/comparer.ts';
import { readText } from '../session/files.ts';
import type { Opener } from '../session/opener.ts';
import { problemOf } from '../session/problem.ts';
import { exerciseOf, type State } from '../session/state.ts';
import { ClassRoom } from './class-room.ts';

/** The instructor's desk: a class from its files. What goes wrong is said, and nothing on the bench or the desk is lost by it. */
export class Desk {
  readonly classRoom: ClassRoom;

  constructor(
    private readonly ports: Ports,
    private readonly state: State,
    private readonly opener: Opener,
    private readonly comparer: Comparer,
    private readonly cutAt: (y_mm: number) => void,
  ) {
    this.classRoom = new ClassRoom(ports);
    ports.papers.onPrint(() => this.paperOnTop());
  }

  addClass(chosen: ChosenFiles | Promise<ChosenFiles>): Promise<void> {
    return this.trying(async () => this.classRoom.add(await chosen));
  }

  printClass(): void {
    this.ports.papers.print(this.classRoom.html());
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
    if (y_mm !== null) this.cutAt(y_mm);
  }

  /** Lays an attempt of the class beside the one on the bench. */
  besideOfClass(file: string): Promise<void> {
    return this.trying(async () => {
      const chosen = this.classRoom.file(file);
      if (chosen === null || this.state.finished.value === null) return;
      const recording = readRecording(await readText(chosen), file) as Recording;
      this.comparer.show(file, exerciseOf(recording)?.title ?? null, recording, this.state.cutAt.value);
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
