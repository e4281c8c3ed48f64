import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
// @ts-expect-error: a build script without types
import { moduleText } from '../../engine/kernel/simd/build.mjs';

it('the committed WebAssembly is what its source compiles to', () => {
  const committed = readFileSync(new URL('../../engine/kernel/simd-module.ts', import.meta.url), 'utf8');
  // Formatting aside: the strings themselves.
  const strings = (text: string): string[] => text.match(/'[A-Za-z0-9+/=]+'/g) ?? [];
  expect(strings(committed)).toEqual(strings(moduleText()));
  expect(strings(committed)).toHaveLength(2);
});
