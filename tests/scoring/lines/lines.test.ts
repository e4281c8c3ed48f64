import { describe, expect, it } from 'vitest';
import { profileNamed, readSection, type Station } from '../../../scoring/index.ts';
import { allLines } from '../../../scoring/lines/lines.ts';
import type { LineQuestion } from '../../../scoring/lines/readers.ts';
import { profileLines, stretches } from '../../../scoring/lines/rule-line.ts';
import { lineOfHeat, makeSection, segmentFace, teeJoint } from '../measures/sections.ts';

const sound = readSection(makeSection({ face: segmentFace(6.6, 0.5), peak: lineOfHeat(2.4, 2.4, 4.6) }))!.station;

/** A row of sound stations, some changed. */
function question(change: (s: Station, i: number) => Partial<Station>, over: Partial<LineQuestion> = {}): LineQuestion {
  const stations = Array.from({ length: 40 }, (_, i) => {
    const s = { ...sound, y_mm: 20 + i, undercutA_mm: 0, undercutB_mm: 0 };
    return { ...s, ...change(s, i) };
  });
  return {
    stations,
    joint: { ...teeJoint, length_mm: 90 },
    cell_mm: 0.75,
    run: 'woven',
    asked: { kind: 'leg', size_mm: 6, atMost_mm: 9, edgeBack_mm: null },
    step_mm: 1,
    ...over,
  };
}

const line = (q: LineQuestion, profile: string, measure: string, side: 'A' | 'B' | null = null) =>
  allLines(profileNamed(profile)!, q).find((l) => l.measure === measure && l.side === side)!;

describe('lines of a profile', () => {
  it('all hold on a sound bead', () => {
    for (const name of ['aws-d11-static-si', 'iso-5817-d', 'iso-5817-c', 'tern-dock-first-runs']) {
      const bad = allLines(
        profileNamed(name)!,
        question(() => ({})),
      ).filter((l) => l.verdict !== 'within');
      expect(bad.map((l) => `${name} ${l.measure} ${l.reading} ${l.limit}`)).toEqual([]);
    }
  });

  it('are decided by the worst station, and say where', () => {
    const q = question((_s, i) => (i === 13 ? { convexity_mm: 4.1 } : {}));
    const l = line(q, 'aws-d11-static-si', 'convexity');
    expect(l).toMatchObject({
      verdict: 'outside',
      reading: 4.1,
      y_mm: 33,
      limit: 3,
      places: [{ from_mm: 33, to_mm: 33 }],
    });
  });

  it('read each toe by itself', () => {
    const q = question((_s, i) => (i > 20 ? { undercutB_mm: 0.9 } : {}));
    expect(line(q, 'iso-5817-b', 'undercut', 'A').verdict).toBe('within');
    expect(line(q, 'iso-5817-b', 'undercut', 'B')).toMatchObject({ verdict: 'outside', reading: 0.9, limit: 0.3 });
  });

  it('take an undercut of nothing as within where nothing is permitted, and a little as too close to call', () => {
    const thin = { joint: { ...teeJoint, plateA_mm: 3, plateB_mm: 3 } };
    expect(
      line(
        question(() => ({}), thin),
        'iso-5817-b',
        'undercut',
        'A',
      ).verdict,
    ).toBe('within');
    expect(
      line(
        question(() => ({ undercutA_mm: 0.1 }), thin),
        'iso-5817-b',
        'undercut',
        'A',
      ).verdict,
    ).toBe('too close to call');
    expect(
      line(
        question(() => ({ undercutA_mm: 0.3 }), thin),
        'iso-5817-b',
        'undercut',
        'A',
      ).verdict,
    ).toBe('outside');
  });

  it('call a root that is short outside, and one just there too close, whatever the rest', () => {
    expect(
      line(
        question(() => ({ rootFusion_mm: -0.4 })),
        'iso-5817-d',
        'root fusion',
      ).verdict,
    ).toBe('outside');
    expect(
      line(
        question(() => ({ rootFusion_mm: 0.05 })),
        'iso-5817-d',
        'root fusion',
      ).verdict,
    ).toBe('too close to call');
  });

  it('demand a tied-in root even of a profile that forgot it', () => {
    const forgot = {
      ...profileNamed('tern-dock-first-runs')!,
      rules: profileNamed('tern-dock-first-runs')!.rules.filter((r) => r.measure !== 'root fusion'),
    };
    const lines = allLines(
      forgot,
      question(() => ({ rootFusion_mm: -0.4 })),
    );
    expect(lines.some((l) => l.measure === 'root fusion' && l.verdict === 'outside')).toBe(true);
  });

  it('express the inch table in inches', () => {
    const q = question(() => ({ convexity_mm: 2.54, faceWidth_mm: 9 }));
    expect(line(q, 'aws-d11-static-inch', 'convexity')).toMatchObject({ unit: 'in', reading: 0.1, limit: 0.125 });
  });

  it('judge size: a bead of 4 where 6 was asked is under, over its length; a bead of 9.5 is over the exercise limit', () => {
    const small = question(() => ({ size_mm: 4 }));
    expect(line(small, 'aws-d11-static-si', 'leg')).toMatchObject({
      verdict: 'outside',
      reading: 4,
      limit: 6,
      sense: 'at least',
    });
    expect(line(small, 'aws-d11-static-si', 'leg').places).toEqual([{ from_mm: 20, to_mm: 59 }]);
    const big = question(() => ({ size_mm: 9.5 }));
    expect(line(big, 'aws-d11-static-si', 'size over')).toMatchObject({ verdict: 'outside', reading: 9.5, limit: 9 });
    const iso = allLines(profileNamed('iso-5817-c')!, big).find(
      (l) => l.measure === 'throat' && l.sense === 'at most',
    )!;
    // Throat over by h <= 1 + 0.2a (5214): 4.2426 + 1.8485 = 6.0911.
    expect(iso).toMatchObject({ verdict: 'outside', limit: 6.091 });
  });

  it('read a throat asked as a throat', () => {
    const q = question(() => ({ size_mm: 6 }), {
      asked: { kind: 'throat', size_mm: 4, atMost_mm: null, edgeBack_mm: null },
    });
    const l = allLines(profileNamed('iso-5817-c')!, q).find((x) => x.measure === 'throat' && x.sense === 'at least')!;
    expect(l.reading).toBeCloseTo(6 / Math.SQRT2, 3);
    expect(l.limit).toBeCloseTo(4 - (0.3 + 0.1 * 4), 3);
  });

  it('hold a lap edge to what the exercise allows', () => {
    const q = question(() => ({ edgeMeltedBack_mm: 2.5 }), {
      joint: { ...teeJoint, kind: 'lap' },
      asked: { kind: 'leg', size_mm: 5, atMost_mm: null, edgeBack_mm: 1.5 },
    });
    expect(line(q, 'aws-d11-static-si', 'edge melted back', 'B').verdict).toBe('outside');
  });
});

