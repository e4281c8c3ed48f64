import { beforeAll, describe, expect, it } from 'vitest';
import { exerciseNamed, type Result, resultSchema, scoreAttempt } from '../../scoring/index.ts';
import { judge, MOUSE, weld } from './welds.ts';

/** One set of settings (6 mm tee, 0.9 wire, 5 m/min, 18 V, 2 mm/s), different hands. Behaviour is common practice, no source. */
let weave: Result;
let straight: Result;
let back: Result;

beforeAll(() => {
  weave = judge(weld());
  straight = judge(weld({ weave: { pattern: 'straight' } }));
  back = judge(weld({ faults: { lead_mm: -3 } }));
}, 120_000);

const line = (r: Result, measure: string) => r.lines.find((l) => l.measure === measure)!;

describe('a result', () => {
  it('has the shape it promises, and every digit is settled', () => {
    for (const r of [weave, straight, back]) {
      expect(resultSchema.parse(r)).toEqual(r);
      expect(JSON.parse(JSON.stringify(r))).toEqual(r);
    }
  });

  it('is the same for the same file, to the last digit', () => {
    expect(JSON.stringify(scoreAttempt(weld()))).toBe(JSON.stringify(weave));
  });

  it('keeps its books', () => {
    expect(weave.books.massError).toBeLessThan(0.001);
    expect(weave.books.energyError).toBeLessThan(0.001);
    const { process } = weave;
    // k U I / v of EN 1011-1 with k = 0.8 (Table 1, as published by a steel maker).
    expect(process.heatInput_kJpmm!).toBeCloseTo(
      (0.8 * process.voltage_V! * process.current_A!) / weave.motion.travel_mmps! / 1000,
      2,
    );
  });
});

describe('same settings, straight then woven', () => {
  it('straight is outside on convexity, the weave is not', () => {
    expect(line(straight, 'convexity').verdict).toBe('outside');
    expect(straight.verdict).toBe('outside');
    expect(line(weave, 'convexity').verdict).toBe('within');
    expect(weave.verdict).not.toBe('outside');
    expect(straight.bead.mean!.legA_mm).toBeLessThan(weave.bead.mean!.legA_mm - 0.5);
  });

  it('gives a straight run no weave readings, with the reason', () => {
    expect(straight.motion.period_s).toBeNull();
    expect(straight.motion.pauseA_s).toBeNull();
    expect(straight.notMeasured.some((n) => n.why.includes('straight run'))).toBe(true);
  });
});

describe('arc held 3 mm back in the puddle', () => {
  it('is outside at the root, and the first advice names the root crossing', () => {
    expect(line(back, 'root fusion').verdict).toBe('outside');
    expect(back.verdict).toBe('outside');
    expect(back.motion.arcOnFrontShare!).toBeLessThan(0.3);
    expect(back.advice[0]!.code).toBe('arc-back-on-puddle');
    expect(back.advice[0]!.text).toContain('when you cross the root');
    expect(back.bead.rootFusedShare!).toBeLessThan(weave.bead.rootFusedShare!);
  });

  it('ties the place to the cycle that made it, through the freeze stamps', () => {
    const a = back.advice[0]!;
    const crossing = back.motion.crossings.find((c) => c.t_s === a.t_s)!;
    expect(crossing.cycle).toBe(a.cycle);
    expect(Math.abs(crossing.y_mm - a.y_mm!)).toBeLessThan(4);
  });
});

describe('pause left out at one toe', () => {
  it('makes that side narrower, and says which toe', () => {
    const a = judge(weld({ weave: { pauseA_s: 0 } }));
    expect(a.bead.mean!.legA_mm).toBeLessThan(a.bead.mean!.legB_mm - 0.5);
    expect(a.advice.some((x) => x.code === 'toe-left-early' && x.side === 'A' && x.text.startsWith('Right toe'))).toBe(
      true,
    );
    expect(a.motion.toeFilledShareA!).toBeLessThan(a.motion.toeFilledShareB!);
  });

  it('mirrors: the mirrored hand on a symmetric joint gives the mirrored report', () => {
    const joint = { kind: 'corner', plateA_mm: 8, plateB_mm: 8, length_mm: 45 } as const;
    const one = judge(weld({ joint, weave: { pauseA_s: 0.1, pauseB_s: 0.3, firstToe: 'A' } }));
    const two = judge(weld({ joint, weave: { pauseA_s: 0.3, pauseB_s: 0.1, firstToe: 'B' } }));
    for (const [i, s] of one.bead.stations.entries()) {
      const m = two.bead.stations[i]!;
      for (const [a, b] of [
        [s.legA_mm, m.legB_mm],
        [s.legB_mm, m.legA_mm],
        [s.rootFusionA_mm, m.rootFusionB_mm],
        [s.overlapA_mm, m.overlapB_mm],
        [s.convexity_mm, m.convexity_mm],
      ] as const) {
        // Sums over coarse tiles round differently on the two sides; nothing else may.
        expect(Math.abs(a - b)).toBeLessThan(0.001);
      }
    }
    expect(one.motion.pauseA_s).toBe(two.motion.pauseB_s);
    expect(one.verdict).toBe(two.verdict);
  });
});

