import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Tests in a real browser: one file at a time, since they weld in real time, and one Chromium for all of them. */
export default defineConfig({
  test: {
    root: fileURLToPath(new URL('../..', import.meta.url)),
    include: ['tests/browser/**/*.test.ts'],
    globalSetup: ['tests/browser/support/shared.ts'],
    fileParallelism: false,
    hookTimeout: 60_000,
    testTimeout: 120_000,
    passWithNoTests: false,
  },
});