describe('allowances over a length', () => {
  // ISO 5817 5213 level C: short imperfections only, 25 % of a weld under 100 mm.
  it('keep a short throat that is short in length', () => {
    const some = question((s, i) =>
      i < 6 ? { size_mm: 6 - 0.6 * Math.SQRT2, throat_mm: s.throat_mm } : { size_mm: 6.9 },
    );
    expect(line(some, 'iso-5817-c', 'throat short, length')).toMatchObject({ verdict: 'within', unit: '%', limit: 25 });
    const most = question((_s, i) => (i < 30 ? { size_mm: 6 - 0.6 * Math.SQRT2 } : { size_mm: 6.9 }));
    expect(line(most, 'iso-5817-c', 'throat short, length')).toMatchObject({ verdict: 'outside', reading: 75 });
  });

  it('give D1.1 undersize no allowance on pieces under 300 mm, 10 % of the length on longer ones', () => {
    const short = question((_s, i) => (i < 3 ? { size_mm: 5.2 } : { size_mm: 6.6 }));
    expect(line(short, 'aws-d11-static-si', 'leg')).toMatchObject({ verdict: 'outside', limit: 6 });
    const long = question((_s, i) => (i < 3 ? { size_mm: 5.2 } : { size_mm: 6.6 }), {
      joint: { ...teeJoint, length_mm: 300 },
    });
    expect(line(long, 'aws-d11-static-si', 'leg')).toMatchObject({ verdict: 'within', limit: 3.5 });
    expect(line(long, 'aws-d11-static-si', 'leg short, length')).toMatchObject({
      verdict: 'within',
      reading: 7.5,
      limit: 10,
    });
  });

  it('let D1.1 static undercut go deeper over 50 mm in 300, on pieces that long only', () => {
    const dented = (length_mm: number) =>
      question((_s, i) => (i < 5 ? { undercutA_mm: 1.5 } : {}), { joint: { ...teeJoint, length_mm } });
    expect(line(dented(90), 'aws-d11-static-si', 'undercut', 'A').verdict).toBe('outside');
    expect(line(dented(300), 'aws-d11-static-si', 'undercut', 'A')).toMatchObject({ verdict: 'within', limit: 2 });
    expect(line(dented(300), 'aws-d11-static-si', 'undercut, length', 'A').verdict).toBe('within');
  });

  it('take overlap as a mean over three millimetres, so that one ripple is no lap', () => {
    const ripple = question((_s, i) => ({ overlapA_mm: i % 4 === 0 ? 0.9 : -0.2 }));
    expect(line(ripple, 'iso-5817-c', 'overlap', 'A').verdict).toBe('within');
    const lap = question(() => ({ overlapA_mm: 1.2 }));
    expect(line(lap, 'iso-5817-c', 'overlap', 'A').verdict).toBe('outside');
  });
});

it('gathers heights into stretches', () => {
  expect(stretches([20, 21, 22, 30, 31, 40], 1)).toEqual([
    { from_mm: 20, to_mm: 22 },
    { from_mm: 30, to_mm: 31 },
    { from_mm: 40, to_mm: 40 },
  ]);
});

it('gives no lines without stations', () => {
  expect(
    profileLines(
      profileNamed('iso-5817-c')!,
      question(() => ({}), { stations: [] }),
    ),
  ).toEqual([]);
});
