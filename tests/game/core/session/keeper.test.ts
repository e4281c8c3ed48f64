import { beforeAll, describe, expect, it } from 'vitest';
import { entryOf, type StoredAttempt } from '../../../../game/core/session/shelf.ts';
import { CrankClock } from '../../support/crank-clock.ts';
import { MapStores } from '../../support/map-stores.ts';
import { TestBench } from '../../support/test-bench.ts';

/** An attempt of a second, as the bench keeps it. */
let good: StoredAttempt;

beforeAll(async () => {
  const bench = new TestBench();
  bench.session.chooseExercise('straight-run');
  bench.wait(0.1).press(0, 5).wait(1).release();
  bench.session.finish();
  await bench.result();
  [good] = [...bench.stores.attemptRecords.values()] as StoredAttempt[];
}, 60_000);

function stored(n: number, more: Partial<StoredAttempt> = {}): StoredAttempt {
  return { ...good, id: `kept-${n}`, made_ms: Date.UTC(2026, 1, 1, 8, n), ...more };
}

/** A store with records in it, each with its entry unless it is spoilt. */
function storeOf(records: readonly { id: string }[], entries = true): MapStores {
  const stores = new MapStores();
  for (const record of records) {
    stores.attemptRecords.set(record.id, structuredClone(record));
    if (entries && 'result' in record) stores.entryRecords.set(record.id, entryOf(record as StoredAttempt));
  }
  return stores;
}

