import { signal } from '@preact/signals-core';
import { InputError } from '../../../scoring/index.ts';
import { type Line, type Me, Refused } from '../line.ts';
import type {
  Assignment,
  ClassInfo,
  ClassTable,
  Differences,
  Handed,
  MarkRow,
  Now,
  OneHanded,
  Records,
  Trainee,
} from './answers.ts';
import { House } from './house.ts';

/** How much is handed in and scored, as told while it happens. */
export interface Progress {
  handed: number;
  scored: number;
}

/** Listens to a class; returns what ends it. */
export type Listen = (
  path: string,
  heard: { progress(told: Progress): void; now(told: Now): void },
  open: (is: boolean) => void,
) => () => void;

/** An instructor's desk: what the pages show as signals, what can be done as methods. */
export class Desk {
  readonly me = signal<Me | null>(null);
  readonly classes = signal<ClassInfo[]>([]);
  readonly open = signal<ClassInfo | null>(null);
  readonly roster = signal<Trainee[]>([]);
  /** Names of those who teach the class. */
  readonly teachers = signal<string[]>([]);
  readonly assignments = signal<Assignment[]>([]);
  readonly attempts = signal<Handed[]>([]);
  readonly looked = signal<OneHanded | null>(null);
  readonly table = signal<ClassTable | null>(null);
  readonly marks = signal<{ assignment: string; rows: MarkRow[] } | null>(null);
  readonly progress = signal<Progress>({ handed: 0, scored: 0 });
  readonly live = signal(false);
  /** Who welds and whose attempts wait. */
  readonly now = signal<Now>({ welding: [], waiting: [] });
  readonly records = signal<Records | null>(null);
  readonly differences = signal<Differences | null>(null);
  /** Said once after something was done. */
  readonly said = signal<string | null>(null);
  readonly refusal = signal<Refused | InputError | 'no answer' | null>(null);
  readonly house: House;
  private hush: () => void = () => undefined;

  constructor(
    private readonly line: Line,
    private readonly listen: Listen,
  ) {
    this.house = new House(line, (run) => this.trying(run));
  }

  look(): Promise<boolean> {
    return this.trying(async () => this.settle(await this.line.me()));
  }

  enter(path: 'setup' | 'login', body: object): Promise<boolean> {
    return this.trying(async () => this.settle(await this.line.enter(path, body)));
  }

  leave(): Promise<boolean> {
    return this.trying(async () => {
      await this.line.ask('POST', 'leave');
      this.close();
      this.house.forget();
      await this.settle(await this.line.me());
    });
  }

  makeClass(name: string): Promise<boolean> {
    return this.trying(async () => {
      const made = await this.line.ask<ClassInfo>('POST', 'classes', { name });
      await this.readClasses();
      await this.show(made);
    });
  }

  openClass(info: ClassInfo): Promise<boolean> {
    return this.trying(() => this.show(info));
  }

  close(): void {
    this.hush();
    this.open.value = null;
    this.looked.value = null;
    this.marks.value = null;
    this.table.value = null;
    this.records.value = null;
    this.differences.value = null;
    this.now.value = { welding: [], waiting: [] };
  }

  /** @returns what the lab says of it, or null where it was refused */
  async addToRoster(
    given: { csv: string } | { users: string; enrollments: string; classSourcedId?: string },
  ): Promise<{ added: number; known: number } | null> {
    let came: { added: number; known: number } | null = null;
    await this.trying(async () => {
      came = await this.line.ask('POST', this.path('roster'), given);
      await this.readRoster();
    });
    return came;
  }

  /** Erases a trainee with everything of theirs. */
  erase(trainee: Trainee): Promise<boolean> {
    return this.trying(async () => {
      await this.line.ask('DELETE', this.path(`trainees/${trainee.id}`));
      await Promise.all([this.readRoster(), this.readAttempts()]);
    });
  }

  showRecords(): Promise<boolean> {
    return this.trying(async () => {
      const [{ trail }, versions, retention] = await Promise.all([
        this.line.ask<Pick<Records, 'trail'>>('GET', this.path('audit')),
        this.line.ask<Pick<Records, 'current' | 'versions'>>('GET', this.path('versions')),
        this.line.ask<Records['retention']>('GET', this.path('retention')),
      ]);
      this.records.value = { trail, ...versions, retention };
    });
  }

  /** What an earlier version judged differently from the one at work. */
  compareWith(version: { engine: string; scoring: string }): Promise<boolean> {
    return this.trying(async () => {
      const asked = new URLSearchParams({ engine: version.engine, scoring: version.scoring });
      this.differences.value = await this.line.ask('GET', this.path(`differences?${asked}`));
    });
  }

