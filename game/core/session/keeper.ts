import type { Recording } from '../../../engine/index.ts';
import { InputError, type Result } from '../../../scoring/index.ts';
import type { PoseColumns } from '../bench/pose-chunk.ts';
import type { AttemptMeta } from '../bench/protocol.ts';
import type { Ports } from '../ports.ts';
import { type PracticeRecord, readPractice } from '../practice/record.ts';
import { attemptsIn, logbookName, logbookOf, practiceIn, type TakenLogbook } from './logbook-file.ts';
import { problemOfStore } from './problem.ts';
import type { Removed } from './removed.ts';
import {
  type AttemptEntry,
  damagedEntry,
  entryFrom,
  entryOf,
  readAttempt,
  readEntry,
  type StoredAttempt,
  whyDamaged,
} from './shelf.ts';
import { exerciseOf, type Finished, type State } from './state.ts';
import { type DraftHead, headOf, LEFT_MS, recordingOf, unfinishedOf } from './unfinished.ts';

/**
 * Keeps every attempt in the browser: while it is welded, second by second, and whole when it has ended. Lists them without reading
 * them; a record that is spoilt is named, kept and can be saved as it is.
 */
export class Keeper {
  private draft: DraftHead | null = null;
  /** One write after the other: a chunk may not overtake the one before it. */
  private writing: Promise<void> = Promise.resolve();
  private toldFull = false;
  private reading: Promise<void> = Promise.resolve();
  private next: Promise<void> | null = null;
  private lookAgain: () => void = () => undefined;

  constructor(
    private readonly ports: Pick<
      Ports,
      'attempts' | 'clock' | 'coupons' | 'tabs' | 'persistence' | 'files' | 'practice'
    >,
    private readonly state: State,
  ) {
    ports.tabs.hear(() => void this.refresh());
  }

  /** An attempt begins: from now on its poses are kept as they come. */
  begin(id: string, made_ms: number, meta: AttemptMeta, simulation: Recording['simulation']): void {
    this.draft = headOf(id, made_ms, meta, simulation);
    this.toldFull = false;
  }

  /** Poses of the attempt under way. */
  poses(from: number, poses: PoseColumns): void {
    const { draft } = this;
    if (!draft) return;
    draft.poses = from + poses.u.length;
    draft.last_ms = this.ports.clock.date_ms();
    const head = { ...draft };
    this.writing = this.writing.then(async () => {
      try {
        await this.ports.attempts.putChunk(head, { id: head.id, from, poses });
      } catch (error) {
        // Said once; the weld goes on, and can be saved as a file when it has ended.
        if (!this.toldFull) this.state.problem.value = problemOfStore(error);
        this.toldFull = true;
      }
    });
  }

  /** The attempt under way is no longer this page's: what was kept of it stays, to be taken up again. */
  async abandon(): Promise<number> {
    const head = this.draft;
    if (!head) return 0;
    this.draft = null;
    await this.writing;
    // Marked as left long ago: nobody has to wait whether another tab goes on with it.
    if (head.poses > 0) await this.ports.attempts.putChunk({ ...head, last_ms: 0 }, null).catch(() => undefined);
    await this.refresh();
    return head.poses;
  }

  /** Keeps a finished attempt; what was kept of it while it was welded goes. */
  async keep(done: Finished, result: Result | null): Promise<void> {
    if (this.draft?.id === done.id) this.draft = null;
    await this.writing;
    const { id, made_ms, recording } = done;
    const attempt = { id, made_ms, title: exerciseOf(recording)?.title ?? null, recording, result };
    try {
      await this.ports.attempts.put(attempt, entryOf(attempt));
    } catch (error) {
      this.state.problem.value = problemOfStore(error);
      return;
    }
    this.ports.tabs.tell();
    await this.refresh();
    await this.askToStay();
  }

  /** @throws InputError when the record is spoilt; the list then says so */
  async load(id: string): Promise<StoredAttempt | null> {
    const { attempts } = this.ports;
    const kept = await attempts.get(id);
    if (kept === undefined) return null;
    try {
      return readAttempt(id, kept);
    } catch (error) {
      await attempts.putEntry(damagedEntry(id, kept, whyDamaged(error)));
      await this.refresh();
      throw error;
    }
  }