describe('the shelf', () => {
  it('keeps an attempt when it ends and its verdict when it is judged', () => {
    expect(good.result?.verdict).toBe('no verdict');
    expect(good.title).toMatch(/Straight run/);
    expect(good.recording.ended).toBe('stopped');
  });

  it('lists five hundred attempts without reading one of them', async () => {
    const records = Array.from({ length: 500 }, (_, n) => stored(n));
    const stores = storeOf(records);
    const bench = await new TestBench({ stores }).settle();
    expect(bench.state.shelf.value.length).toBe(500);
    expect(bench.state.shelf.value[0].id).toBe('kept-499');
    expect(stores.reads).toBe(0);
  });

  it('makes entries of attempts kept before there were any, once', async () => {
    const stores = storeOf([stored(1), stored(2)], false);
    const bench = await new TestBench({ stores }).settle();
    expect(bench.state.shelf.value.map((entry) => entry.verdict)).toEqual(['no verdict', 'no verdict']);
    expect(stores.reads).toBe(2);
    await new TestBench({ stores }).settle();
    expect(stores.reads).toBe(2);
  });

  it('names spoilt records, keeps them, and lists the good ones', async () => {
    const { recording, result: _, ...rest } = stored(3);
    const without = { ...rest, result: null, recording: undefined };
    const spoiltId = { id: 'a number', recording: 7, made_ms: 'never' };
    const stores = storeOf(
      [
        stored(1),
        without,
        spoiltId,
        stored(5, { recording: { ...recording, poses: { ...recording.poses, u: [1.5] } } }),
        stored(2),
      ],
      false,
    );
    stores.entryRecords.clear();
    stores.entryRecords.set('kept-1', entryOf(stored(1)));
    stores.entryRecords.set('kept-2', { id: 'kept-2', made_ms: 'spoilt entry' });
    stores.attemptRecords.set('unreadable', {});
    stores.unreadable.add('unreadable');
    const bench = await new TestBench({ stores }).settle();
    const damaged = Object.fromEntries(bench.state.shelf.value.map((entry) => [entry.id, entry.damaged]));
    expect(damaged).toEqual({
      'kept-1': null,
      'kept-2': null,
      'kept-3': expect.any(String),
      'a number': expect.stringContaining('made_ms'),
      'kept-5': expect.stringContaining('poses'),
      unreadable: 'the record cannot be read',
    });
    expect(stores.attemptRecords.size).toBe(6);
    expect(bench.state.problem.value).toBeNull();

    await bench.session.keeper.saveRaw('a number');
    expect(bench.saved.at(-1)).toEqual({
      name: 'a_number.damaged.json',
      content: { kept: { id: 'a number', recording: 7, made_ms: 'never' } },
    });
    await bench.session.keeper.forget('a number');
    expect(stores.attemptRecords.has('a number')).toBe(false);
  });

  it('finds a record that is spoilt inside when it is opened, and leaves the bench as it was', async () => {
    const spoilt = stored(1, { recording: { ...good.recording, rate_Hz: 50 as 100 } });
    const bench = await new TestBench({ stores: storeOf([spoilt, stored(2)]) }).settle();
    expect(bench.state.shelf.value.every((entry) => entry.damaged === null)).toBe(true);
    await bench.session.opener.kept('kept-1');
    expect(bench.state.problem.value).toMatchObject({ code: 'input' });
    expect(bench.state.busy.value).toBeNull();
    expect(bench.state.shelf.value.find((entry) => entry.id === 'kept-1')?.damaged).toContain('rate_Hz');
    await bench.session.opener.beside('kept-1');
    expect(bench.state.other.value).toBeNull();
  });

  it('says that the disk is full, and loses nothing', async () => {
    const bench = await new TestBench({ stores: storeOf([stored(1)]) }).settle();
    bench.session.chooseExercise('straight-run');
    bench.wait(0.1).press(0, 5);
    bench.stores.full = true;
    bench.wait(2.2);
    await bench.settle();
    expect(bench.state.problem.value).toEqual({ code: 'storage-full' });
    bench.state.problem.value = null;
    bench.wait(1.2);
    await bench.settle();
    // Said once while welding, and once more when the attempt has ended.
    expect(bench.state.problem.value).toBeNull();
    bench.release();
    bench.session.finish();
    await bench.result();
    expect(bench.state.problem.value).toEqual({ code: 'storage-full' });
    expect(bench.state.finished.value).not.toBeNull();
    expect(bench.state.shelf.value.map((entry) => entry.id)).toEqual(['kept-1']);
    bench.session.save();
    expect(bench.saved.length).toBe(1);
  }, 60_000);

  it('says that a browser keeps nothing, and welds all the same', async () => {
    const stores = new MapStores();
    stores.closed = true;
    const bench = await new TestBench({ stores }).settle();
    expect(bench.state.problem.value).toEqual({ code: 'no-store' });
    bench.press(0, 5).wait(0.3).release();
    bench.session.finish();
    await bench.finished();
  });

  it('shows what another tab has kept, and tells it of its own', async () => {
    const bench = await new TestBench().settle();
    expect(bench.state.shelf.value).toEqual([]);
    await bench.stores.attempts.put(stored(1), entryOf(stored(1)));
    bench.otherTab();
    await bench.settle();
    expect(bench.state.shelf.value.length).toBe(1);
    await bench.session.keeper.forget('kept-1');
    expect(bench.told).toBe(1);
  });

  it.each([
    [false, true, 1, null],
    [false, false, 1, 'may-be-cleared'],
    [true, true, 0, null],
    [null, null, 0, null],
  ] as const)('granted %s, answer %s: asks %i times, notice %s', async (granted, answer, asked, notice) => {
    const bench = await new TestBench({ length_mm: 20, persistence: { granted, answer } }).settle();
    expect(bench.asked).toBe(0);
    for (let n = 0; n < 2; n++) {
      bench.press(0, 5).wait(0.3).release();
      bench.session.finish();
      await bench.finished();
      await bench.settle();
      bench.session.again();
      bench.wait(0.1);
    }
    expect(bench.asked).toBe(asked);
    expect(bench.state.notice.value).toBe(notice);
    expect(bench.state.persistent.value).toBe(granted === false ? answer : granted);
  });
});

