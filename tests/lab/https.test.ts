import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { type RequestOptions, request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../../scoring/lab/serve.ts';
import { newLab, SETTINGS, type TestLab } from './support/school.ts';
import { stopServer } from './support/stores.ts';

const README = new URL('../../scoring/lab/README.md', import.meta.url);
const NAME = 'lab.school.internal';

/** The recipe as it stands in the readme, without its last line, which starts the lab. */
function recipe(): string[] {
  const block = /```\n(openssl req -x509[\s\S]*?)```/.exec(readFileSync(README, 'utf8'))![1]!;
  return block.trim().split('\n').slice(0, -1);
}

describe('a lab over https', () => {
  let folder: string;
  let t: TestLab;
  let served: Served;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'toehold-https-'));
    execFileSync('sh', ['-e', '-c', recipe().join('\n')], { cwd: folder, stdio: 'ignore' });
    t = await newLab({ threads: 0, settings: { ...SETTINGS, https: true } });
    served = await serve(t.lab, {
      host: '127.0.0.1',
      port: 0,
      tls: { cert: join(folder, 'lab.pem'), key: join(folder, 'lab-key.pem') },
    });
  }, 120_000);
  afterAll(async () => {
    await served?.close();
    await t?.end();
    await stopServer();
    rmSync(folder, { recursive: true });
  });

  const ask = (options: RequestOptions): Promise<{ status: number; hsts: unknown }> =>
    new Promise((resolve, reject) => {
      const asked = request({ host: '127.0.0.1', port: served.port, path: '/api/health', ...options }, (answer) => {
        answer.resume();
        resolve({ status: answer.statusCode!, hsts: answer.headers['strict-transport-security'] });
      });
      asked.on('error', reject);
      asked.end();
    });

  it('is believed by whoever has the authority of the recipe, under its name', async () => {
    const ca = readFileSync(join(folder, 'authority.pem'));
    expect(await ask({ ca, servername: NAME })).toEqual({ status: 200, hsts: 'max-age=15552000' });
  });

  it('is not believed without the authority, nor under another name', async () => {
    const ca = readFileSync(join(folder, 'authority.pem'));
    await expect(ask({ servername: NAME })).rejects.toThrow(/unable to verify|self.signed/);
    await expect(ask({ ca, servername: 'other.school.internal' })).rejects.toThrow(/does not match certificate/);
  });
});
