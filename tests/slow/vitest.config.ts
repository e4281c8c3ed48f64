import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** `npm run test:slow`: the same kinds of check on finer meshes, minutes instead of seconds. */
export default defineConfig({
  test: {
    root: fileURLToPath(new URL('../..', import.meta.url)),
    // The lab's own tests once more, on a PostgreSQL server; `npm test` has run them on the embedded database.
    include: ['tests/slow/**/*.test.ts', 'tests/lab/{backup,fuzz,marks,migrations,school,walls,worker}.test.ts'],
    env: { LAB_STORE: 'server' },
    testTimeout: 1_200_000,
    hookTimeout: 120_000,
    passWithNoTests: false,
  },
});
