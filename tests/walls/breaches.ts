/** Breaches of the walls between the rooms, as dependency-cruiser and knip see them, a line each; and the list of those still standing. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
export const KNOWN_FILE = new URL('known.json', import.meta.url);

/** Runs a tool of node_modules; these tools end with 1 when they have something to say. @throws when it says nothing that is JSON */
function ask<T>(program: string, ...args: string[]): T {
  const { stdout, stderr } = spawnSync(process.execPath, [join(ROOT, 'node_modules', program), ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  try {
    return JSON.parse(stdout) as T;
  } catch {
    throw new Error(`${program} gave no answer: ${stderr || stdout}`);
  }
}

interface Cruised {
  summary: {
    totalCruised: number;
    violations: { rule: { name: string }; from: string; to: string }[];
  };
}

/** Imports that go where they may not; of a circle every import that takes part in it, so that taking any out only shortens the list. */
export function importBreaches(): { files: number; breaches: string[] } {
  const { summary } = ask<Cruised>(
    'dependency-cruiser/bin/dependency-cruise.mjs',
    ...['engine', 'scoring', 'game', '--config', '.dependency-cruiser.mjs', '--output-type', 'json'],
  );
  const lines = summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`);
  return { files: summary.totalCruised, breaches: [...new Set(lines)].sort() };
}

type Names = { name: string }[];

interface Knipped {
  issues: {
    file: string;
    files?: Names;
    exports?: Names;
    types?: Names;
    dependencies?: Names;
    devDependencies?: Names;
    unlisted?: Names;
    unresolved?: Names;
  }[];
}

/** Exports, files and packages that nothing uses. */
export function deadExports(): string[] {
  const { issues } = ask<Knipped>('knip/bin/knip.js', '--reporter', 'json', '--no-progress');
  const kinds = ['files', 'exports', 'types', 'dependencies', 'devDependencies', 'unlisted', 'unresolved'] as const;
  return issues
    .flatMap((issue) =>
      kinds.flatMap((kind) =>
        (issue[kind] ?? []).map(({ name }) =>
          kind === 'files' ? `dead file: ${issue.file}` : `dead ${kind}: ${issue.file} ${name}`,
        ),
      ),
    )
    .sort();
}

export function known(): string[] {
  return JSON.parse(readFileSync(KNOWN_FILE, 'utf8'));
}
