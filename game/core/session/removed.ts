import type { PracticeRecord } from '../practice/record.ts';
import type { AttemptEntry, StoredAttempt, StoredCoupon } from './shelf.ts';

/** An attempt taken off the shelf, with all that was kept beside it. */
export interface Removed {
  entry: AttemptEntry;
  attempt: StoredAttempt;
  coupons: StoredCoupon[];
  practice: PracticeRecord[];
}
