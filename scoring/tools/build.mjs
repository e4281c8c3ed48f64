// `npm run prepare`: compiles engine and scoring to dist, with types, and writes every file format as JSON Schema beside them.
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const DIST = join(ROOT, 'dist');
const PARTS = ['engine', 'scoring'];

/** What an earlier build left behind of sources that are gone would be packed with the rest. */
function dropOrphans(part) {
  const folder = join(DIST, part);
  if (!existsSync(folder)) return;
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const built = join(entry.parentPath, entry.name);
    const source = built.slice(DIST.length + 1).replace(/(\.d\.ts|\.js|\.js\.map)$/, '.ts');
    if (!existsSync(join(ROOT, source))) rmSync(built);
  }
}

// The compiler in machine code: a tenth of the time. What asks the compiler questions (documentation, walls) has the one in JavaScript.
const typescript = createRequire(import.meta.url).resolve('typescript-native/package.json');
const tsc = spawnSync(process.execPath, [join(dirname(typescript), 'bin', 'tsc'), '-p', 'tsconfig.lib.json'], {
  cwd: ROOT,
  stdio: 'inherit',
});
if (tsc.status !== 0) process.exit(tsc.status ?? 1);
PARTS.forEach(dropOrphans);
chmodSync(join(DIST, 'scoring', 'node', 'cli', 'main.js'), 0o755);

const { jsonSchema, jsonSchemaNames } = await import('../../dist/scoring/schema/json-schema.js');
mkdirSync(join(DIST, 'schema'), { recursive: true });
for (const name of jsonSchemaNames) {
  writeFileSync(join(DIST, 'schema', `${name}.json`), `${JSON.stringify(jsonSchema(name), null, 2)}\n`);
}
