import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** `npm run test:slow`: the same kinds of check on finer meshes, minutes instead of seconds. */
export default defineConfig({
  test: {
    root: fileURLToPath(new URL('../..', import.meta.url)),
    include: ['tests/slow/**/*.test.ts'],
    testTimeout: 1_200_000,
    hookTimeout: 120_000,
    passWithNoTests: false,
  },
});
