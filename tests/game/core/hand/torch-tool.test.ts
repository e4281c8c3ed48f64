import { describe, expect, it } from 'vitest';
import type { TorchSample } from '../../../../game/core/hand/sample.ts';
import { RESTRIKE_S, TorchTool } from '../../../../game/core/hand/torch-tool.ts';

function at(at_ms: number, trigger = true): TorchSample {
  return { at_ms, u_mm: 1, y_mm: 4, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger };
}

/** A torch with everything it tells written down. */
function bench() {
  const said: string[] = [];
  const known: number[] = [];
  const tool = new TorchTool({
    strike: () => said.push('strike'),
    samples: (s, until) => {
      if (s.length > 0) said.push(s.map((x) => (x.trigger ? 'on' : 'off')).join(' '));
      known.push(until);
    },
    finish: () => said.push('finish'),
    changed: (state) => said.push(state),
  });
  return { tool, said, known };
}

describe('torch tool', () => {
  it('strikes once, welds, goes out, and may strike again in the same attempt', () => {
    const { tool, said } = bench();
    tool.press(at(0));
    tool.move([at(10)]);
    tool.release(at(20, false));
    tool.press(at(1000));
    expect(said).toEqual(['strike', 'welding', 'on', 'off', 'out', 'on', 'welding']);
  });

  it('ends by itself when the arc has been out long enough', () => {
    const { tool, said } = bench();
    tool.press(at(0));
    tool.release(at(100, false));
    tool.tick(100 + RESTRIKE_S * 1000 - 1, 0);
    expect(tool.state).toBe('out');
    expect(tool.restrikeLeft_s(100 + 1000)).toBeCloseTo(RESTRIKE_S - 1);
    tool.tick(100 + RESTRIKE_S * 1000, 0);
    expect(said.slice(-2)).toEqual(['finish', 'stopped']);
  });

  it('ends in the middle of welding with the trigger off', () => {
    const { tool, said } = bench();
    tool.press(at(0));
    tool.finish(50);
    expect(said.slice(-3)).toEqual(['off', 'finish', 'stopped']);
  });

  it('tells every frame up to when its readings are complete, while an attempt runs', () => {
    const { tool, known } = bench();
    tool.tick(5, 0);
    tool.press(at(10));
    tool.tick(30, 22);
    tool.move([at(40)]);
    tool.tick(50, 42);
    expect(known).toEqual([22, 40, 42]);
  });

  it('moves the torch without telling the bench before the strike and after the end', () => {
    const { tool, said } = bench();
    tool.move([at(0, false)]);
    expect(said).toEqual([]);
    expect(tool.last?.u_mm).toBe(1);
    tool.press(at(10));
    tool.ended();
    tool.move([at(20)]);
    tool.press(at(30));
    expect(said).toEqual(['strike', 'welding', 'stopped']);
  });

  it('takes a cold piece only when asked to', () => {
    const { tool } = bench();
    tool.press(at(0));
    tool.ended();
    tool.again();
    expect(tool.state).toBe('idle');
  });
});
