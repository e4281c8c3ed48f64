import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Browser tests share one Chromium (tests/browser/vitest.config.ts); finer meshes and foreign browsers are `npm run test:slow`.
    // So are the lab under made-up requests, tried as the wrong person, and restored from a backup.
    exclude: ['tests/browser/**', 'tests/slow/**', 'tests/lab/{backup,fuzz,walls}.test.ts'],
    hookTimeout: 60_000,
    testTimeout: 120_000,
    passWithNoTests: false,
    // Left alone, one core is kept free for the watcher that a single run does not have: on two cores that is half the machine.
    maxWorkers: availableParallelism(),
    // Files of one worker share their modules, so the welds that several of them look at are made once (tests/support).
    isolate: false,
  },
});
