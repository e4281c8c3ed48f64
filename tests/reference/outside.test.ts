import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ends, readSet, readTrends, setNames } from './outside/schema.ts';

const sources = readFileSync(new URL('outside/SOURCES.md', import.meta.url), 'utf8');

describe('data read elsewhere', () => {
  it.each(setNames())('%s: form, columns and cells', (name) => {
    const set = readSet(name);
    expect(set.name).toBe(name);
    expect(sources).toContain(`\`${name}.json\``);
    const keys = set.columns.map((column) => column.key);
    expect(new Set(keys).size).toBe(keys.length);
    for (const row of set.rows) {
      for (const [key, printed] of Object.entries(row)) {
        expect(keys).toContain(key);
        const numbers = printed.split(/~|, /).map(Number);
        expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
      }
      expect(row[keys[0]!]).toBeDefined();
    }
  });

  it('a cell gives its ends', () => {
    expect(ends('3.0~3.5')).toEqual({ low: 3, high: 3.5 });
    expect(ends('0.8, 1.2')).toEqual({ low: 0.8, high: 1.2 });
    expect(ends('-0.31')).toEqual({ low: -0.31, high: -0.31 });
  });

  it('legs, amps and volts do not fall from thin plate to thick', () => {
    for (const name of setNames().filter((each) => each.includes('fillet'))) {
      const { rows } = readSet(name);
      for (const key of ['plate', 'leg', 'amps', 'volts']) {
        const high = rows.flatMap((row) => (row[key] === undefined ? [] : [ends(row[key]).high]));
        expect(high, `${name} ${key}`).toEqual([...high].sort((a, b) => a - b));
      }
    }
  });
});

describe('trends', () => {
  const { knobs } = readTrends();

  it('names every knob once', () => {
    const names = knobs.map((each) => each.knob);
    expect(new Set(names).size).toBe(names.length);
    for (const wanted of ['volts', 'feed', 'travel', 'tip', 'push_angle', 'wire', 'gap', 'preheat', 'thickness'])
      expect(names).toContain(wanted);
  });

  it.each(knobs)('$knob: what is expected is what some source says', ({ outcomes }) => {
    for (const [outcome, { expect: sign, sources: said }] of Object.entries(outcomes)) {
      if (typeof said === 'string' || sign === 'open') continue;
      expect(
        said.map((each) => each.says),
        outcome,
      ).toContain(sign);
    }
  });
});
