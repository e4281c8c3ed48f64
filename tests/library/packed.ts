import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, renameSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const HERE = fileURLToPath(new URL('./', import.meta.url));
const WINDOWS = process.platform === 'win32';

/** What `prepare` and `npm pack` look at; the rest of the repository is not there, so nothing can lean on it. */
const SOURCES = ['package.json', 'tsconfig.json', 'tsconfig.lib.json', 'README.md', 'LICENSE', 'engine', 'scoring'];

/** What somebody who uses the package would have installed besides it. */
const OWN_PACKAGES = ['typescript', '@types/node'];

export interface Packed {
  /** A project of its own, with the package in its node_modules and the examples compiled in `out`. */
  project: string;
  /** The package as unpacked. */
  home: string;
  /** Files in the tarball, paths with slashes. */
  files: string[];
}

/** Runs a program; everything it said on both channels. @throws Error with that when it fails */
export function run(command: string, args: readonly string[], cwd: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd, shell: WINDOWS && command === 'npm' });
    let said = '';
    child.stdout.on('data', (piece) => {
      said += piece;
    });
    child.stderr.on('data', (piece) => {
      said += piece;
    });
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) resolve(said);
      else reject(new Error(`${command} ${args.join(' ')} ended with ${code}:\n${said}`));
    });
  });
}

/**
 * Packs a copy of the sources as for a registry and installs the tarball in a project of its own, without network: of node_modules only
 * what the package declares is linked in, so an import it does not declare fails here.
 * @param temp an empty folder for all of it
 */
export async function packAndInstall(temp: string): Promise<Packed> {
  const copy = join(temp, 'sources');
  mkdirSync(copy);
  for (const name of SOURCES) cpSync(join(ROOT, name), join(copy, name), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'), 'junction');
  await run('npm', ['pack', '--silent', '--offline', '--pack-destination', temp], copy);

  const project = join(temp, 'project');
  const modules = join(project, 'node_modules');
  const home = join(modules, 'toehold');
  mkdirSync(modules, { recursive: true });
  const tarball = readdirSync(temp).find((name) => name.endsWith('.tgz'))!;
  await run('tar', ['xzf', join(temp, tarball), '-C', project], temp);
  renameSync(join(project, 'package'), home);
  const { dependencies } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8'));
  for (const name of [...Object.keys(dependencies), ...OWN_PACKAGES]) {
    mkdirSync(dirname(join(modules, name)), { recursive: true });
    symlinkSync(join(ROOT, 'node_modules', name), join(modules, name), 'junction');
  }
  const files = readdirSync(home, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(home.length + 1)
        .replaceAll('\\', '/'),
    );
  return { project, home, files };
}

/** Puts the examples into the project and compiles them to `out`, unchecked: `typeFaultsOf` does that while they run. */
export function compileExamples({ project }: Packed): void {
  cpSync(join(HERE, 'examples'), join(project, 'examples'), { recursive: true });
  mkdirSync(join(project, 'out'));
  writeFileSync(join(project, 'package.json'), JSON.stringify({ name: 'examples', private: true, type: 'module' }));
  const compilerOptions = {
    target: 'ES2022',
    module: 'NodeNext',
    types: ['node'],
    strict: true,
    exactOptionalPropertyTypes: true,
    noUncheckedIndexedAccess: true,
    rewriteRelativeImportExtensions: true,
    skipLibCheck: false,
    noEmit: true,
  };
  writeFileSync(join(project, 'tsconfig.json'), JSON.stringify({ compilerOptions, include: ['examples'] }));
  for (const file of readdirSync(join(project, 'examples'))) {
    const made = ts.transpileModule(readFileSync(join(project, 'examples', file), 'utf8'), {
      compilerOptions: {
        target: ts.ScriptTarget.ES2022,
        module: ts.ModuleKind.ESNext,
        rewriteRelativeImportExtensions: true,
      },
    });
    writeFileSync(join(project, 'out', file.replace(/\.ts$/, '.js')), made.outputText);
  }
}

/**
 * Type-checks the examples as a strict project would, against the package's own declarations, which are checked too.
 * @returns the compiler's complaints, a line each
 */
export async function typeFaultsOf({ project }: Packed): Promise<string[]> {
  try {
    await run(process.execPath, [join('node_modules', 'typescript', 'bin', 'tsc'), '-p', '.'], project);
    return [];
  } catch (error) {
    const [, ...complaints] = (error as Error).message.split('\n');
    return complaints.filter((line) => line.trim() !== '');
  }
}

/** Runs a compiled example in plain Node and hands back what it exports. */
export async function runExample({ project }: Packed, name: string): Promise<Record<string, unknown>> {
  const out = join(project, `${name}.json`);
  await run(process.execPath, [join(HERE, 'run-example.mjs'), join(project, 'out', `${name}.js`), out], project);
  return JSON.parse(readFileSync(out, 'utf8'));
}
