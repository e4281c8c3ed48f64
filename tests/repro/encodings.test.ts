/** A file in another encoding was read with wrong letters by the page and refused by the command line: now both take UTF-8, or say why not. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readText as readInGame } from '../../game/core/session/files.ts';
import { readText as readOnCommandLine } from '../../scoring/node/files.ts';

const TEXT = '{"title":"Zoë Åkesson’s bracket"}';
const latin = Uint8Array.from('{"title":"Zo\u00eb"}', (c) => c.charCodeAt(0));
const utf16 = (text: string, little: boolean): Uint8Array =>
  Uint8Array.from(text, (c) => c.charCodeAt(0)).reduce<Uint8Array>(
    (all, code, n) => {
      all[2 * n + (little ? 0 : 1)] = code;
      return all;
    },
    new Uint8Array(2 * text.length),
  );
const marked = (mark: number[], bytes: Uint8Array): Uint8Array => Uint8Array.from([...mark, ...bytes]);

const cases: [string, Uint8Array, string | RegExp][] = [
  ['UTF-8', new TextEncoder().encode(TEXT), TEXT],
  ['UTF-8 with a byte order mark', marked([0xef, 0xbb, 0xbf], new TextEncoder().encode(TEXT)), `\ufeff${TEXT}`],
  ['Latin-1', latin, /bytes that are not UTF-8/],
  ['UTF-16, little end first, marked', marked([0xff, 0xfe], utf16('{"a":1}', true)), /UTF-16/],
  ['UTF-16, big end first, marked', marked([0xfe, 0xff], utf16('{"a":1}', false)), /UTF-16/],
  ['UTF-16 without a mark', utf16('{"a":1}', true), /UTF-16/],
  ['UTF-8 cut off within a letter', new TextEncoder().encode('{"a":"ë').slice(0, -1), /not UTF-8/],
  ['a packed file', Uint8Array.from([0x1f, 0x8b, 8, 0]), /packed file \(gzip\)/],
];

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'toehold-encodings-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('JSON from a file', () => {
  it.each(cases)('in %s is the same to the page and to the command line', async (_name, bytes, expected) => {
    const path = join(folder, 'a.json');
    writeFileSync(path, bytes);
    const answer = (read: () => string | Promise<string>): Promise<string> =>
      Promise.resolve()
        .then(read)
        .catch((error: Error) => error.message.replace(path, 'a.json'));
    const there = await answer(() => readOnCommandLine(path));
    const buffer = bytes.slice().buffer;
    const here = await answer(() =>
      readInGame({ name: 'a.json', size: bytes.length, lastModified: 0, arrayBuffer: async () => buffer }),
    );
    expect(here).toBe(there);
    if (typeof expected === 'string') expect(there).toBe(expected);
    else expect(there).toMatch(expected);
  });
});
