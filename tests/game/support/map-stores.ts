import type { AttemptStore, CouponStore, PracticeStore, ScoreStore } from '../../../game/core/ports.ts';
import { idOf } from '../../../game/core/practice/record.ts';
import type { StoredCoupon } from '../../../game/core/session/shelf.ts';
import type { DraftChunk } from '../../../game/core/session/unfinished.ts';

/** As a browser says that its disk is full. */
function full(): Error {
  return new DOMException('the disk is full', 'QuotaExceededError');
}

/** Stores in memory that copy what they are given, as a browser's do. `full` refuses to write; `unreadable` ids throw when read. */
export class MapStores {
  readonly attemptRecords = new Map<string, unknown>();
  readonly entryRecords = new Map<string, unknown>();
  readonly couponRecords = new Map<string, StoredCoupon>();
  readonly scoreRecords = new Map<string, unknown>();
  readonly practiceRecords = new Map<string, unknown>();
  readonly heads = new Map<string, unknown>();
  readonly chunkRecords = new Map<string, DraftChunk[]>();
  readonly unreadable = new Set<string>();
  full = false;
  closed = false;
  /** Attempts read in full. */
  reads = 0;

  private check(writing: boolean): void {
    if (this.closed) throw new DOMException('no store here', 'InvalidStateError');
    if (writing && this.full) throw full();
  }

  readonly attempts: AttemptStore = {
    put: async (attempt, entry) => {
      this.check(true);
      this.attemptRecords.set(attempt.id, structuredClone(attempt));
      this.entryRecords.set(entry.id, structuredClone(entry));
      this.heads.delete(attempt.id);
      this.chunkRecords.delete(attempt.id);
    },
    get: async (id) => {
      this.check(false);
      this.reads += 1;
      if (this.unreadable.has(id)) throw new DOMException('the record cannot be read', 'DataError');
      return structuredClone(this.attemptRecords.get(id));
    },
    ids: async () => {
      this.check(false);
      return [...this.attemptRecords.keys()];
    },
    entries: async () => {
      this.check(false);
      return structuredClone([...this.entryRecords.values()]);
    },
    putEntry: async (entry) => {
      this.check(true);
      this.entryRecords.set(entry.id, structuredClone(entry));
    },
    remove: async (id) => {
      this.check(false);
      for (const records of [this.attemptRecords, this.entryRecords, this.heads, this.chunkRecords]) records.delete(id);
      for (const [key, coupon] of this.couponRecords) if (coupon.attempt === id) this.couponRecords.delete(key);
      for (const kind of ['judgement', 'retention'] as const) this.practiceRecords.delete(idOf(kind, id));
    },
    putChunk: async (head, chunk) => {
      this.check(true);
      this.heads.set(head.id, structuredClone(head));
      if (chunk) this.chunkRecords.set(head.id, [...(this.chunkRecords.get(head.id) ?? []), structuredClone(chunk)]);
    },
    drafts: async () => {
      this.check(false);
      return structuredClone([...this.heads.values()]);
    },
    draft: async (id) => structuredClone(this.heads.get(id)),
    chunks: async (id) => structuredClone(this.chunkRecords.get(id) ?? []),
  };

  readonly scores: ScoreStore = {
    get: async (key) => {
      this.check(false);
      return structuredClone(this.scoreRecords.get(key));
    },
    put: async (key, score) => {
      this.check(true);
      this.scoreRecords.set(key, structuredClone(score));
    },
    clear: async () => {
      this.check(true);
      this.scoreRecords.clear();
    },
  };

  readonly practice: PracticeStore = {
    put: async (record) => {
      this.check(true);
      this.practiceRecords.set(record.id, structuredClone(record));
    },
    all: async () => {
      this.check(false);
      return structuredClone([...this.practiceRecords.values()]);
    },
    remove: async (id) => {
      this.check(false);
      this.practiceRecords.delete(id);
    },
  };

  readonly coupons: CouponStore = {
    put: async (coupon) => {
      this.check(true);
      this.couponRecords.set(coupon.id, structuredClone(coupon));
    },
    of: async (attempt) => {
      this.check(false);
      return structuredClone([...this.couponRecords.values()].filter((coupon) => coupon.attempt === attempt));
    },
  };
}