  /** Puts an unfinished attempt together. @throws InputError */
  async take(id: string): Promise<{ made_ms: number; recording: Recording }> {
    const { attempts } = this.ports;
    return recordingOf(await attempts.draft(id), await attempts.chunks(id));
  }

  /** Hands a record to the user as it is, spoilt or not. */
  async saveRaw(id: string): Promise<void> {
    const { attempts, files } = this.ports;
    try {
      const kept = (await attempts.get(id)) ?? { draft: await attempts.draft(id), chunks: await attempts.chunks(id) };
      files.save({ kept }, `${id.replace(/[^\w-]/g, '_')}.damaged.json`);
    } catch (error) {
      this.state.problem.value = problemOfStore(error);
    }
  }

  /** Makes the entries anew that were kept before there was a logbook, so that it can draw them. */
  async fillReadings(): Promise<void> {
    const lacking = this.state.shelf.value.filter((e) => e.damaged === null && e.verdict && e.readings === undefined);
    if (lacking.length === 0) return;
    for (const { id } of lacking) await this.readNew(id);
    await this.refresh();
  }

  /** Hands the whole shelf to the user as one file; records that are spoilt are left out and counted. */
  async saveLogbook(): Promise<void> {
    const attempts: StoredAttempt[] = [];
    let leftOut = 0;
    try {
      for (const { id } of this.state.shelf.value) {
        try {
          const kept = await this.load(id);
          if (kept) attempts.push(kept);
        } catch {
          leftOut += 1;
        }
      }
    } finally {
      if (leftOut > 0) this.state.problem.value = { code: 'logbook-left-out', count: leftOut };
    }
    this.ports.files.save(
      logbookOf(attempts, this.state.practice.value),
      logbookName(this.ports.clock.written(this.ports.clock.date_ms()).day),
    );
  }

  /**
   * Puts the attempts of a logbook file on the shelf. What is there already stays as it is; what cannot be read is counted, the rest is kept.
   * @throws InputError where the file is no logbook
   */
  async takeLogbook(content: unknown, name: string): Promise<TakenLogbook> {
    const taken: TakenLogbook = { added: 0, known: 0, bad: [] };
    const here = new Set(await this.ports.attempts.ids());
    for (const [i, kept] of attemptsIn(content, name).entries()) {
      const place = `attempts[${i}]`;
      try {
        const attempt = readAttempt(place, kept);
        if (here.has(attempt.id)) taken.known += 1;
        else {
          await this.ports.attempts.put(attempt, entryOf(attempt));
          here.add(attempt.id);
          taken.added += 1;
        }
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        taken.bad.push(`${place}: ${whyDamaged(error)}`);
      }
    }
    const known = new Set(this.state.practice.value.map((r) => r.id));
    for (const record of practiceIn(content, name)) if (!known.has(record.id)) await this.ports.practice.put(record);
    this.ports.tabs.tell();
    await this.refresh();
    return taken;
  }

  /** Keeps what was practised beside attempts. */
  async practised(record: PracticeRecord): Promise<void> {
    try {
      await this.ports.practice.put(record);
      this.ports.tabs.tell();
      await this.refresh();
    } catch (error) {
      this.state.problem.value = problemOfStore(error);
    }
  }

  /** Forgets what trainees with a name practised here. */
  async forgetPractice(): Promise<void> {
    for (const { id, trainee } of this.state.practice.value) if (trainee !== null) await this.ports.practice.remove(id);
    await this.refresh();
  }

  /** Takes an attempt off the shelf with all that was kept beside it. Until another is taken, or the page is left, it can be put back. */
  async forget(id: string): Promise<void> {
    const { attempts } = this.ports;
    try {
      const removed = await this.keptBeside(id).catch(() => null);
      await attempts.remove(id);
      this.state.removed.value = removed;
      this.ports.tabs.tell();
      await this.refresh();
    } catch (error) {
      this.state.problem.value = problemOfStore(error);
    }
  }

