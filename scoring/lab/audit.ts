import type { Who } from './sessions.ts';
import type { Db } from './store.ts';
import { audit } from './tables.ts';

/** One thing done to somebody's data. Never a secret, never a name that an erasure would have to find. */
export interface Deed {
  did: string;
  classId?: string | null;
  detail?: Record<string, unknown>;
}

/** Adds to the audit trail; in the transaction of what it tells of, so that neither is there without the other. */
export async function note(db: Db, who: Who, { did, classId = null, detail = {} }: Deed): Promise<void> {
  const id = who.role === 'instructor' || who.role === 'trainee' ? who.id : '';
  await db.insert(audit).values({ at: new Date(), role: who.role, who: id, classId, did, detail });
}
