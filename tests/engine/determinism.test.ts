import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  createRecorder,
  createSimulation,
  defaultWeave,
  noFaults,
  type Recording,
  recordPoses,
  replay,
  weaveHand,
} from '../../engine/index.ts';
// @ts-expect-error: a build script without types
import { constantsText, sourceDigest } from '../../engine/kernel/simd/build.mjs';
import { storedWelds } from '../golden/welds.ts';
import { optionsOf, weld } from '../support/weld.ts';

const short = { joint: { length_mm: 30 }, weave: { length_mm: 20 } };

/** Welded once a seed. */
const made = new Map<number, Recording>();

function recorded(seed: number): Recording {
  const known = made.get(seed);
  if (known) return known;
  const recording = weldRecorded(seed);
  made.set(seed, recording);
  return recording;
}

function weldRecorded(seed: number): Recording {
  const simulation = optionsOf(short);
  const weave = { ...defaultWeave(), length_mm: 14 };
  const faults = { ...noFaults(seed), tremor_mm: 0.4, timing: 0.2 };
  return recordPoses(
    {
      simulation,
      origin: { kind: 'robot', weave, faults },
      device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: null },
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise: null,
    },
    weaveHand(weave, faults),
  );
}

describe('kernels', () => {
  it.each([
    ['tee', {}],
    ['lap', { kind: 'lap' as const, plateA_mm: 5, plateB_mm: 4.4 }],
  ])('the SIMD twin gives the reference kernel’s bits: %s', (_name, joint) => {
    const c = { joint: { length_mm: 22, ...joint }, weave: { length_mm: 8 }, cell_mm: 1 };
    const [simd, plain] = [weld({ ...c, kernel: 'simd' }), weld({ ...c, kernel: 'reference' })];
    // A machine without SIMD would compare one kernel with itself.
    expect([simd.kernel, plain.kernel]).toEqual(['simd', 'reference']);
    expect(simd.hash()).toBe(plain.hash());
  });

  it('the twins’ constants are made from one source, and are current', () => {
    const committed = readFileSync(new URL('../../engine/kernel/simd/constants.ts', import.meta.url), 'utf8');
    expect(committed).toBe(constantsText());
  });

  it('the committed WebAssembly is of the sources as they are (that it is what they compile to: tests/slow/kernel.test.ts)', () => {
    const committed = readFileSync(new URL('../../engine/kernel/simd-module.ts', import.meta.url), 'utf8');
    expect(/\(digest (\w+)\)/.exec(committed)?.[1]).toBe(sourceDigest());
  });
});

describe('recording', () => {
  it('replays to the hash it was welded with', () => {
    const recording = recorded(3);
    const again: Recording = JSON.parse(JSON.stringify(recording));
    expect(replay(again).hash()).toBe(recording.stateHash);
    // Not the constant against itself: the version whose bits the golden welds hold.
    expect(recording.engine).toBe(storedWelds().engine);
  });

  it('another seed (4, not 3) welds another bead', () => {
    expect(recorded(4).stateHash).not.toBe(recorded(3).stateHash);
  });

  it('quantises what is stepped, so nothing is lost between welding and file', () => {
    const recorder = createRecorder(createSimulation(optionsOf(short)), {
      origin: { kind: 'hand' },
      device: { kind: 'mouse', measures: { tipToWork: false, workAngle: false, travelAngle: false }, scale: null },
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise: null,
    });
    const stepped = recorder.add({
      u_mm: 1.23456,
      y_mm: 9.87654,
      tipToWork_mm: 12.3456,
      workAngle_deg: 44.96,
      travelAngle_deg: -7.777,
      trigger: true,
    });
    expect(stepped).toEqual({
      u_mm: 1.23,
      y_mm: 9.88,
      tipToWork_mm: 12.35,
      workAngle_deg: 45,
      travelAngle_deg: -7.8,
      trigger: true,
    });
  });
});

describe('snapshot', () => {
  it('restores to the same future, bit for bit', () => {
    const options = optionsOf(short);
    const poses = [...weaveHand({ ...defaultWeave(), length_mm: 16 })];
    const half = poses.length >> 1;
    const a = createSimulation(options);
    for (const p of poses.slice(0, half)) a.step(p);
    const saved = a.snapshot();
    const b = createSimulation(options);
    b.restore(saved);
    expect(b.hash()).toBe(a.hash());
    for (const p of poses.slice(half)) {
      a.step(p);
      b.step(p);
    }
    expect(b.hash()).toBe(a.hash());
    expect(b.accounts()).toEqual(a.accounts());
    a.restore(saved);
    for (const p of poses.slice(half)) a.step(p);
    expect(a.hash()).toBe(b.hash());
  });

  it('refuses bytes of another layout', () => {
    const a = createSimulation(optionsOf(short));
    const b = createSimulation(optionsOf({ joint: { length_mm: 31 } }));
    expect(() => b.restore(a.snapshot())).toThrow('the layout of these options');
    expect(() => b.restore(new ArrayBuffer(8))).toThrow('snapshot');
  });
});
