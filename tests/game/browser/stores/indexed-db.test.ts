import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { indexedDbStores } from '../../../../game/browser/stores/indexed-db.ts';
import type { AttemptEntry, StoredAttempt, StoredCoupon } from '../../../../game/core/session/shelf.ts';
import type { DraftHead } from '../../../../game/core/session/unfinished.ts';

const entry = (id: string): AttemptEntry => ({
  id,
  made_ms: 1,
  title: null,
  exercise: null,
  verdict: null,
  own: true,
  helped: 'without guides',
  damaged: null,
});
// The store judges nothing it is given.
const attempt = (id: string) => ({ id, made_ms: 1, anything: [1, 2] }) as unknown as StoredAttempt;
const head = (id: string) => ({ id, poses: 0 }) as unknown as DraftHead;
const chunk = (id: string, from: number) => ({
  id,
  from,
  poses: { u: [from], y: [], tip: [], work: [], travel: [], trigger: [] },
});

describe('the store in the browser', () => {
  it('keeps scores of a class under what they stand for, until they are let go of', async () => {
    const { scores } = indexedDbStores('scores');
    await scores.put('bytes judge 0.4.0 0.5.0', { verdict: 'within' });
    expect(await scores.get('bytes judge 0.4.0 0.5.0')).toEqual({ verdict: 'within' });
    expect(await scores.get('bytes judge 0.4.0 0.6.0')).toBeUndefined();
    await scores.clear();
    expect(await scores.get('bytes judge 0.4.0 0.5.0')).toBeUndefined();
  });

  it('keeps attempts with their entries, and takes everything under an id away together', async () => {
    const { attempts, coupons } = indexedDbStores('one');
    await attempts.put(attempt('a'), entry('a'));
    await attempts.put(attempt('b'), entry('b'));
    await coupons.put({ id: 'a@20', attempt: 'a' } as unknown as StoredCoupon);
    await coupons.put({ id: 'b@20', attempt: 'b' } as unknown as StoredCoupon);
    await attempts.putChunk(head('a'), chunk('a', 0));
    expect(await attempts.ids()).toEqual(['a', 'b']);
    expect(await attempts.get('a')).toEqual(attempt('a'));
    await attempts.remove('a');
    expect(await attempts.ids()).toEqual(['b']);
    expect((await attempts.entries()).length).toBe(1);
    expect(await coupons.of('a')).toEqual([]);
    expect((await coupons.of('b')).length).toBe(1);
    expect(await attempts.drafts()).toEqual([]);
    expect(await attempts.chunks('a')).toEqual([]);
  });

  it('keeps chunks of an attempt under way apart from those of another whose id begins alike', async () => {
    const { attempts } = indexedDbStores('two');
    await attempts.putChunk(head('x'), chunk('x', 100));
    await attempts.putChunk(head('x'), chunk('x', 0));
    await attempts.putChunk(head('xy'), chunk('xy', 0));
    await attempts.putChunk({ ...head('x'), poses: 200 }, null);
    expect((await attempts.chunks('x')).map((c) => (c as { from: number }).from)).toEqual([0, 100]);
    expect(await attempts.draft('x')).toMatchObject({ poses: 200 });
    await attempts.put(attempt('x'), entry('x'));
    expect(await attempts.chunks('x')).toEqual([]);
    expect((await attempts.drafts()).length).toBe(1);
    expect((await attempts.chunks('xy')).length).toBe(1);
  });

  it('keeps all of a change or nothing', async () => {
    const { attempts } = indexedDbStores('three');
    const uncloneable = { ...entry('u'), title: (() => '') as unknown as string };
    await expect(attempts.put(attempt('u'), uncloneable)).rejects.toThrow();
    expect(await attempts.ids()).toEqual([]);
  });

  it('opens a store of the first version with what is in it', async () => {
    const old = await openDB('four', 1, {
      upgrade: (db) => void db.createObjectStore('attempts', { keyPath: 'id' }).createIndex('made', 'made_ms'),
    });
    await old.put('attempts', attempt('old'));
    old.close();
    const { attempts, coupons } = indexedDbStores('four');
    expect(await attempts.ids()).toEqual(['old']);
    expect(await attempts.entries()).toEqual([]);
    expect(await coupons.of('old')).toEqual([]);
    await attempts.put(attempt('new'), entry('new'));
    expect(await attempts.ids()).toEqual(['new', 'old']);
  });
});
