/** Compiles heat.ts and surface.ts to WebAssembly and writes them as ../simd-module.ts (base64), so that no loader, file or network is needed. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const asc = join(dirname(createRequire(import.meta.url).resolve('assemblyscript/package.json')), 'bin', 'asc.js');

/** One module as base64. */
export function compile(name) {
  const dir = mkdtempSync(join(tmpdir(), 'toehold-kernel-'));
  const out = join(dir, `${name}.wasm`);
  try {
    execFileSync(process.execPath, [
      asc,
      join(here, `${name}.ts`),
      '--outFile',
      out,
      '-O3',
      '--converge',
      '--noAssert',
      '--runtime',
      'stub',
      '--enable',
      'simd',
      '--importMemory',
      '--initialMemory',
      '1',
    ]);
    return readFileSync(out).toString('base64');
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}

/** The text of ../simd-module.ts. */
export function moduleText() {
  return (
    '/** Made from simd/*.ts by `npm run build:kernel`; a test checks that it is current. */\n' +
    `export const HEAT_WASM =\n  '${compile('heat')}';\n\nexport const SURFACE_WASM =\n  '${compile('surface')}';\n`
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(join(here, '..', 'simd-module.ts'), moduleText());
}
