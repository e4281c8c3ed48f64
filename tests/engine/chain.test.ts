import { describe, expect, it } from 'vitest';
import {
  type ChainFinding,
  checkChain,
  createRecorder,
  createSimulation,
  defaultWeave,
  EngineError,
  noFaults,
  type Recording,
  recordPoses,
  Seconds,
  verifyRecording,
  weaveHand,
} from '../../engine/index.ts';
import { canonical } from '../../engine/numerics/canonical.ts';
import { chainOf } from '../../engine/replay/chain.ts';
import { SAVED } from '../../engine/state/fields.ts';
import { optionsOf } from '../support/weld.ts';

const weave = { ...defaultWeave(), length_mm: 8, shelf_s: 0.2 };
const faults = { ...noFaults(7), tremor_mm: 0.3 };
const meta = {
  simulation: optionsOf({ joint: { length_mm: 24 }, cell_mm: 1.2 }),
  origin: { kind: 'robot', weave, faults },
  device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: null },
  aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
  trainee: { name: 'Ines Calder', bench: 'b1' },
  started: '2026-03-02T09:15:00+01:00',
  exercise: { name: 'free', judged: { from_mm: 5, to_mm: 19 } },
} as const;
/** As read back from a file. */
const made: Recording = JSON.parse(JSON.stringify(recordPoses(meta, weaveHand(weave, faults))));
const seconds = Math.floor(made.poses.u.length / 100);

const changed = (change: (r: Recording) => void): Recording => {
  const copy = structuredClone(made);
  change(copy);
  return copy;
};

describe('a recording', () => {
  it('carries seal, a link a second and one at the end, and says what really was', () => {
    expect(made.chain).toHaveLength(seconds + 2);
    expect(made.chain!.slice(1).every((link) => /^[0-9a-f]{32}$/.test(link))).toBe(true);
    expect(made).toMatchObject({ version: 2, seed: 7, ended: 'hand-finished', trainee: meta.trainee });
    expect(recordPoses({ ...meta, origin: { kind: 'hand' } }, []).seed).toBeNull();
  });

  it('is the same text each time it is made', () => {
    const again = recordPoses(meta, weaveHand(weave, faults));
    expect(JSON.stringify(again)).toBe(JSON.stringify(made));
  });

  it('is refused by its recorder where a pose was not stepped', () => {
    const recorder = createRecorder(createSimulation(meta.simulation), meta);
    const [pose] = weaveHand(weave, faults);
    recorder.add(pose!);
    expect(() => recorder.add(pose!)).toThrow(EngineError);
  });
});

describe('the chain', () => {
  const middle = 150;
  const cases: [string, Recording, ChainFinding][] = [
    ['as welded', made, { found: 'same' }],
    ['an older file', changed((r) => (r.chain = null)), { found: 'no-chain' }],
    ['volts changed', changed((r) => (r.simulation.process.volts_V = 19)), { found: 'header-changed' }],
    [
      'the exercise changed',
      changed((r) => (r.exercise = { name: 'free', judged: { from_mm: 9, to_mm: 12 } })),
      { found: 'header-changed' },
    ],
    ['another name', changed((r) => (r.trainee = { name: 'Tom Aske', bench: 'b1' })), { found: 'header-changed' }],
    ['a robot rubbed out', changed((r) => (r.origin = { kind: 'hand' })), { found: 'header-changed' }],
    ['the engine changed', changed((r) => (r.engine = '0.2.0')), { found: 'header-changed' }],
    ['one pose moved', changed((r) => (r.poses.u[middle]! += 1)), { found: 'poses-changed', second: 2 }],
    ['the first pose', changed((r) => (r.poses.tip[0]! += 1)), { found: 'poses-changed', second: 1 }],
    [
      'poses cut off at the end',
      changed((r) => {
        for (const column of Object.values(r.poses)) column.length = 200;
      }),
      { found: 'poses-changed', second: 3 },
    ],
    [
      'a pose more',
      changed((r) => {
        for (const column of Object.values(r.poses)) column.push(column[0]!);
      }),
      { found: 'poses-changed', second: seconds + 1 },
    ],
    ['another ending', changed((r) => (r.ended = 'too-slow')), { found: 'ending-changed' }],
    ['another check number', changed((r) => (r.stateHash = '0123456789abcdef')), { found: 'ending-changed' }],
    [
      'a check number on the way',
      changed((r) => (r.chain![2] = r.chain![2]!.replace(/.$/, (c) => (c === '0' ? '1' : '0')))),
      { found: 'state-differs', second: 2 },
    ],
  ];
  it.each(cases)('%s', (_name, recording, finding) => {
    expect(verifyRecording(recording)).toEqual(finding);
  });

  it('tells another engine from a change, without welding', () => {
    const older: Recording = { ...made, engine: '0.2.9', chain: null };
    const states = Array.from({ length: seconds + 1 }, (_, n) => (n === seconds ? made.stateHash! : `${n}`));
    const sealed = { ...older, chain: chainOf(older, states) };
    expect(checkChain(sealed, null)).toEqual({ found: 'other-engine', engine: '0.2.9' });
    // Welded again or not: its states say nothing here. A change made to it since still shows.
    expect(verifyRecording(sealed)).toEqual({ found: 'other-engine', engine: '0.2.9' });
    const moved = structuredClone(sealed);
    moved.poses.y[120]! += 1;
    expect(checkChain(moved, null)).toEqual({ found: 'poses-changed', second: 2 });
  });

  it('names the second in which states part', () => {
    const sim = createSimulation(meta.simulation);
    const states = new Seconds();
    for (const [n, pose] of [...weaveHand(weave, faults)].entries()) {
      states.note(sim);
      const quantised = { ...pose };
      quantised.u_mm = made.poses.u[n]! / 100 + (n === 230 ? 0.01 : 0);
      quantised.y_mm = made.poses.y[n]! / 100;
      sim.step(quantised);
    }
    expect(checkChain(made, states.all(sim))).toEqual({ found: 'state-differs', second: 3 });
  });
});

