import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const GAME = join(ROOT, 'game');

/** What only a browser or a process has. The core is given a clock, a bench and stores instead. */
const OUTSIDE =
  /\b(document|window|navigator|localStorage|sessionStorage|indexedDB|Worker|BroadcastChannel|performance|setTimeout|setInterval|requestAnimationFrame|fetch|Date\.now|new Date\(\)|Math\.random|crypto)\b(?!['’])/;
const PACKAGES = ['@preact/signals-core', 'matter-js', 'zod'];

function files(room: string): string[] {
  return readdirSync(join(GAME, room), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(GAME, room, name));
}

/** Code without comments and without what stands in quotes. */
function code(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\/|\/\/[^\n]*/g, '').replace(/'[^'\n]*'|`[^`]*`/g, "''");
}

/** What a file imports: packages by name, files from the project's root. */
function imports(file: string): string[] {
  const text = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');
  return [...text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map(([, name]) =>
    name.startsWith('.') ? relative(ROOT, join(dirname(file), name)) : name,
  );
}

describe('the rooms of the game', () => {
  it.each(files('core').map((file) => [relative(GAME, file), file]))('%s knows no browser and no word', (_, file) => {
    expect(code(readFileSync(file, 'utf8')).match(OUTSIDE)?.[0]).toBeUndefined();
    const strangers = imports(file).filter(
      (name) => !name.startsWith('game/core/') && !['engine/index.ts', 'scoring/index.ts', ...PACKAGES].includes(name),
    );
    expect(strangers).toEqual([]);
  });

  it('panels, picture and sound reach neither stores nor devices; only main.tsx joins core and browser', () => {
    const reaching = ['panels', 'view', 'audio', 'locale']
      .flatMap(files)
      .concat(join(GAME, 'app.tsx'), join(GAME, 'page.ts'))
      .filter((file) => imports(file).some((name) => name.startsWith('game/browser/')));
    expect(reaching.map((file) => relative(GAME, file))).toEqual([]);
    expect(imports(join(GAME, 'main.tsx'))).toContain('game/browser/ports.ts');
  });

  it('the picture and the sound are never read back by the core or by words', () => {
    const back = [...files('core'), ...files('locale')].filter((file) =>
      imports(file).some((name) => /^game\/(view|audio|panels)\//.test(name)),
    );
    expect(back).toEqual([]);
  });
});
