import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
// @ts-expect-error: a script without types, since it runs before anything is installed
import { serveFolder } from '../../game/tools/serve.mjs';

const SEED = 20261126;
const folder = mkdtempSync(join(tmpdir(), 'toehold-served-'));
const OUTSIDE = join(folder, 'secret.txt');
const SECRET = 'not for the page';
let server: Server;

beforeAll(async () => {
  writeFileSync(OUTSIDE, SECRET);
  const inside = join(folder, 'served');
  mkdirSync(inside);
  writeFileSync(join(inside, 'index.html'), '<!doctype html><title>here</title>');
  server = await serveFolder(inside, 0);
});

afterAll(() => {
  server?.close();
  rmSync(folder, { recursive: true });
});

/** Sends raw bytes as a hostile client may and hands back all that comes until the server closes. */
function ask(bytes: string): Promise<string> {
  return new Promise((resolve) => {
    const client = connect((server.address() as AddressInfo).port, 'localhost');
    let said = '';
    client.setTimeout(1000, () => client.destroy());
    client.on('data', (piece) => {
      said += piece;
    });
    client.on('error', () => undefined);
    client.on('close', () => resolve(said));
    client.write(bytes, 'latin1');
  });
}

const get = (path: string): Promise<string> =>
  ask(`GET ${path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`);

describe('npm start: asked for /%00 the local server died; now served by sirv behind a catch', () => {
  it.each([
    '/%00',
    '/index.html%00.js',
    '/%',
    '/%E0%A4%A',
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/..\\secret.txt',
    '//secret.txt',
    'http://[',
    'http://localhost:99999999/',
    '*',
    `/${'a'.repeat(12_000)}`,
  ])('refuses %j and lives', async (path) => {
    expect(await get(path)).toMatch(/^HTTP\/1\.1 4\d\d /);
    expect(await get('/')).toContain('<title>here</title>');
  });

  it(`lives through any bytes and gives nothing from outside its folder (seed ${SEED})`, async () => {
    const piece = fc.constantFrom(
      '..',
      '%2e%2e',
      '%00',
      '%',
      '\\',
      '/',
      '//',
      '%2f',
      'secret.txt',
      'index.html',
      '?',
      '#',
      ':',
      '[',
      ']',
      '@',
      ' ',
    );
    const path = fc.oneof(
      fc.array(piece, { maxLength: 8 }).map((list) => `/${list.join('')}`),
      fc.string({ maxLength: 40 }),
      fc.webUrl(),
    );
    const method = fc.constantFrom('GET', 'HEAD', 'POST', 'PUT', 'OPTIONS', 'BREW', '');
    await fc.assert(
      fc.asyncProperty(method, path, async (verb, where) => {
        const said = await ask(`${verb} ${where} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`);
        expect(said).not.toContain(SECRET);
      }),
      { seed: SEED, numRuns: 300 },
    );
    expect(await get('/')).toContain('<title>here</title>');
  });
});
