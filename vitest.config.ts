import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { WHOLE_HERE } from './tests/slow/files.ts';
import { nativeEngine } from './tests/support/native-engine.ts';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Browser tests share one Chromium (tests/browser/vitest.config.ts); what takes minutes is `npm run test:slow`.
    exclude: ['tests/browser/**', 'tests/slow/**', ...WHOLE_HERE],
    setupFiles: ['tests/support/weld-once.ts'],
    hookTimeout: 60_000,
    testTimeout: 120_000,
    passWithNoTests: false,
    // Left alone, one core is kept free for the watcher that a single run does not have: on two cores that is half the machine.
    maxWorkers: availableParallelism(),
    // Files of one worker share their modules, so the welds that several of them look at are made once (tests/support).
    isolate: false,
    ...nativeEngine,
  },
});
