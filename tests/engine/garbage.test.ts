import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

/**
 * No array and no object is made in a tick. What is left are numbers: V8 boxes each that is handed to a function it does not draw in, 16 bytes
 * a piece, 3.2 kB a tick in all with a pool of ordinary size. Twice a tick an object of the wire and a few closures, as there once were,
 * come to over 5 kB.
 */
const MOST_BYTES = 4096;

describe('a tick', () => {
  it('makes no arrays or objects, over 30 s of weld', () => {
    const script = fileURLToPath(new URL('./garbage/weld.mts', import.meta.url));
    // Compiled in step with the weld: with a busy machine's compiler lagging behind, more numbers are boxed.
    const flags = [
      '--no-concurrent-recompilation',
      '--import',
      'tsx',
      '--expose-gc',
      '--min-semi-space-size=128',
      '--max-semi-space-size=128',
    ];
    const said = JSON.parse(execFileSync(process.execPath, [...flags, script], { encoding: 'utf8' }));
    expect(said).toMatchObject({ seconds: 30, collected: false });
    expect(said.bytesPerTick).toBeLessThan(MOST_BYTES);
  }, 120_000);
});
