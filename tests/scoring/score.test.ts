import { beforeAll, describe, expect, it } from 'vitest';
import { exerciseNamed, type Result, resultSchema, scoreAttempt } from '../../scoring/index.ts';
import { judge, MOUSE, weld } from './welds.ts';

/** One set of settings (6 mm tee, 0.9 wire, 5 m/min, 18 V, 2 mm/s), different hands. Behaviour is common practice, no source. */
const joint = { length_mm: 42 };
let weave: Result;
let straight: Result;
let back: Result;

beforeAll(() => {
  weave = judge(weld({ joint }));
  straight = judge(weld({ joint, weave: { pattern: 'straight' } }));
  back = judge(weld({ joint, faults: { lead_mm: -3 } }));
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
    expect(JSON.stringify(scoreAttempt(weld({ joint })))).toBe(JSON.stringify(weave));
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
    const a = judge(weld({ joint, weave: { pauseA_s: 0 } }));
    expect(a.bead.mean!.legA_mm).toBeLessThan(a.bead.mean!.legB_mm - 0.5);
    expect(a.advice.some((x) => x.code === 'toe-left-early' && x.side === 'A' && x.text.startsWith('Right toe'))).toBe(
      true,
    );
    expect(a.motion.toeFilledShareA!).toBeLessThan(a.motion.toeFilledShareB!);
  });
});

describe('what the device did not measure', () => {
  it('is null with a reason, and changes nothing in the verdict', () => {
    const mouse = judge(weld({ joint, device: MOUSE }));
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

  it('for a second pass over a finished bead', () => {
    const r = judge(weld({ joint: { length_mm: 36 }, hand: (poses) => [...poses, ...poses] }));
    expect(code(r)).toContain('second-pass');
    expect(r.advice[0]!.code).toBe('one-pass');
  });

  it('for a machine that could not keep up, and without an exercise', () => {
    const short = weld({ joint: { length_mm: 24 } });
    expect(code(scoreAttempt({ ...short, ended: 'too-slow' }))).toContain('machine-too-slow');
    const none = scoreAttempt({ ...short, exercise: null });
    expect(code(none)).toEqual(['no-exercise']);
    expect(none.bead.mean).not.toBeNull();
    expect(none.lines).toEqual([]);
  });

  it('for edited settings, an edited exercise, edited poses', () => {
    const r = weld({ joint: { length_mm: 24 } });
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
    const r = weld({ joint: { length_mm: 24 }, weave: { length_mm: 6 } });
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
    const r = weld({ joint: { length_mm: 24 } });
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
