import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BESIDE, IN_BROWSER } from '../slow/files.ts';
import { nativeEngine } from '../support/native-engine.ts';
import { WHOLE } from '../support/share.ts';

/**
 * Tests in a real browser: one file at a time, since they weld in real time, and one Chromium for all of them. With TEST_SHARE=whole those
 * that act out whole days, which `npm test` leaves to the slow suite; with BROWSER_TESTS=beside those that the slow suite runs beside others.
 */
const included = process.env.BROWSER_TESTS === 'beside' ? BESIDE : WHOLE ? IN_BROWSER : ['tests/browser/**/*.test.ts'];

export default defineConfig({
  test: {
    root: fileURLToPath(new URL('../..', import.meta.url)),
    include: included,
    exclude: WHOLE ? [] : [...IN_BROWSER, ...BESIDE],
    globalSetup: ['tests/browser/support/shared.ts'],
    fileParallelism: false,
    // Files share their modules: reading them anew for each takes as long as many a file's tests.
    isolate: false,
    // Welds keep time with the wall's clock, on whatever else the machine does: one lost to that is played again, and the closing lines say so.
    retry: 1,
    hookTimeout: 60_000,
    testTimeout: 120_000,
    passWithNoTests: false,
    ...nativeEngine,
  },
});