  /** An attempt and all that is kept beside it. Null for one that is damaged: what cannot be read cannot be put back. */
  private async keptBeside(id: string): Promise<Removed | null> {
    const entry = this.state.shelf.value.find((e) => e.id === id);
    if (entry?.damaged !== null) return null;
    const attempt = readAttempt(id, await this.ports.attempts.get(id));
    const practice = this.state.practice.value.filter((record) => 'attempt' in record && record.attempt === id);
    return { entry, attempt, coupons: await this.ports.coupons.of(id), practice };
  }

  /** Puts what was removed last where it was. */
  async putBack(): Promise<void> {
    const removed = this.state.removed.value;
    if (removed === null) return;
    const { attempts, coupons, practice } = this.ports;
    try {
      await attempts.put(removed.attempt, removed.entry);
      for (const coupon of removed.coupons) await coupons.put(coupon);
      for (const record of removed.practice) await practice.put(record);
      this.state.removed.value = null;
      this.ports.tabs.tell();
      await this.refresh();
    } catch (error) {
      this.state.problem.value = problemOfStore(error);
    }
  }

  /** Reads the list anew; asked while it is being read, it is read once more afterwards. */
  refresh(): Promise<void> {
    this.next ??= this.reading.then(() => {
      this.next = null;
      this.reading = this.read();
      return this.reading;
    });
    return this.next;
  }

  private async read(): Promise<void> {
    try {
      this.state.shelf.value = await this.list();
      this.state.practice.value = (await this.ports.practice.all()).flatMap((kept) => readPractice(kept) ?? []);
      await this.refreshUnfinished();
    } catch (error) {
      // What was listed stays listed: a store that fails once need not have lost anything.
      const problem = problemOfStore(error);
      this.state.problem.value = problem.code === 'not-kept' ? { code: 'no-store' } : problem;
    }
  }

  /** Entries newest first. Only an attempt without a readable entry is itself read. */
  private async list(): Promise<AttemptEntry[]> {
    const { attempts } = this.ports;
    const ids = await attempts.ids();
    const entries = new Map<string, AttemptEntry>();
    for (const kept of await attempts.entries()) {
      const entry = readEntry(kept);
      if (entry) entries.set(entry.id, entry);
    }
    const list: AttemptEntry[] = [];
    for (const id of ids) {
      const known = entries.get(id);
      list.push(known ?? (await this.readNew(id)));
    }
    return list.sort((a, b) => b.made_ms - a.made_ms);
  }

  private async readNew(id: string): Promise<AttemptEntry> {
    const { attempts } = this.ports;
    let kept: unknown;
    try {
      kept = await attempts.get(id);
    } catch (error) {
      return damagedEntry(id, null, whyDamaged(error));
    }
    const entry = entryFrom(id, kept);
    // Where this cannot be kept it is made anew next time.
    if (entry.damaged === null) await attempts.putEntry(entry).catch(() => undefined);
    return entry;
  }

  private async refreshUnfinished(): Promise<void> {
    const { attempts, clock } = this.ports;
    const now_ms = clock.date_ms();
    const heads = (await attempts.drafts()).filter((head) => (head as { id?: unknown } | null)?.id !== this.draft?.id);
    const left = heads.map((head) => unfinishedOf(head, now_ms));
    this.state.unfinished.value = left.filter((u) => u !== null).sort((a, b) => b.made_ms - a.made_ms);
    // Another tab may be welding it, or was closed a moment ago.
    this.lookAgain();
    if (left.includes(null)) this.lookAgain = clock.after(LEFT_MS, () => void this.refresh());
  }

  /** Asks once that the browser does not clear the attempts when its disk runs short, and says why. */
  private async askToStay(): Promise<void> {
    const { persistence } = this.ports;
    if (this.state.persistent.value !== false || this.state.preferences.value.persistenceAsked) return;
    this.state.setPreference('persistenceAsked', true);
    this.state.notice.value = 'asks-to-keep';
    this.state.persistent.value = await persistence.ask();
    this.state.notice.value = this.state.persistent.value ? null : 'may-be-cleared';
  }
}
