import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkPackage, Package } from '@arethetypeswrong/core';
import { publint } from 'publint';
import { formatMessage } from 'publint/utils';
import type { Packed } from './packed.ts';

/** What publint finds wrong in package.json against the files beside it, a sentence each. */
export async function publintOf({ home }: Packed): Promise<string[]> {
  const { messages, pkg } = await publint({ pkgDir: home, pack: false, strict: true });
  return messages.map((message) => formatMessage(message, pkg) ?? message.code);
}

/**
 * Ways of resolving that the package does not serve, and why: it is ES modules alone, found through `exports`. Node 20.19 and newer take such
 * modules by `require` as well, but TypeScript's older modes know neither.
 */
const NOT_SERVED: ReadonlySet<string> = new Set(['node10', 'node16-cjs']);

/** What arethetypeswrong finds in the types of every way in, as an ES module and for a bundler. */
export async function typesWrongIn({ home, files }: Packed): Promise<string[]> {
  const texts = files.filter((file) => /\.(js|d\.ts|json)$/.test(file));
  const content = Object.fromEntries(
    texts.map((file) => [`/node_modules/toehold/${file}`, readFileSync(join(home, file), 'utf8')]),
  );
  const { version } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8'));
  const checked = await checkPackage(new Package(content, 'toehold', version));
  if (checked.types === false) return ['no types at all'];
  return checked.problems.flatMap((problem) => {
    const mode = 'resolutionKind' in problem ? problem.resolutionKind : '';
    return NOT_SERVED.has(mode) ? [] : [`${problem.kind} ${mode}`.trim()];
  });
}
