import { signal } from '@preact/signals-core';
import { Refused } from '../line.ts';

/** An attempt on its way to the lab. */
export interface Parcel {
  /** SHA-256 of the bytes with whose and what for: the same attempt for the same exercise is the same parcel. */
  key: string;
  digest: string;
  /** The lab's id of the trainee who welded it; on a shared computer nobody else may send it. */
  trainee: string;
  name: string;
  assignment: string;
  title: string;
  made_ms: number;
  bytes: Uint8Array;
  /** Why the lab will not have it; null while it waits. */
  refused: string | null;
}

/** Where parcels lie until they are acknowledged. Rejects where the browser will not store. */
export interface ParcelStore {
  put(parcel: Parcel): Promise<void>;
  all(): Promise<Parcel[]>;
  remove(key: string): Promise<void>;
}

/** What the outbox needs besides its store. */
export interface OutboxPorts {
  store: ParcelStore;
  /** Hands a parcel in. @throws Refused, or anything else when the lab cannot be reached */
  send(parcel: Parcel): Promise<void>;
  after(ms: number, run: () => void): () => void;
}

/** What becomes of the sending; said on the page. */
export type Sending = 'at rest' | 'sending' | 'no answer' | 'join again' | 'not kept';

const FIRST_WAIT_MS = 3000;
const LONGEST_WAIT_MS = 60_000;

/**
 * Attempts until the lab has acknowledged them. One leaves the store only then, so it may be sent twice and is never lost; the lab counts it once. What
 * it refuses for good stays with the reason.
 */
export class Outbox {
  readonly parcels = signal<Parcel[]>([]);
  readonly sending = signal<Sending>('at rest');
  readonly sent = signal(0);
  private trainee: string | null = null;
  private running: Promise<void> | null = null;
  private again = false;
  private wait_ms = FIRST_WAIT_MS;
  private callOff: () => void = () => undefined;

  constructor(private readonly ports: OutboxPorts) {}

  /** Whose parcels may go; null: nobody's. */
  async belongsTo(trainee: string | null): Promise<void> {
    this.trainee = trainee;
    await this.flush();
  }

  /** Kept when it returns. Where the browser will not store it, it is sent at once or not at all, and the page says so. */
  async add(parcel: Parcel): Promise<void> {
    try {
      await this.ports.store.put(parcel);
    } catch {
      await this.ports.send(parcel).then(
        () => {
          this.sent.value += 1;
        },
        () => {
          this.sending.value = 'not kept';
        },
      );
      return;
    }
    void this.flush();
  }

  /** Sends what waits, now. Asked while it is being sent, it looks once more afterwards. */
  flush(): Promise<void> {
    this.again = true;
    this.running ??= this.run().finally(() => {
      this.running = null;
    });
    return this.running;
  }

  async forget(key: string): Promise<void> {
    await this.ports.store.remove(key);
    await this.look();
  }

  private async run(): Promise<void> {
    while (this.again) {
      this.again = false;
      this.callOff();
      const parcels = await this.look();
      const mine = parcels.filter((p) => p.trainee === this.trainee && p.refused === null);
      if (!(await this.sendAll(mine))) return;
    }
  }

  /** @returns whether everything that can go has gone */
  private async sendAll(parcels: readonly Parcel[]): Promise<boolean> {
    for (const parcel of parcels) {
      this.sending.value = 'sending';
      try {
        await this.deliver(parcel);
        this.wait_ms = FIRST_WAIT_MS;
      } catch (error) {
        if (error instanceof Refused && (error.status === 401 || error.status === 403)) {
          this.sending.value = 'join again';
          return false;
        }
        if (error instanceof Refused && !error.passing) {
          await this.ports.store.put({ ...parcel, refused: error.message });
        } else {
          this.sending.value = 'no answer';
          this.callOff = this.ports.after(this.wait_ms, () => void this.flush());
          this.wait_ms = Math.min(2 * this.wait_ms, LONGEST_WAIT_MS);
          return false;
        }
      }
      await this.look();
    }
    this.sending.value = 'at rest';
    return true;
  }

  private async deliver(parcel: Parcel): Promise<void> {
    await this.ports.send(parcel);
    await this.ports.store.remove(parcel.key);
    this.sent.value += 1;
  }

  private async look(): Promise<Parcel[]> {
    this.parcels.value = (await this.ports.store.all()).sort((a, b) => a.made_ms - b.made_ms);
    return this.parcels.value;
  }
}