describe('canonical JSON', () => {
  it('is one text for one content, whatever the order of keys', () => {
    const value = { b: [1, { z: null, a: 'ü"\n' }], a: { y: -0, x: 1.5e-7 }, c: undefined };
    const turned = { a: { x: 1.5e-7, y: 0 }, b: [1, { a: 'ü"\n', z: null }] };
    expect(canonical(value)).toBe(canonical(turned));
    expect(canonical(JSON.parse(canonical(value)))).toBe(canonical(value));
    expect(canonical([1, 2])).not.toBe(canonical([2, 1]));
  });
});

describe('the check number', () => {
  const poses = [...weaveHand(weave, faults)];
  const half = (): ReturnType<typeof createSimulation> => {
    const sim = createSimulation(meta.simulation);
    for (const pose of poses.slice(0, 180)) sim.step(pose);
    return sim;
  };

  it('moves with every field that decides the future', () => {
    const names = SAVED;
    expect(names.length).toBeGreaterThan(20);
    const sim = half();
    const before = sim.hash();
    for (const name of names) {
      const field = sim.fields()[name] as Float64Array;
      // A cell of the middle: beyond padding, in the window.
      const at = name === 'coarse' || name === 'active' ? 0 : field.length >> 1;
      let cell = at;
      const moved = (): boolean => {
        const old = field[cell]!;
        field[cell] = old === 0 ? 1 : Number.isNaN(old) ? 1 : -old - 1;
        const is = sim.hash() !== before;
        field[cell] = old;
        return is;
      };
      // Guards between rods are padding: the next cell is not.
      while (!moved() && cell < at + 12) cell++;
      expect(cell, name).toBeLessThan(at + 12);
    }
    expect(sim.hash()).toBe(before);
  });

  it('counts every NaN as one, whatever its bits', () => {
    const sim = half();
    const before = sim.hash();
    const level = sim.fields().wetLevel as Float64Array;
    const words = new Uint32Array(level.buffer, level.byteOffset, level.length * 2);
    const at = level.findIndex((v) => Number.isNaN(v));
    words[2 * at] = 5;
    words[2 * at + 1] = 0xfff80001;
    expect(level[at]).toBeNaN();
    expect(sim.hash()).toBe(before);
  });

  it('moves with the last pose, which the next step starts from', () => {
    const a = createSimulation(meta.simulation);
    const b = createSimulation(meta.simulation);
    const pose = { ...poses[0]!, trigger: false };
    a.step(pose);
    b.step({ ...pose, u_mm: pose.u_mm + 3 });
    expect(a.hash()).not.toBe(b.hash());
  });
});