describe('metal laid against metal held', () => {
  it('crowns the bead by about the metal that is over, and says so first when the crown is outside', () => {
    const r = judge(
      weld({ process: { feed_mpmin: 6.5 }, weave: { travel_mmps: 1.8 }, leg_mm: 6, profile: 'iso-5817-c' }),
    );
    expect(r.process.laid_mm2!).toBeGreaterThan(34);
    expect(r.process.holds_mm2).toBe(18);
    // Segment area (geometry): two thirds of width times crown. The model's face is more pointed than a segment: up to half as high again.
    const over = r.process.laid_mm2! - (r.bead.mean!.legA_mm * r.bead.mean!.legB_mm) / 2;
    const segment = over / ((2 / 3) * r.bead.mean!.faceWidth_mm);
    expect(r.bead.mean!.convexity_mm / segment).toBeGreaterThan(0.9);
    expect(r.bead.mean!.convexity_mm / segment).toBeLessThan(1.5);
    expect(r.advice[0]!.code).toBe('too-much-metal');
  });

  it('finds a bead of 4 under where 6 was asked, over its length', () => {
    const r = judge(
      weld({
        process: { feed_mpmin: 3.5, volts_V: 20 },
        weave: { travel_mmps: 3, width_mm: 3, apex_mm: 1 },
        leg_mm: 6,
      }),
    );
    expect(line(r, 'leg')).toMatchObject({ verdict: 'outside', limit: 6 });
    expect(r.bead.undersize_mm).toBeGreaterThan(20);
    expect(r.advice[0]!.code).toBe('too-little-wire');
  });

  it('takes the gap off: 1.5 mm of gap, throat down, size down by the gap', () => {
    const r = judge(weld({ joint: { gap_mm: 1.5 } }));
    expect(r.bead.mean!.size_mm).toBeLessThan(weave.bead.mean!.size_mm - 1.2);
    expect(r.bead.mean!.throat_mm).toBeLessThan(weave.bead.mean!.throat_mm - 0.7);
    expect(r.process.holds_mm2!).toBeGreaterThan(weave.process.holds_mm2!);
  });
});

describe('what the device did not measure', () => {
  it('is null with a reason, and changes nothing in the verdict', () => {
    const mouse = judge(weld({ device: MOUSE }));
    expect([mouse.motion.tipToWork_mm, mouse.motion.workAngle_deg, mouse.motion.travelAngle_deg]).toEqual([
      null,
      null,
      null,
    ]);
    expect(mouse.notMeasured.filter((n) => n.why.includes('mouse'))).toHaveLength(3);
    expect(mouse.verdict).toBe(weave.verdict);
    expect(mouse.lines).toEqual(weave.lines);
  });
});

