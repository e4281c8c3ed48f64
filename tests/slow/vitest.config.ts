import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { nativeEngine } from '../support/native-engine.ts';
import { SHARED_HERE, WHOLE_HERE } from './files.ts';

/** `npm run test:slow`: the same kinds of check on finer meshes, minutes instead of seconds. */
export default defineConfig({
  test: {
    root: fileURLToPath(new URL('../..', import.meta.url)),
    include: ['tests/slow/**/*.test.ts', ...WHOLE_HERE, ...SHARED_HERE],
    // The lab is tested on a PostgreSQL server here; tests/run.mjs runs its tests a second time, on the embedded database.
    env: { LAB_STORE: process.env.LAB_STORE ?? 'server', TEST_SHARE: 'whole' },
    // Left alone, one core is kept free for the watcher that a single run does not have.
    maxWorkers: availableParallelism(),
    // Files of one worker share their modules: reading them anew for each took a tenth of the whole.
    isolate: false,
    // Labs killed and pages driven against the clock, with everything else going on beside them: as for the browser's tests, and said as there.
    retry: 1,
    testTimeout: 1_200_000,
    hookTimeout: 120_000,
    passWithNoTests: false,
    ...nativeEngine,
  },
});
