import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { deadExports, importBreaches, known } from './breaches.ts';

/** Breaches of one kind: none that the list does not have, and none on the list that is mended. */
function compare(found: string[], listed: string[]): void {
  expect(
    found.filter((line) => !listed.includes(line)),
    'new breaches: take them out, the list may only shrink',
  ).toEqual([]);
  expect(
    listed.filter((line) => !found.includes(line)),
    'no longer there: npm run walls takes them off the list',
  ).toEqual([]);
}

describe('walls between the rooms', () => {
  const isDead = (line: string): boolean => line.startsWith('dead ');

  it('imports go game -> scoring -> engine through the doors, in no circle', () => {
    const { files, breaches } = importBreaches();
    expect(files).toBeGreaterThan(200);
    compare(
      breaches,
      known().filter((line) => !isDead(line)),
    );
  });

  it('the engine reckons with operations that every machine rounds alike', () => {
    const engine = new URL('../../engine/', import.meta.url);
    const exact = /^(abs|ceil|floor|fround|imul|max|min|round|sqrt|sign|trunc|PI|SQRT2|LOG2E)$/;
    const used = readdirSync(engine, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !name.startsWith('kernel/simd'))
      .flatMap((name) =>
        readFileSync(new URL(name, engine), 'utf8')
          .split('\n')
          .filter((line) => !/^\s*(\/?\*|\/\/)/.test(line))
          .flatMap((line) => [...line.matchAll(/\bMath\.(\w+)/g)].map((found) => `${name}: Math.${found[1]}`)),
      );
    expect(used.length).toBeGreaterThan(100);
    expect(used.filter((use) => !exact.test(use.split('Math.')[1]!))).toEqual([]);
  });

  it('nothing is exported, installed or kept that nothing uses', () => {
    compare(deadExports(), known().filter(isDead));
  });
});
