import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { createFootprint } from '../../engine/arc/footprint.ts';
import { layColdPiece } from '../../engine/cold-piece.ts';
import { defaultOptions } from '../../engine/index.ts';
import { createPoolWork } from '../../engine/pool/settle.ts';

/** V8's own word for it: whether two objects have one hidden class, so that code compiled for the one serves the other. */
function classTeller(): (a: object, b: object) => boolean {
  setFlagsFromString('--allow-natives-syntax');
  const tell = runInNewContext('(a, b) => %HaveSameMap(a, b)');
  // Compiled at its first call, and only under this flag.
  tell({}, {});
  setFlagsFromString('--no-allow-natives-syntax');
  return tell;
}

/** Everything a weld reads its numbers from. */
function partsOf(): Record<string, object> {
  const { joint, process, cell_mm } = defaultOptions();
  const s = layColdPiece({ joint: { ...joint, length_mm: 20 }, process: { ...process }, cell_mm });
  const { heat, coarse, plan } = s;
  const pool = createPoolWork(s);
  return {
    state: s,
    options: s.options,
    joint: s.options.joint,
    process: s.options.process,
    heat,
    coarse,
    plan,
    pool,
    rods: plan.rods,
    tiles: coarse.tiles,
    layout: heat.layout,
    table: heat.table,
    ledger: s.ledger,
    calibration: s.cal,
    nodes: pool.nodes,
    footprint: createFootprint(s),
  };
}

describe('every weld of a process', () => {
  it('has the hidden classes of the one before: what is compiled for one serves all', () => {
    const sameClass = classTeller();
    expect(sameClass({ a: 1, b: 2 }, { b: 2, a: 1 })).toBe(false);
    const welds = Array.from({ length: 5 }, partsOf);
    const before = welds.at(-2)!;
    const apart = Object.entries(welds.at(-1)!).filter(([name, part]) => !sameClass(part, before[name]!));
    expect(apart.map(([name]) => name)).toEqual([]);
  });
});
