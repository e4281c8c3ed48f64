import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { mapOf, pointsOf, type RangePlan, type RangeResult, rangeCsv, rangeSvg } from '../../../scoring/index.ts';
import { values } from '../../../scoring/node/cli/range.ts';
import { run } from '../../../scoring/node/cli/run.ts';

const plan: RangePlan = {
  base: { joint: {}, process: {}, weave: {}, leg_mm: 5, profile: 'aws-d11-static-si' },
  values: { feed_mpmin: [3, 4, 5, 6, 7], volts_V: [16, 17, 18, 19, 20], travel_mmps: [2], tipToWork_mm: [12] },
  patterns: ['inverted-v'],
  handAmounts: [0, 0.5],
  seeds: [1],
  cell_mm: 0.75,
};

function results(within: (feed: number, volts: number) => boolean): RangeResult[] {
  return pointsOf(plan).map((p): RangeResult => {
    const good = within(p.at.feed_mpmin, p.at.volts_V);
    return {
      index: p.index,
      verdict: good ? 'within' : 'outside',
      root: good ? 'within' : 'outside',
      rootFusion_mm: good ? 0.3 : -0.4,
      convexity_mm: 1,
      size_mm: 5,
      laid_mm2: 20,
      current_A: 120,
      regime: 'short-circuiting',
      because: good ? '' : 'root fusion',
      handHolds: good ? 0 : null,
    };
  });
}

describe('the middle of a working range', () => {
  it('is the centre of the largest box that holds, with the give of each setting', () => {
    const { middle } = mapOf(
      plan,
      results((feed, volts) => feed >= 4 && feed <= 6 && volts >= 17 && volts <= 19),
    );
    expect(middle!.point.at).toMatchObject({ feed_mpmin: 5, volts_V: 18 });
    expect(middle!.room).toBe(1);
    expect(middle!.give).toEqual({ feed_mpmin: { down: 1, up: 1 }, volts_V: { down: 1, up: 1 } });
  });

  it('takes the edge of the sweep for its end, and is none where nothing holds', () => {
    expect(
      mapOf(
        plan,
        results(() => true),
      ).middle!.room,
    ).toBe(2);
    expect(
      mapOf(
        plan,
        results(() => false),
      ).middle,
    ).toBeNull();
    expect(
      rangeSvg(
        mapOf(
          plan,
          results(() => false),
        ),
      ),
    ).toContain('no middle to name');
  });

  it('does not depend on the order in which workers were done', () => {
    const all = results((feed, volts) => feed + volts > 21);
    const map = mapOf(plan, all);
    expect(mapOf(plan, [...all].reverse())).toEqual(map);
    expect(rangeCsv(mapOf(plan, [...all].reverse()))).toBe(rangeCsv(map));
  });
});

describe('toehold range', () => {
  const folder = mkdtempSync(join(tmpdir(), 'toehold-range-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  const toehold = async (...args: string[]): Promise<{ code: number; out: string; err: string }> => {
    const said = { out: '', err: '' };
    const code = await run(['range', ...args], {
      out: (text) => {
        said.out += text;
      },
      err: (text) => {
        said.err += text;
      },
    });
    return { code, ...said };
  };

  it('writes the same table and map with one worker as with two, and calls them a study', async () => {
    const sweep = '--length 30 --feed 3.2,4.6 --volts 18 --hand-amounts 0'.split(' ');
    const made: string[] = [];
    for (const workers of ['1', '2']) {
      const csv = join(folder, `${workers}.csv`);
      const svg = join(folder, `${workers}.svg`);
      const { code, out } = await toehold(...sweep, '--workers', workers, '--out', csv, '--svg', svg);
      expect(code).toBe(0);
      expect(out).toContain('Working range (study)');
      made.push(readFileSync(csv, 'utf8') + readFileSync(svg, 'utf8'));
    }
    expect(made[0]).toBe(made[1]);
    expect(made[0]).toContain('no procedure');
    expect(made[0]!.split('\n').filter((row) => row.startsWith('inverted-v,'))).toHaveLength(2);
  }, 120_000);

  it('reads ranges, and refuses what is none', async () => {
    const volts = values(12, 30, 'V');
    expect(volts('16:18:0.5')).toEqual([16, 16.5, 17, 17.5, 18]);
    expect(volts('19,17,17')).toEqual([17, 19]);
    for (const text of ['18:16:1', '16:18:0', '16:18', '16:18:0.001', '11', '', 'a,b'])
      expect(() => volts(text)).toThrow(/found/);
    expect((await toehold('--pattern', 'spiral')).err).toMatch(/found "spiral", allowed: straight/);
    expect((await toehold('--out', 'map.xls')).err).toMatch(/--out: found "map.xls"/);
    expect((await toehold('--feed', '2:8:0.1', '--volts', '14:20:0.1', '--travel', '2,2.4')).err).toMatch(
      /at most 4000/,
    );
  });
});
