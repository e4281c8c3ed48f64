import { beforeAll, describe, expect, it } from 'vitest';
import { logsOf } from '../../../../game/core/session/logbook.ts';
import type { AttemptEntry, LoggedReading } from '../../../../game/core/session/shelf.ts';
import { MapStores } from '../../support/map-stores.ts';
import { chosen, TestBench } from '../../support/test-bench.ts';

const root = (reading: number): LoggedReading => ({
  measure: 'root fusion',
  unit: 'mm',
  reading,
  plusMinus: 0.15,
  limit: 0,
  sense: 'at least',
});

const entry = (n: number, more: Partial<AttemptEntry> = {}): AttemptEntry => ({
  id: `a${n}`,
  made_ms: n,
  title: 'Tee',
  exercise: 'tee',
  verdict: 'within',
  own: true,
  score: 50 + n,
  helped: 'with guides',
  readings: [root(n / 10)],
  damaged: null,
  ...more,
});

describe('the logbook', () => {
  it('draws judged attempts of the own hand, oldest first, and names the best within', () => {
    const shelf = [
      entry(3),
      entry(2, { score: 90 }),
      entry(9, { score: 99, verdict: 'outside' }),
      entry(1),
      entry(4, { own: false, score: 100 }),
      entry(5, { verdict: null }),
      entry(6, { damaged: 'cut off' }),
      entry(7, { exercise: 'lap', readings: undefined }),
    ];
    const [tee, lap] = logsOf(shelf);
    expect(tee!.attempts.map((e) => e.id)).toEqual(['a1', 'a2', 'a3', 'a9']);
    expect(tee!.within).toBe(3);
    expect(tee!.best?.id).toBe('a2');
    expect(tee!.series.map((s) => [s.measure, s.points.map((p) => p.of.reading)])).toEqual([
      ['root fusion', [0.1, 0.2, 0.3, 0.9]],
    ]);
    expect(lap!.exercise).toBe('lap');
    expect(lap!.series).toEqual([]);
  });
});

describe('a logbook as a file', () => {
  let bench: TestBench;
  let book: { format: string; attempts: Record<string, unknown>[] };

  beforeAll(async () => {
    bench = new TestBench();
    bench.session.chooseExercise('straight-run');
    bench.session.edit({ joint: { length_mm: 30 } });
    bench
      .wait(0.1)
      .press(0, 4)
      .follow((t_s) => ({ u_mm: 0, y_mm: 4 + 3 * Math.max(0, t_s - 1) }), 7)
      .release();
    bench.session.finish();
    await bench.result();
    await bench.session.keeper.refresh();
    await bench.session.keeper.saveLogbook();
    book = bench.saved.at(-1)!.content as typeof book;
  });

  const file = (content: unknown) =>
    chosen('book.json', typeof content === 'string' ? content : JSON.stringify(content));

  it('has the readings of every judged attempt in its entry', () => {
    const [kept] = bench.state.shelf.value;
    const { lines } = bench.state.result.value!;
    expect(kept!.readings!.length).toBe(new Set(lines.map((l) => l.measure)).size);
    for (const r of kept!.readings!) {
      const same = lines.filter((l) => l.measure === r.measure);
      const rooms = same.map((l) => (l.sense === 'at most' ? l.limit - l.reading : l.reading - l.limit));
      expect(r.sense === 'at most' ? r.limit - r.reading : r.reading - r.limit).toBe(Math.min(...rooms));
    }
  });

  it('goes onto another shelf with all it holds, once', async () => {
    expect(bench.saved.at(-1)!.name).toMatch(/^\d{4}-\d\d-\d\d_logbook\.json$/);
    const other = new TestBench({ stores: new MapStores() });
    expect(await other.session.opener.logbook(file(book))).toEqual({ added: 1, known: 0, bad: [] });
    expect(other.state.shelf.value).toEqual(bench.state.shelf.value);
    expect(await other.session.opener.logbook(file(book))).toEqual({ added: 0, known: 1, bad: [] });
    expect(other.state.shelf.value.length).toBe(1);
  });

  it('names what cannot be read and takes the rest', async () => {
    const other = new TestBench({ stores: new MapStores() });
    const mixed = { ...book, attempts: [{ id: 'x' }, ...book.attempts, null] };
    const taken = await other.session.opener.logbook(file(mixed));
    expect(taken!.added).toBe(1);
    expect(taken!.bad).toHaveLength(2);
    expect(taken!.bad[0]).toMatch(/^attempts\[0\]: /);
    expect(other.state.problem.value).toBeNull();
  });

  it.each([
    ['another file', { format: 'toehold-result' }, /format/],
    ['cut off', '{"format":"toehold-logbook","att', /cut off/],
    ['empty', '', /empty file/],
  ])('refuses what is no logbook: %s', async (_, content, why) => {
    const other = new TestBench({ stores: new MapStores() });
    expect(await other.session.opener.logbook(file(content))).toBeNull();
    const problem = other.state.problem.value;
    expect(problem?.code).toBe('input');
    expect(problem?.code === 'input' && problem.error.message).toMatch(why);
    expect(other.state.shelf.value).toEqual([]);
  });

  it('leaves out a spoilt record and says so; one entry of before there was a logbook gets its readings', async () => {
    const other = new TestBench({ stores: new MapStores() });
    await other.session.opener.logbook(file(book));
    const [known] = other.state.shelf.value;
    const { readings, ...older } = known!;
    await other.stores.attempts.putEntry(older);
    await other.session.keeper.refresh();
    expect(other.state.shelf.value[0]!.readings).toBeUndefined();
    await other.session.keeper.fillReadings();
    expect(other.state.shelf.value[0]!.readings).toEqual(readings);
  });
});
