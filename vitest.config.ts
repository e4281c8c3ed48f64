import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Finer meshes: `npm run test:slow`.
    exclude: ['tests/slow/**'],
    testTimeout: 120_000,
    passWithNoTests: false,
  },
});
