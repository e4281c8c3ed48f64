import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { AttemptFiles } from '../../scoring/lab/attempt-files.ts';
import { digestOf } from '../../scoring/lab/digests.ts';
import { type Disk, realDisk } from '../../scoring/lab/disk.ts';
import { lockFolder } from '../../scoring/lab/folder-lock.ts';
import type { Receipt } from '../../scoring/lab/receipt.ts';

let root: string;
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'toehold-lab-'));
});
afterAll(() => rmSync(root, { recursive: true }));

const bytes = new TextEncoder().encode('{"an":"attempt"}');

function receipt(attempt: string): Receipt {
  return {
    format: 'toehold-lab-receipt',
    version: 1,
    attempt,
    bytes: bytes.length,
    received: '2026-03-14T08:00:00.000Z',
    number: 1,
    late: false,
    class: { id: 'c', name: 'Tern Dock, mornings', code: 'TERN-01' },
    trainee: { id: 't', name: 'Ines Calder', sourcedId: null, plate: 1 },
    piece: null,
    carried: null,
    assignment: {
      startWord: null,
      id: 'a',
      title: 'Tee',
      judge: attempt,
      opens: '2026-03-14T07:00:00.000Z',
      closes: null,
      mostAttempts: 3,
    },
  };
}

describe('attempt files', () => {
  it('keep bytes under their digest, once, and give them back', async () => {
    const files = new AttemptFiles(join(root, 'a'), realDisk);
    const digest = await files.keepAttempt(bytes);
    expect(digest).toBe(digestOf(bytes));
    expect(await files.keepAttempt(bytes)).toBe(digest);
    expect(readdirSync(join(root, 'a', 'attempts', digest.slice(0, 2)))).toEqual([`${digest}.json`]);
    expect(Buffer.from((await files.readAttempt(digest))!)).toEqual(Buffer.from(bytes));
    expect(await files.attemptDigests()).toEqual([digest]);
  });

  it('notice a file whose content is not what its name says, and mend it when it comes again', async () => {
    const files = new AttemptFiles(join(root, 'b'), realDisk);
    const digest = await files.keepAttempt(bytes);
    const path = join(root, 'b', 'attempts', digest.slice(0, 2), `${digest}.json`);
    writeFileSync(path, readFileSync(path).subarray(0, 5));
    expect(await files.readAttempt(digest)).toBeNull();
    await files.keepAttempt(bytes);
    expect(Buffer.from((await files.readAttempt(digest))!)).toEqual(Buffer.from(bytes));
  });

  it('sync the file before its name and the folder after, every time, even for a file that is there', async () => {
    const log: string[] = [];
    const disk: Disk = {
      ...realDisk,
      write: async (path, content) => {
        await realDisk.write(path, content);
        log.push('content synced');
      },
      rename: async (from, to) => {
        await realDisk.rename(from, to);
        log.push('named');
      },
      syncFolder: async (path) => {
        await realDisk.syncFolder(path);
        log.push(`names synced ${path.slice(join(root, 'c').length).split('/').filter(Boolean).length}`);
      },
    };
    const files = new AttemptFiles(join(root, 'c'), disk);
    await files.keepAttempt(bytes);
    expect(log).toEqual(['names synced 1', 'names synced 0', 'content synced', 'named', 'names synced 2']);
    log.length = 0;
    await files.keepAttempt(bytes);
    expect(log).toEqual(['names synced 2']);
  });

  it('sync the name of a folder that an earlier upload left without it', async () => {
    const place = join(root, 'f');
    let broken = true;
    const synced: string[] = [];
    const disk: Disk = {
      ...realDisk,
      syncFolder: async (path) => {
        if (broken) throw Object.assign(new Error('an earlier fault'), { code: 'EIO' });
        await realDisk.syncFolder(path);
        synced.push(path.slice(place.length));
      },
    };
    await expect(new AttemptFiles(place, disk).keepAttempt(bytes)).rejects.toThrow('an earlier fault');
    broken = false;
    const digest = await new AttemptFiles(place, disk).keepAttempt(bytes);
    expect(synced).toEqual(['/attempts', '', `/attempts/${digest.slice(0, 2)}`]);
  });

  it('leave nothing behind when the disk is full, and say so', async () => {
    const full: Disk = {
      ...realDisk,
      write: async (path, content) => {
        await realDisk.write(path, content.subarray(0, 3));
        throw Object.assign(new Error('no space left'), { code: 'ENOSPC' });
      },
    };
    const files = new AttemptFiles(join(root, 'd'), full);
    await expect(files.keepAttempt(bytes)).rejects.toThrow('no space left');
    expect(readdirSync(join(root, 'd', 'attempts', digestOf(bytes).slice(0, 2)))).toEqual([]);
    expect(await files.attemptDigests()).toEqual([]);
  });

  it('name receipts that are spoilt or lie under a wrong name', async () => {
    const files = new AttemptFiles(join(root, 'e'), realDisk);
    await files.keepReceipt(receipt(digestOf(bytes)));
    const [id] = await files.receiptIds();
    expect(await files.readReceipt(id!)).toEqual(receipt(digestOf(bytes)));
    const path = join(root, 'e', 'receipts', id!.slice(0, 2), `${id}.json`);
    const text = readFileSync(path, 'utf8');
    writeFileSync(path, text.replace('"id":"t"', '"id":"u"'));
    expect(await files.readReceipt(id!)).toMatchObject({ why: 'its content belongs under another name' });
    writeFileSync(path, text.slice(0, 40));
    expect(await files.readReceipt(id!)).toMatchObject({ why: 'it is not a receipt' });
    await files.dropReceipt(id!);
    expect(await files.receiptIds()).toEqual([]);
  });
});

describe('a data folder', () => {
  it('is refused to a second process, by the name of the first, and free again when that is killed', async () => {
    const folder = join(root, 'locked');
    const first = spawn(
      process.execPath,
      [
        '--import',
        'tsx',
        '-e',
        `import('./scoring/lab/folder-lock.ts').then((m) => { m.lockFolder(${JSON.stringify(folder)}); console.log('held'); setInterval(() => {}, 1000); })`,
      ],
      { stdio: ['ignore', 'pipe', 'inherit'] },
    );
    await new Promise((held) => first.stdout.once('data', held));
    expect(() => lockFolder(folder)).toThrow(`in use by process ${first.pid} on `);
    const gone = new Promise((ended) => first.once('exit', ended));
    first.kill('SIGKILL');
    await gone;
    const mine = lockFolder(folder);
    expect(() => lockFolder(folder)).toThrow(`in use by process ${process.pid} on `);
    mine.release();
    lockFolder(folder).release();
  });
});