  async givePin(trainee: Trainee): Promise<string | null> {
    let given: string | null = null;
    await this.trying(async () => {
      given = (await this.line.ask<{ pin: string }>('POST', this.path(`trainees/${trainee.id}/pin`))).pin;
      await this.readRoster();
    });
    return given;
  }

  change(change: Partial<Pick<ClassInfo, 'pins' | 'marks'>>): Promise<boolean> {
    return this.trying(async () => {
      await this.line.ask('PATCH', this.path(), change);
      const { classes } = await this.readClasses();
      this.open.value = classes.find((c) => c.id === this.open.value?.id) ?? null;
      if (this.marks.value) await this.readMarks(this.marks.value.assignment);
    });
  }

  addTeacher(name: string): Promise<boolean> {
    return this.trying(async () => {
      await this.line.ask('POST', this.path('teachers'), { name });
      await this.readTeachers();
    });
  }

  /** @param asked a ready exercise by name, or the content of an own one */
  handOut(asked: {
    exercise: string | Record<string, unknown>;
    opens: string;
    closes: string | null;
    mostAttempts: number | null;
  }) {
    return this.trying(async () => {
      await this.line.ask('POST', this.path('assignments'), asked);
      await this.readAssignments();
    });
  }

  lookAt(id: string | null): Promise<boolean> {
    return this.trying(async () => {
      this.looked.value = id === null ? null : await this.line.ask('GET', this.path(`attempts/${id}`));
    });
  }

  showMarks(assignment: string): Promise<boolean> {
    return this.trying(() => this.readMarks(assignment));
  }

  setMark(trainee: string, mark: number | null, reason: string): Promise<boolean> {
    return this.trying(async () => {
      const assignment = this.marks.value?.assignment ?? '';
      await this.line.ask('POST', this.path(`assignments/${assignment}/marks/${trainee}`), { mark, reason });
      await this.readMarks(assignment);
    });
  }

  showTable(): Promise<boolean> {
    return this.trying(async () => {
      this.table.value = await this.line.ask('GET', this.path('table'));
    });
  }

  /** Address of something to be saved. */
  address(what: string): string {
    return `../api/${this.path(what)}`;
  }

  private async settle(me: Me): Promise<void> {
    this.me.value = me;
    if (me.role === 'instructor') await Promise.all([this.readClasses(), this.house.read(me.keeper)]);
  }

  private async show(info: ClassInfo): Promise<void> {
    this.close();
    this.open.value = info;
    await Promise.all([this.readRoster(), this.readTeachers(), this.readAssignments(), this.readAttempts()]);
    this.hush = this.listen(
      `../api/${this.path('live')}`,
      {
        progress: (progress) => {
          this.progress.value = progress;
          void this.trying(async () => {
            await this.readAttempts();
            if (this.table.value) await this.showTable();
            if (this.marks.value) await this.readMarks(this.marks.value.assignment);
          });
        },
        now: (now) => {
          this.now.value = now;
        },
      },
      (is) => {
        this.live.value = is;
      },
    );
  }

  private path(of = ''): string {
    return `classes/${this.open.value?.id ?? ''}${of === '' ? '' : `/${of}`}`;
  }

  private async readClasses(): Promise<{ classes: ClassInfo[] }> {
    const said = await this.line.ask<{ classes: ClassInfo[] }>('GET', 'classes');
    this.classes.value = said.classes;
    return said;
  }

  private async readRoster(): Promise<void> {
    this.roster.value = (await this.line.ask<{ trainees: Trainee[] }>('GET', this.path('roster'))).trainees;
  }

  private async readTeachers(): Promise<void> {
    this.teachers.value = (await this.line.ask<{ teachers: string[] }>('GET', this.path('teachers'))).teachers;
  }

  private async readAssignments(): Promise<void> {
    const said = await this.line.ask<{ assignments: Assignment[] }>('GET', this.path('assignments'));
    this.assignments.value = said.assignments;
  }

  private async readAttempts(): Promise<void> {
    this.attempts.value = (await this.line.ask<{ attempts: Handed[] }>('GET', this.path('attempts'))).attempts;
  }

  private async readMarks(assignment: string): Promise<void> {
    const { marks } = await this.line.ask<{ marks: MarkRow[] }>('GET', this.path(`assignments/${assignment}/marks`));
    this.marks.value = { assignment, rows: marks };
  }

  private async trying(run: () => Promise<void>): Promise<boolean> {
    try {
      await run();
      this.refusal.value = null;
      return true;
    } catch (error) {
      this.refusal.value = error instanceof Refused || error instanceof InputError ? error : 'no answer';
      // The session has ended, here or in another tab.
      if (error instanceof Refused && error.status === 401 && this.me.value?.role === 'instructor') {
        this.close();
        this.me.value = await this.line.me().catch(() => null);
      }
      return false;
    }
  }
}