describe('no verdict', () => {
  const code = (r: Result) => r.reasons.map((x) => x.code);

  it('for vertical-down: shown, with its shallow root, and refused', () => {
    const r = judge(weld({ hand: (poses) => poses.map((p) => ({ ...p, y_mm: 60 - p.y_mm })) }));
    expect(r.verdict).toBe('no verdict');
    expect(code(r)).toContain('vertical-down');
    expect(r.bead.mean!.rootFusion_mm).toBeLessThan(0);
    expect(r.advice[0]!.code).toBe('climb');
    expect(r.score).toBeNull();
  });

  it.each([
    ['a hand that stays still', (y: number) => y, (p: number) => p < 1000, 30],
    ['only the ends', (y: number) => y, (_p: number, y: number) => y < 18 || y > 48, null],
  ] as const)('for %s', (_name, _way, on, still) => {
    const r = judge(
      weld({
        hand: (poses) => poses.map((p, i) => ({ ...p, y_mm: still ?? p.y_mm, trigger: p.trigger && on(i, p.y_mm) })),
      }),
    );
    expect(r.verdict).toBe('no verdict');
    expect(code(r)).toContain('judged-length-not-covered');
  });

  it('for a scribble, for leaving the joint, and for no arc at all', () => {
    const scribble = weld({
      hand: (poses) => poses.map((p, i) => ({ ...p, u_mm: 8 * Math.sin(i * 0.9), y_mm: 30 + 28 * Math.sin(i * 0.13) })),
    });
    expect(judge(scribble).verdict).toBe('no verdict');
    const leave = weld({ hand: (poses) => poses.map((p) => ({ ...p, u_mm: p.y_mm > 30 ? p.u_mm + 60 : p.u_mm })) });
    expect(code(judge(leave))).toContain('judged-length-not-covered');
    const dark = weld({ hand: (poses) => poses.slice(0, 200).map((p) => ({ ...p, trigger: false })) });
    expect(code(judge(dark))).toEqual(['no-arc']);
  });

  it('for a second pass over a finished bead', () => {
    const r = judge(weld({ joint: { length_mm: 45 }, hand: (poses) => [...poses, ...poses] }));
    expect(code(r)).toContain('second-pass');
    expect(r.advice[0]!.code).toBe('one-pass');
  });

  it('for a machine that could not keep up, and without an exercise', () => {
    const short = weld({ joint: { length_mm: 45 } });
    expect(code(scoreAttempt({ ...short, ended: 'too-slow' }))).toContain('machine-too-slow');
    const none = scoreAttempt({ ...short, exercise: null });
    expect(code(none)).toEqual(['no-exercise']);
    expect(none.bead.mean).not.toBeNull();
    expect(none.lines).toEqual([]);
  });

  it('for edited settings, an edited exercise, edited poses', () => {
    const r = weld({ joint: { length_mm: 45 } });
    const ready = exerciseNamed('tee-inverted-v')!;
    expect(code(judge(r, { exercise: ready }))).toContain('settings-edited');
    const easier = { ...r.exercise!, name: ready.name };
    expect(code(scoreAttempt({ ...r, exercise: easier }))).toContain('exercise-edited');
    const moved = { ...r, poses: { ...r.poses, u: r.poses.u.map((u, i) => (i > 900 ? u + 20 : u)) } };
    const said = scoreAttempt(moved).reasons.find((x) => x.code === 'recording-edited');
    expect(said!.text).toContain('from second 10 on');
    const hotter = { ...r.simulation, process: { ...r.simulation.process, volts_V: 20 } };
    expect(code(scoreAttempt({ ...r, simulation: hotter }))).toContain('header-edited');
    expect(scoreAttempt({ ...r, ended: 'time-limit' }).reasons).toEqual([
      expect.objectContaining({ code: 'recording-edited', text: expect.stringContaining('ended') }),
    ]);
  });

  it('for a state that parts, without calling it edited; a file of another engine parts as it may', () => {
    const r = weld({ joint: { length_mm: 30 }, weave: { length_mm: 6 } });
    const link = r.chain![2]!;
    const parted = { ...r, chain: r.chain!.map((x, n) => (n === 2 ? `${link.slice(0, 16)}${'0'.repeat(16)}` : x)) };
    const found = scoreAttempt(parted).reasons.find((x) => x.code === 'state-differs');
    expect(found!.text).toContain('in second 2');
    const unchained = scoreAttempt({ ...r, chain: null, stateHash: '0123456789abcdef' });
    expect(code(unchained)).toContain('state-differs');
    expect(unchained.notes.map((n) => n.code)).toContain('no-chain');
    const older = scoreAttempt({ ...r, engine: '0.2.0', chain: null, stateHash: '0123456789abcdef' });
    expect(code(older).filter((x) => /edited|differs/.test(x))).toEqual([]);
    expect(older.notes.find((n) => n.code === 'engine-differs')!.text).toContain('welded again here');
  });
});

describe('notes', () => {
  it('name a robot, a mismatch of origin and device, aids not allowed, another profile', () => {
    expect(weave.notes.map((n) => n.code)).toContain('robot');
    const r = weld({ joint: { length_mm: 45 } });
    const odd = scoreAttempt({
      ...r,
      origin: { kind: 'hand' },
      exercise: { ...r.exercise!, aids: { pacer: false, beat: false, toeMarks: false, handRig: false } },
      aids: { pacer: true, beat: true, toeMarks: false, plainView: false, handRig: { gun_g: 900, hose: 0.4 } },
    });
    const codes = odd.notes.map((n) => n.code);
    expect(codes).toEqual(expect.arrayContaining(['origin-device-mismatch', 'aids', 'hand-rig']));
    expect(odd.notes.find((n) => n.code === 'aids')!.text).toContain('pacer, beat, hand rig');
  });
});
