import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { IN_BROWSER } from '../slow/files.ts';
import { nativeEngine } from '../support/native-engine.ts';
import { WHOLE } from '../support/share.ts';

/**
 * Tests in a real browser: one file at a time, since they weld in real time, and one Chromium for all of them. With TEST_SHARE=whole those
 * that act out whole days, which `npm test` leaves to the slow suite.
 */
export default defineConfig({
  test: {
    root: fileURLToPath(new URL('../..', import.meta.url)),
    include: WHOLE ? IN_BROWSER : ['tests/browser/**/*.test.ts'],
    exclude: WHOLE ? [] : IN_BROWSER,
    globalSetup: ['tests/browser/support/shared.ts'],
    fileParallelism: false,
    hookTimeout: 60_000,
    testTimeout: 120_000,
    passWithNoTests: false,
    ...nativeEngine,
  },
});
