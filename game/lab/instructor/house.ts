import { signal } from '@preact/signals-core';
import { parseJson } from '../../../scoring/index.ts';
import type { Line } from '../line.ts';
import type { Instructor, OwnExercise } from './answers.ts';

/** Largest exercise file that is sent, characters; the lab says what else is wrong with one. */
const MOST_TEXT = 500_000;

/** What is of the lab and of no class: who comes in as an instructor, own exercises, the own password. */
export class House {
  readonly exercises = signal<OwnExercise[]>([]);
  /** Seen by whoever is in charge; empty for others. */
  readonly instructors = signal<Instructor[]>([]);

  /** @param trying runs something and says what the lab refused */
  constructor(
    private readonly line: Line,
    private readonly trying: (run: () => Promise<void>) => Promise<boolean>,
  ) {}

  async read(keeper: boolean): Promise<void> {
    await Promise.all([this.readExercises(), keeper ? this.readInstructors() : this.forget()]);
  }

  forget(): void {
    this.instructors.value = [];
  }

  addExercise(file: File): Promise<boolean> {
    return this.trying(async () => {
      const exercise = parseJson(await file.text(), file.name, MOST_TEXT);
      await this.line.ask('POST', 'exercises', { exercise });
      await this.readExercises();
    });
  }

  dropExercise(id: string): Promise<boolean> {
    return this.trying(async () => {
      await this.line.ask('DELETE', `exercises/${id}`);
      await this.readExercises();
    });
  }

  addInstructor(name: string, password: string): Promise<boolean> {
    return this.trying(async () => {
      await this.line.ask('POST', 'instructors', { name, password });
      await this.readInstructors();
    });
  }

  changeInstructor(id: string, change: { password: string } | { keeper: boolean }): Promise<boolean> {
    return this.trying(async () => {
      await this.line.ask('PATCH', `instructors/${id}`, change);
      await this.readInstructors();
    });
  }

  /** @returns how many classes came to who asked; null where it was refused */
  async removeInstructor(id: string): Promise<number | null> {
    let came: number | null = null;
    await this.trying(async () => {
      came = (await this.line.ask<{ classes: number }>('DELETE', `instructors/${id}`)).classes;
      await this.readInstructors();
      await this.readExercises();
    });
    return came;
  }

  changePassword(old: string, password: string): Promise<boolean> {
    return this.trying(async () => {
      await this.line.ask('POST', 'me/password', { old, password });
    });
  }

  private async readExercises(): Promise<void> {
    this.exercises.value = (await this.line.ask<{ exercises: OwnExercise[] }>('GET', 'exercises')).exercises;
  }

  private async readInstructors(): Promise<void> {
    this.instructors.value = (await this.line.ask<{ instructors: Instructor[] }>('GET', 'instructors')).instructors;
  }
}