describe('an attempt left in mid-weld', () => {
  it('is offered at the next start, up to its last second, welds again and is kept as interrupted', async () => {
    const first = await new TestBench().settle();
    first.session.chooseExercise('straight-run');
    first.wait(0.1);
    first.press(0, 4).follow((t_s) => ({ u_mm: 0, y_mm: 4 + 2 * t_s }), 4.4);
    await first.settle();
    // The page is gone: nothing of it runs any more, only what it had stored is left.
    const stores = first.stores;
    expect(stores.attemptRecords.size).toBe(0);

    const clock = new CrankClock(first.clock.now_ms() + 10_000);
    const next = await new TestBench({ stores, clock }).settle();
    const [left] = next.state.unfinished.value;
    expect(left).toMatchObject({ duration_s: 4, damaged: null, otherEngine: false });
    expect(left.title).toMatch(/Straight run/);
    expect(next.state.shelf.value).toEqual([]);

    await next.session.opener.unfinished(left.id);
    const done = await next.finished();
    expect(done.recording.ended).toBe('interrupted');
    expect(done.id).toBe(left.id);
    expect(done.recording.exercise).toMatchObject({ name: 'straight-run' });
    expect(done.hash).toBe(done.recording.stateHash);
    const { y, trigger } = done.recording.poses;
    expect(trigger.slice(0, 400).every((t) => t === 1)).toBe(true);
    for (const n of [100, 250, 399]) expect(y[n] / 100).toBeCloseTo(4 + 2 * (n / 100), 1);
    await next.result();
    expect(next.state.unfinished.value).toEqual([]);
    expect(stores.heads.size + stores.chunkRecords.size).toBe(0);
    expect(next.state.shelf.value.map((entry) => entry.id)).toEqual([left.id]);
  }, 60_000);

  it('is not offered while another tab is still welding it, and is once that has stopped', async () => {
    const one = await new TestBench({ length_mm: 20 }).settle();
    one.press(0, 4).wait(2.1);
    await one.settle();
    const two = await new TestBench({ stores: one.stores, clock: one.clock }).settle();
    expect(two.state.unfinished.value).toEqual([]);
    one.benches[0].mute = true;
    one.clock.crank(4000);
    await two.settle();
    expect(two.state.unfinished.value.length).toBe(1);
  });

  it('is taken up to the first gap where a chunk is lost, and said to be spoilt where its head is', async () => {
    const one = await new TestBench({ length_mm: 20 }).settle();
    one.press(0, 4).wait(3.2);
    await one.settle();
    const { stores } = one;
    const [id] = [...stores.heads.keys()];
    const chunks = stores.chunkRecords.get(id)!;
    expect(chunks.map((chunk) => chunk.from)).toEqual([0, 100, 200]);
    stores.chunkRecords.set(id, [chunks[2], chunks[0]]);
    stores.heads.set('spoilt', { id: 'spoilt', made_ms: 1 });
    const next = await new TestBench({ stores, clock: new CrankClock(one.clock.now_ms() + 9000) }).settle();
    expect(next.state.unfinished.value.map((u) => [u.id, u.damaged])).toEqual([
      [id, null],
      ['spoilt', expect.any(String)],
    ]);
    await next.session.opener.unfinished('spoilt');
    expect(next.state.problem.value).toMatchObject({ code: 'input' });
    await next.session.opener.unfinished(id);
    expect((await next.finished()).recording.poses.u.length).toBe(100 + 150);
    await next.session.keeper.forget('spoilt');
    expect(stores.heads.has('spoilt')).toBe(false);
  }, 60_000);

  it('stays when the user takes another exercise in mid-weld', async () => {
    const bench = await new TestBench().settle();
    bench.press(0, 4).wait(2.1);
    bench.session.chooseExercise('lap-5');
    bench.wait(0.2);
    await bench.settle();
    expect(bench.state.torchState.value).toBe('idle');
    expect(bench.state.unfinished.value).toMatchObject([{ duration_s: 2 }]);
  });
});

describe('a bench that falls silent', () => {
  it('is noticed within a second and said; another takes its place and the poses are kept', async () => {
    const bench = await new TestBench({ length_mm: 20 }).settle();
    bench.press(0, 4).wait(3.1);
    await bench.settle();
    bench.benches[0].mute = true;
    bench.wait(0.95);
    await bench.settle();
    expect(bench.state.problem.value).toEqual({ code: 'bench-silent', kept_s: 3 });
    expect(bench.benches.map((b) => b.closed)).toEqual([true, false]);
    expect(bench.state.torchState.value).toBe('idle');
    const [left] = bench.state.unfinished.value;
    expect(left).toMatchObject({ duration_s: 3 });
    await bench.session.opener.unfinished(left.id);
    expect((await bench.finished()).recording.ended).toBe('interrupted');
  }, 60_000);

  it('is noticed while it welds a recording again', async () => {
    const bench = await new TestBench({ stores: storeOf([stored(1)]) }).settle();
    await bench.session.opener.kept('kept-1');
    bench.benches[0].mute = true;
    bench.wait(0.95);
    await bench.settle();
    expect(bench.state.problem.value).toEqual({ code: 'bench-silent', kept_s: null });
    expect(bench.state.busy.value).toBeNull();
  });

  it('is not blamed for a page that stood still, nor for having nothing to do', async () => {
    const bench = await new TestBench().settle();
    bench.wait(30);
    expect(bench.state.problem.value).toBeNull();
    bench.press(0, 4).wait(1);
    for (let n = 0; n < 5; n++) {
      bench.clock.spend(2000);
      bench.wait(0.05);
    }
    await bench.settle();
    expect(bench.state.problem.value).toBeNull();
  });
});
