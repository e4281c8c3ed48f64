/** Makes the twins' constants, compiles heat.ts and surface.ts to WebAssembly and writes them as ../simd-module.ts (base64), so that no loader, file or network is needed. */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  COEFFICIENT,
  COEFFICIENT_WORDS,
  GAP,
  GAP_WORDS,
  PAD,
  PROGRAM,
  PROGRAM_WORDS,
  ROD,
  TABLE_WORDS,
} from '../layout.ts';

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

/** What the twins agree on, in AssemblyScript: places in bytes, counts of words as shifts. */
export function constantsText() {
  const bytes = (word) => 4 * word;
  const shift = (words) => Math.log2(4 * words);
  const values = {
    PAD,
    ROD_SKIP: ROD.SKIP,
    ROD_FULL: ROD.FULL,
    ROD_PARTIAL: ROD.PARTIAL,
    ROD_SHIFT: shift(PROGRAM_WORDS),
    NEIGHBOUR: bytes(PROGRAM.NEIGHBOUR),
    LIST_START: bytes(PROGRAM.LIST_START),
    LIST_LENGTH: bytes(PROGRAM.LIST_LENGTH),
    ALONG: bytes(COEFFICIENT.ALONG),
    LOSS: bytes(COEFFICIENT.LOSS),
    GAP_SHIFT: shift(GAP_WORDS),
    GAP_SECOND: bytes(GAP.SECOND),
    GAP_SHAPE: bytes(GAP.SHAPE),
    GAP_OPEN: bytes(GAP.OPEN),
    GAP_RISE_P: bytes(GAP.RISE_P),
    GAP_RISE_Q: bytes(GAP.RISE_Q),
    GAP_SOLIDUS: bytes(GAP.SOLIDUS),
    TABLE_LAST: TABLE_WORDS / 2 - 1,
  };
  if (COEFFICIENT_WORDS !== PROGRAM_WORDS) throw new Error('program and coefficients of a rod are stepped by one shift');
  const lines = Object.entries(values).map(([name, value]) => `export const ${name}: i32 = ${value};\n`);
  return `// Made from ../layout.ts by \`npm run build:kernel\`; a test checks that it is current.\n${lines.join('')}`;
}

/** Digest of everything that decides what is compiled, so that a stale module shows without compiling it. */
export function sourceDigest() {
  const hash = createHash('sha256');
  for (const name of ['heat.ts', 'surface.ts', 'constants.ts', 'build.mjs'])
    hash.update(readFileSync(join(here, name), 'utf8').replaceAll('\r\n', '\n'));
  return hash.digest('hex').slice(0, 32);
}

/** The text of ../simd-module.ts. */
export function moduleText() {
  return (
    `/** Made from simd/*.ts (digest ${sourceDigest()}) by \`npm run build:kernel\`; a test checks that it is current. */\n` +
    `export const HEAT_WASM =\n  '${compile('heat')}';\n\nexport const SURFACE_WASM =\n  '${compile('surface')}';\n`
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(join(here, 'constants.ts'), constantsText());
  writeFileSync(join(here, '..', 'simd-module.ts'), moduleText());
}
