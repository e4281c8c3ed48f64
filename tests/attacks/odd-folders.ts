import { execFileSync } from 'node:child_process';
import { linkSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createRandom } from '../../engine/index.ts';
import { InputError } from '../../scoring/index.ts';
import { listFolder, readInFolder } from '../../scoring/node/folder.ts';
import type { Attack, Try } from './attack.ts';

const HONEST = '{"an": "honest file"}';
const SECRET = 'what lies outside the folder';

/** What somebody may put into a folder that others' files are in. `bytes`: read as these; null: refused. */
const ODD: Record<
  string,
  { make: (folder: string, outside: string) => void; name: string | RegExp; bytes: string | null }
> = {
  'a pipe': { make: (f) => execFileSync('mkfifo', [join(f, 'pipe.json')]), name: 'pipe.json', bytes: null },
  'a device': { make: (f) => symlinkSync('/dev/zero', join(f, 'zero.json')), name: 'zero.json', bytes: null },
  'a link to itself': { make: (f) => symlinkSync('loop.json', join(f, 'loop.json')), name: 'loop.json', bytes: null },
  'a link to nothing': { make: (f) => symlinkSync('gone', join(f, 'gone.json')), name: 'gone.json', bytes: null },
  'a link out': { make: (f, out) => symlinkSync(out, join(f, 'out.json')), name: 'out.json', bytes: null },
  'a link out by the folder above': {
    make: (f) => symlinkSync('../outside.txt', join(f, 'above.json')),
    name: 'above.json',
    bytes: null,
  },
  'a link to another file of the folder': {
    make: (f) => symlinkSync('honest.json', join(f, 'inside.json')),
    name: 'inside.json',
    bytes: HONEST,
  },
  'a second name of a file': {
    make: (f) => linkSync(join(f, 'honest.json'), join(f, 'second.json')),
    name: 'second.json',
    bytes: HONEST,
  },
  'an empty file': { make: (f) => writeFileSync(join(f, 'empty.json'), ''), name: 'empty.json', bytes: '' },
  'a packed file': { make: (f) => writeFileSync(join(f, 'a.json.gz'), 'x'), name: 'a.json.gz', bytes: null },
  'a name in Latin-1': {
    make: (f) =>
      writeFileSync(Buffer.concat([Buffer.from(`${f}/in`), Buffer.from([0xe9]), Buffer.from('s.json')]), HONEST),
    name: /^in\ufffds\.json$/,
    bytes: null,
  },
  'a line end in a name': {
    make: (f) => writeFileSync(join(f, 'a\nb.json'), HONEST),
    name: 'a\nb.json',
    bytes: HONEST,
  },
  'a name as long as the disk takes': {
    make: (f) => writeFileSync(join(f, `${'n'.repeat(250)}.json`), HONEST),
    name: `${'n'.repeat(250)}.json`,
    bytes: HONEST,
  },
  'a sparse file of 4 GB': {
    make: (f) => {
      writeFileSync(join(f, 'sparse.json'), '');
      truncateSync(join(f, 'sparse.json'), 4 * 2 ** 30);
    },
    name: 'sparse.json',
    bytes: null,
  },
};
const NAMES = Object.keys(ODD);

/** Whatever lies in a folder, its honest files are read, nothing is waited for, nothing outside is read, and what is refused is named for what it is. */
export const oddFolders: Attack = {
  name: 'odd folders',
  says: 'pipes, devices, links in circles, to nothing and out of the folder, packed, empty and huge files, and names in another encoding, with line ends or as long as can be, in any company; honest files are read byte for byte, nothing outside, and what is refused is not said to be missing where it is there',
  share: 6,
  whole: 300,
  tries: (n): Try => {
    const random = createRandom(n + 1);
    const top = mkdtempSync(join(tmpdir(), 'toehold-odd-'));
    const folder = join(top, 'folder');
    const faults: string[] = [];
    try {
      mkdirSync(folder);
      mkdirSync(join(folder, 'folder.json'));
      const outside = join(top, 'outside.txt');
      writeFileSync(outside, SECRET);
      writeFileSync(join(folder, 'honest.json'), HONEST);
      const chosen = NAMES.filter((_, i) => i === n % NAMES.length || random.next() < 0.4);
      for (const name of chosen) ODD[name]!.make(folder, outside);
      const { files, folders } = listFolder(folder);
      if (folders.join() !== 'folder.json') faults.push(`folders: ${folders.join()}`);
      if (files.length !== chosen.length + 1) faults.push(`${files.length} of ${chosen.length + 1} listed`);
      for (const file of files) {
        const what = chosen.find((name) =>
          typeof ODD[name]!.name === 'string' ? ODD[name]!.name === file : (ODD[name]!.name as RegExp).test(file),
        );
        const expected = what === undefined ? HONEST : ODD[what]!.bytes;
        let read: string | null = null;
        try {
          read = new TextDecoder().decode(readInFolder(folder, file));
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          if (/\n/.test(error.message)) faults.push(`${what}: told in two lines`);
          if (what !== 'a link to nothing' && /no such file/.test(error.message))
            faults.push(`${what}: ${error.message}`);
        }
        if (read !== expected) faults.push(`${what ?? file}: read as ${JSON.stringify(read)?.slice(0, 60)}`);
      }
      return { inputs: files.length, faults };
    } finally {
      rmSync(top, { recursive: true });
    }
  },
};
