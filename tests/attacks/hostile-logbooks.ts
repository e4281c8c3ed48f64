import { createRandom } from '../../engine/index.ts';
import { logsOf } from '../../game/core/session/logbook.ts';
import { readEntry, type StoredAttempt } from '../../game/core/session/shelf.ts';
import { dayAndTime } from '../../game/panels/when.ts';
import { scoreAttempt } from '../../scoring/index.ts';
import { chosen, TestBench } from '../game/support/test-bench.ts';
import { byMouse, weld } from '../scoring/welds.ts';
import type { Attack, Try } from './attack.ts';

const ODD: readonly unknown[] = [
  null,
  true,
  -1,
  0.5,
  1e300,
  9e15,
  '',
  'within',
  '__proto__',
  '<img src=x onerror=FORGED()>',
  '\u202e\u001b[2J',
  'x'.repeat(5000),
  [],
  [null],
  [[]],
  [{ measure: 'leg' }],
  {},
  { length: 1e9 },
  { verdict: 'within', lines: 7 },
];

let honest: StoredAttempt | null = null;
function attempt(id: string): StoredAttempt {
  if (honest === null) {
    const recording = weld({ joint: { length_mm: 30 }, weave: { length_mm: 6, shelf_s: 0 }, ...byMouse(11) });
    const made_ms = Date.UTC(2026, 2, 14, 9);
    honest = { id: 'a', made_ms, title: 'Tee', recording, result: scoreAttempt(recording) } as StoredAttempt;
  }
  return { ...structuredClone(honest), id };
}

/** Every place of a record, poses as one. */
function placesOf(value: unknown): [Record<string, unknown>, string][] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]): [Record<string, unknown>, string][] => [
    [value as Record<string, unknown>, key],
    ...(key === 'poses' || (Array.isArray(inner) && inner.length > 20) ? [] : placesOf(inner)),
  ]);
}

/** A logbook file with a record in it that was made up takes nothing from the honest ones beside it, nor from the page that lists it. */
export const hostileLogbooks: Attack = {
  name: 'hostile logbooks',
  says: 'a record with one to three values of other kinds and sizes between two honest ones; both honest ones come onto the shelf, the third is listed, named or left out by name, and every day and reading on the shelf can be written and drawn',
  share: 4,
  whole: 240,
  tries: async (n): Promise<Try> => {
    const random = createRandom(n + 1);
    const below = (count: number): number => Math.min(count - 1, Math.floor(count * random.next()));
    const spoilt = attempt('spoilt');
    const told: string[] = [];
    for (let change = 0; change <= n % 3; change++) {
      const places = placesOf(spoilt);
      const [at, key] = places[below(places.length)]!;
      at[key] = ODD[below(ODD.length)];
      told.push(`${key}: ${JSON.stringify(at[key])?.slice(0, 40)}`);
    }
    const book = { format: 'toehold-logbook', version: 1, attempts: [attempt('first'), spoilt, attempt('last')] };
    const faults: string[] = [];
    const bench = await new TestBench().settle();
    const taken = await bench.session.opener.logbook(chosen('book.json', JSON.stringify(book)));
    if (taken === null) faults.push(`was not taken: ${JSON.stringify(bench.state.problem.value)}`);
    const shelf = bench.state.shelf.value;
    for (const id of ['first', 'last'])
      if (!shelf.some((e) => e.id === id && e.damaged === null)) faults.push(`${id} is not on the shelf`);
    if (taken !== null && taken.added + taken.known + taken.bad.length !== 3) faults.push('one is not accounted for');
    for (const entry of shelf) {
      if (readEntry(entry) === null) faults.push(`the entry of ${entry.id} cannot be read again`);
      dayAndTime(entry.made_ms);
    }
    for (const log of logsOf(shelf)) for (const { points } of log.series) for (const p of points) dayAndTime(p.made_ms);
    return { inputs: 1, faults: faults.map((fault) => `${fault} (${told.join('; ')})`) };
  },
};
