// Makes a sheet of stills of the close view from real engine fields: cold, warm, hot, too far back, straight, woven, lap, finished.
// Usage: node game/tools/sheet.mjs FOLDER [scene,scene]. Needs Chromium ($CHROME_PATH or a usual place).
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { createServer } from 'vite';
import { fail, ROOT } from './install.mjs';

const [out, only] = process.argv.slice(2);
if (!out) fail('Say where the stills are to go: node game/tools/sheet.mjs FOLDER');
const program = process.env.CHROME_PATH ?? ['/usr/bin/chromium', '/usr/bin/google-chrome'].find((p) => existsSync(p));
if (!program) fail('No Chromium found: set CHROME_PATH to its program file.');
const fields = join(out, 'fields');
mkdirSync(out, { recursive: true });
if (!existsSync(fields) || only === 'weld')
  execFileSync('npx', ['tsx', join(ROOT, 'game/tools/sheet/fields.ts'), fields], { cwd: ROOT, stdio: 'inherit' });

const server = await createServer({
  root: join(ROOT, 'game'),
  configFile: join(ROOT, 'vite.config.ts'),
  logLevel: 'error',
  server: { port: 0, hmr: false, watch: null },
});
await server.listen();
const browser = await chromium.launch({
  executablePath: program,
  args: ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
});
const page = await browser.newPage({ viewport: { width: 900, height: 900 } });
page.on(
  'console',
  (message) => ['error', 'warning'].includes(message.type()) && process.stderr.write(`${message.text()}\n`),
);
page.on('pageerror', (error) => process.stderr.write(`${error.message}\n`));
await page.goto(
  `http://localhost:${server.config.server.port || server.httpServer.address().port}/tools/sheet/index.html`,
);
await page.waitForFunction(() => 'sheet' in window);

async function take(scene, name, wish) {
  const still = JSON.parse(readFileSync(join(fields, `${scene}.json`), 'utf8'));
  await page.evaluate(([s, w]) => window.sheet.draw(s, w), [still, wish]);
  await page.locator('canvas').screenshot({ path: join(out, `${name}.png`) });
  process.stdout.write(`${name}.png `);
}

const wanted = only && only !== 'weld' ? only.split(',') : null;
for (const file of readdirSync(fields)) {
  const scene = file.replace('.json', '');
  if (wanted && !wanted.some((name) => scene.startsWith(name))) continue;
  if (scene.endsWith('finished')) {
    await take(scene, `${scene}-bench`, {
      width_px: 520,
      height_px: 660,
      scale: 15,
      manner: 'bench',
      below_deg: 20,
      y_mm: 18,
    });
    continue;
  }
  await take(scene, scene, { width_px: 700, height_px: 700, scale: 20, manner: 'lens' });
}
if (!wanted || wanted.includes('plain'))
  await take('warm-left', 'warm-left-plain', { width_px: 700, height_px: 700, scale: 20, manner: 'plain' });
await browser.close();
await server.close();
