/**
 * Commands and papers weld the file they are given each time they run. Here a recording is welded again once by a worker, however many tests
 * look at it; that welding it twice gives the same is tested by itself (tests/engine/determinism.test.ts).
 */
import { createHash } from 'node:crypto';
import { vi } from 'vitest';
import type { Attempt } from '../../scoring/index.ts';

/** Welded attempts hold their metal: so many are kept. */
const KEPT = 16;

vi.mock('../../scoring/attempt/attempt.ts', async (original) => {
  const real = await original<typeof import('../../scoring/attempt/attempt.ts')>();
  const kept = new Map<string, Attempt>();
  const attemptOf: typeof real.attemptOf = (recording) => {
    const { simulation, poses } = recording;
    const key = createHash('sha256').update(JSON.stringify({ simulation, poses })).digest('base64');
    const attempt = kept.get(key) ?? real.attemptOf(recording);
    // The one looked at last goes last.
    kept.delete(key);
    kept.set(key, attempt);
    for (const oldest of kept.keys()) if (kept.size > KEPT) kept.delete(oldest);
    return attempt;
  };
  return { ...real, attemptOf };
});
