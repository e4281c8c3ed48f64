/** What makes the served page installable and lets it open without a network: manifest, icons, and the service worker with the list of its files. */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-wasm';
import { withResvg } from './resvg.ts';

/** Sizes that browsers ask an installed page for, px. */
const ICONS = [192, 512] as const;
/** Pages of a school's lab need the lab; notices are for whoever unpacks the folder. */
const LEFT_OUT = /^(lab\/|sw\.js$|NOTICES\.)/;

const manifest = {
  id: './',
  name: 'Toehold',
  short_name: 'Toehold',
  description: 'A weave practice bench for vertical-up MAG fillets.',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: '#f6f3ec',
  theme_color: '#f6f3ec',
  icons: [
    ...ICONS.map((px) => ({
      src: `icons/${px}.png`,
      sizes: `${px}x${px}`,
      type: 'image/png',
      purpose: 'any maskable',
    })),
    { src: 'icons/icon.svg', sizes: 'any', type: 'image/svg+xml' },
  ],
};

/** Writes manifest and icons into a finished build, and names the manifest in its page. */
export async function addManifest(out: string, game: string): Promise<void> {
  const svg = readFileSync(join(game, 'offline', 'icon.svg'), 'utf8');
  mkdirSync(join(out, 'icons'), { recursive: true });
  writeFileSync(join(out, 'icons', 'icon.svg'), svg);
  await withResvg();
  for (const px of ICONS) {
    const png = new Resvg(svg, { fitTo: { mode: 'width', value: px } }).render().asPng();
    writeFileSync(join(out, 'icons', `${px}.png`), png);
  }
  writeFileSync(join(out, 'manifest.webmanifest'), `${JSON.stringify(manifest, null, 2)}\n`);
}

/** Writes the service worker: last of all, since it lists every file of the build by name and its name follows from their bytes. */
export function addServiceWorker(out: string, game: string): void {
  const files = readdirSync(out, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(out.length + 1)
        .replaceAll('\\', '/'),
    )
    .filter((name) => !LEFT_OUT.test(name))
    .sort();
  const digest = createHash('sha256');
  for (const name of files) digest.update(name).update(readFileSync(join(out, name)));
  const source = readFileSync(join(game, 'offline', 'sw.js'), 'utf8')
    .replace('/* files */ []', JSON.stringify(files))
    .replace('/* digest */', digest.digest('hex').slice(0, 16));
  writeFileSync(join(out, 'sw.js'), source);
}
