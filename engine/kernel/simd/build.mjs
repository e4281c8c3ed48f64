/** Compiles heat.ts to WebAssembly and writes it as ../simd-module.ts (base64), so that no loader, file or network is needed. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const asc = join(dirname(createRequire(import.meta.url).resolve('assemblyscript/package.json')), 'bin', 'asc.js');

export function compile() {
  const dir = mkdtempSync(join(tmpdir(), 'toehold-kernel-'));
  const out = join(dir, 'heat.wasm');
  try {
    execFileSync(process.execPath, [
      asc,
      join(here, 'heat.ts'),
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

export function moduleText(base64) {
  return `/** Made from simd/heat.ts by \`npm run build:kernel\`; a test checks that it is current. */\nexport const HEAT_WASM =\n  '${base64}';\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(join(here, '..', 'simd-module.ts'), moduleText(compile()));
}
