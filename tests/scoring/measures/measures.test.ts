import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { plusMinus } from '../../../scoring/measures/precision.ts';
import { beadStartSchema, beadStopSchema } from '../../../scoring/schema/ends.ts';
import { motionSchema } from '../../../scoring/schema/motion.ts';
import { consistencySchema, stationSchema } from '../../../scoring/schema/station.ts';
import { madeUpCuts } from '../../studies/measures/cuts.ts';
import { madeUpHands } from '../../studies/measures/made-up.ts';
import { consistencyRows, endRows, type Row, stationRows } from '../../studies/measures/rows.ts';
import { motionRows } from '../../studies/measures/rows-motion.ts';
import { allRows, measuresText, PICTURES, TABLE } from '../../studies/measures/table.ts';

/** scoring/MEASURES.md and its pictures; `npm run study:measures` writes both. */

const fields = (rows: readonly Row[]): string[] => rows.flatMap((r) => r.fields).sort();
const picture = (name: string): string => readFileSync(new URL(name, PICTURES), 'utf8');
const unwrapped = beadStopSchema.shape.flaw.unwrap();

describe('the table of measures', () => {
  it('has every measure of the hand once', () => {
    expect(fields(motionRows)).toEqual(Object.keys(motionSchema.shape).sort());
  });

  it('has every measure of the bead once', () => {
    expect(fields(stationRows)).toEqual(Object.keys(stationSchema.shape).sort());
  });

  it('has every measure along the length once', () => {
    expect(fields(consistencyRows)).toEqual(Object.keys(consistencySchema.shape).sort());
  });

  it('has every measure of starts, stops and restarts', () => {
    const all = [beadStartSchema, beadStopSchema, unwrapped].flatMap((s) => Object.keys(s.shape));
    expect(new Set(fields(endRows))).toEqual(new Set(all));
  });

  it('gives definition, unit, source, plus-minus and a picture to each', () => {
    for (const r of allRows) {
      expect(r.definition.length, r.name).toBeGreaterThan(20);
      expect(r.source.length, r.name).toBeGreaterThan(5);
      const give = r.plusMinus;
      expect(typeof give === 'string' ? plusMinus[give].why : give.said, r.name).toMatch(/\S/);
      expect(existsSync(new URL(r.picture, PICTURES)), r.picture).toBe(true);
    }
  });

  it('is the one in the repository', () => {
    expect(readFileSync(TABLE, 'utf8')).toBe(measuresText());
  });
});

describe('its pictures', () => {
  const files = readdirSync(PICTURES);

  it('are all shown', () => {
    for (const file of files) expect(measuresText()).toContain(`assets/measures/${file}`);
  });

  it.each(files)('%s is a whole drawing', (file) => {
    const svg = picture(file);
    expect(svg.startsWith('<svg xmlns="http://www.w3.org/2000/svg"')).toBe(true);
    expect(svg.endsWith('</svg>\n')).toBe(true);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
    expect([...svg.matchAll(/<text/g)].length).toBeGreaterThan(0);
  });

  it('that need no weld come out of the drawing code as they stand here', () => {
    for (const [name, svg] of [...madeUpCuts(), ...madeUpHands()]) expect(picture(name), name).toBe(svg);
  });
});
