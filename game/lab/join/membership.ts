import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { computed, effect, signal } from '@preact/signals-core';
import type { Exercise } from '../../../scoring/index.ts';
import type { Session } from '../../core/session/session.ts';
import type { Finished, State } from '../../core/session/state.ts';
import { type Line, type Me, Refused } from '../line.ts';
import { Outbox, type ParcelStore } from './outbox.ts';

/** An exercise handed out, as a trainee is told of it. */
export interface Assigned {
  id: string;
  title: string;
  closes: string | null;
  mostAttempts: number | null;
  exerciseFile: Exercise;
}

/** An own attempt as the lab has it. */
export interface Mine {
  id: string;
  assignment: string;
  number: number;
  state: 'waiting' | 'scored' | 'could not be scored';
  verdict: string | null;
}

/** How often the bench says that its arc burns, ms; the lab takes three times as long a silence for the end. */
const BEAT_MS = 6000;

/** What a membership needs of the machine. */
export interface MembershipPorts {
  store: ParcelStore;
  after(ms: number, run: () => void): () => void;
}

/** A trainee at this bench: joins by code, gets the exercises of the class, and every attempt at one is handed in when it ends. */
export class Membership {
  readonly me = signal<Me | null>(null);
  readonly assigned = signal<Assigned[]>([]);
  readonly mine = signal<Mine[]>([]);
  /** The exercise handed out that lies on the bench; null: one of the trainee's own choice, which goes nowhere. */
  readonly chosen = signal<Assigned | null>(null);
  /** Why the last thing asked for could not be done. */
  readonly refusal = signal<Refused | 'no answer' | null>(null);
  readonly joined = computed(() => this.me.value?.role === 'trainee');
  readonly outbox: Outbox;
  private struck = false;
  private telling = false;
  private readonly after: MembershipPorts['after'];
  private hush: () => void = () => undefined;

  constructor(
    private readonly line: Line,
    private readonly session: Pick<Session, 'takeExercise'>,
    state: State,
    ports: MembershipPorts,
  ) {
    this.after = ports.after;
    this.outbox = new Outbox({
      store: ports.store,
      after: ports.after,
      send: (p) => this.line.ask('PUT', `my/assignments/${p.assignment}/attempts/${p.digest}`, p.bytes),
    });
    effect(() => {
      const torch = state.torchState.value;
      this.tell(torch === 'welding');
      if (torch === 'welding') this.struck = true;
      // Taken off the bench before it had ended: nothing of it is handed in.
      else if (torch === 'idle') this.struck = false;
    });
    effect(() => {
      const done = state.finished.value;
      if (done !== null && this.struck) void this.handIn(done);
    });
    effect(() => {
      // The session has ended, by the clock or by somebody else's in this browser: the bar says so.
      if (this.outbox.sending.value === 'join again') void this.look();
    });
    effect(() => {
      // Another exercise, or another joint: what is welded now is not what was handed out.
      const asked = this.chosen.peek()?.exerciseFile;
      const { name, piece } = state.exercise.value;
      if (name !== asked?.name || piece?.seed !== asked.piece?.seed) this.chosen.value = null;
    });
  }

  /** At the start and whenever the lab may be there again. */
  async look(): Promise<void> {
    await this.trying(async () => this.settle(await this.line.me()));
  }

  async join(code: string, name: string, pin: string): Promise<void> {
    await this.trying(async () => {
      this.settle(await this.line.enter('join', { code, name, ...(pin === '' ? {} : { pin }) }));
    });
  }

  async leave(): Promise<void> {
    await this.trying(async () => {
      await this.line.ask('POST', 'leave');
      this.chosen.value = null;
      this.settle(await this.line.me());
    });
  }

  /** Lays an exercise handed out on the bench. */
  take(assigned: Assigned): void {
    this.session.takeExercise(assigned.exerciseFile);
    this.chosen.value = assigned;
  }

  /** What the lab knows of exercises and own attempts. */
  async refresh(): Promise<void> {
    if (!this.joined.value) return;
    await this.trying(async () => {
      const [{ assignments }, { attempts }] = await Promise.all([
        this.line.ask<{ assignments: Assigned[] }>('GET', 'my/assignments'),
        this.line.ask<{ attempts: Mine[] }>('GET', 'my/attempts'),
      ]);
      this.assigned.value = assignments;
      this.mine.value = attempts;
    });
  }

  /** The instructor sees who welds: said again while the arc burns, and once when it goes out. Not heard, it is only not shown. */
  private tell(welding: boolean): void {
    const told = this.telling;
    this.telling = welding;
    this.hush();
    if (this.me.peek()?.role !== 'trainee' || (!welding && !told)) return;
    void this.line.ask('POST', 'my/welding', { welding }).catch(() => undefined);
    if (welding) this.hush = this.after(BEAT_MS, () => this.tell(true));
  }

  private settle(me: Me): void {
    this.me.value = me;
    void this.outbox.belongsTo(me.role === 'trainee' ? me.id : null);
    if (me.role === 'trainee') void this.refresh();
    else {
      this.assigned.value = [];
      this.mine.value = [];
    }
  }

  private async handIn({ recording, made_ms }: Finished): Promise<void> {
    this.struck = false;
    const me = this.me.peek();
    const chosen = this.chosen.peek();
    const exercise = recording.exercise as Exercise | null;
    if (me?.role !== 'trainee' || me.id === null || chosen === null || recording.origin.kind !== 'hand') return;
    if (exercise?.name !== chosen.exerciseFile.name) return;
    const bytes = utf8ToBytes(JSON.stringify(recording));
    const digest = bytesToHex(sha256(bytes));
    await this.outbox.add({
      key: `${digest} ${chosen.id} ${me.id}`,
      digest,
      trainee: me.id,
      name: me.name ?? '',
      assignment: chosen.id,
      title: chosen.title,
      made_ms,
      bytes,
      refused: null,
    });
  }

  private async trying(run: () => Promise<void>): Promise<void> {
    try {
      await run();
      this.refusal.value = null;
    } catch (error) {
      this.refusal.value = error instanceof Refused ? error : 'no answer';
    }
  }
}
