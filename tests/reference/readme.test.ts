import { existsSync, readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compose, README, readSections, SECTIONS } from './report.ts';

describe('README.md', () => {
  const text = readFileSync(README, 'utf8');

  it('is its heading and the sections in order, nothing else', () => {
    const sections = readSections();
    expect([...sections.keys()]).toEqual([...SECTIONS]);
    expect(text).toBe(compose(sections));
  });

  it('links plots that are there', () => {
    const links = [...text.matchAll(/\]\(([^)]+)\)/g)].map((match) => match[1]!);
    expect(links.length).toBeGreaterThan(5);
    for (const link of links) expect(existsSync(resolve(dirname(README), link)), link).toBe(true);
  });
});
