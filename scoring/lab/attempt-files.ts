import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { digestOf, submissionId } from './digests.ts';
import type { Disk } from './disk.ts';
import { type Receipt, receiptSchema } from './receipt.ts';

/** What kinds of file a data folder holds, each in a folder of its own, spread over 256 by the first two digits of their names. */
export const KINDS = ['attempts', 'receipts', 'judges'] as const;
type Kind = (typeof KINDS)[number];

/** A file that is there and cannot be used. */
export interface SpoiltFile {
  file: string;
  why: string;
}

/**
 * The files everything else can be made from: attempts by the digest of their bytes, receipts that say whose they are, judges by digest. A
 * file under its own name is always whole: it is written and synced beside, then renamed, then its folder is synced.
 */
export class AttemptFiles {
  readonly #root: string;
  readonly #disk: Disk;
  /** Folders whose own names this process knows to be on the disk. */
  readonly #named = new Set<string>();

  constructor(root: string, disk: Disk) {
    this.#root = root;
    this.#disk = disk;
  }

  /** Keeps an attempt; its digest. Durable when it returns. */
  async keepAttempt(bytes: Uint8Array): Promise<string> {
    const digest = digestOf(bytes);
    await this.#keepByDigest('attempts', digest, bytes);
    return digest;
  }

  /** Keeps a judge under the digest of its content. Durable when it returns. */
  async keepJudge(content: string): Promise<string> {
    const digest = digestOf(content);
    await this.#keepByDigest('judges', digest, Buffer.from(content));
    return digest;
  }

  /** Keeps a receipt, over an earlier one of the same submission. Durable when it returns. */
  async keepReceipt(receipt: Receipt): Promise<void> {
    await this.#put('receipts', idOf(receipt), Buffer.from(JSON.stringify(receipt)));
  }

  /** An attempt's bytes; null where there is none or its content is not what its name says. */
  readAttempt(digest: string): Promise<Uint8Array | null> {
    return this.#readByDigest('attempts', digest);
  }

  /** A judge's content; null where there is none or it is spoilt. */
  async readJudge(digest: string): Promise<string | null> {
    const bytes = await this.#readByDigest('judges', digest);
    return bytes === null ? null : Buffer.from(bytes).toString('utf8');
  }

  /** Ids of all submissions that have a receipt. */
  receiptIds(): Promise<string[]> {
    return this.#names('receipts');
  }

  /** Digests of all attempts on disk. */
  attemptDigests(): Promise<string[]> {
    return this.#names('attempts');
  }

  async readReceipt(id: string): Promise<Receipt | SpoiltFile> {
    const path = this.#path('receipts', id);
    const bytes = await this.#disk.read(path);
    if (bytes === null) return { file: path, why: 'it is not there' };
    try {
      const receipt = receiptSchema.parse(JSON.parse(Buffer.from(bytes).toString('utf8')));
      return idOf(receipt) === id ? receipt : { file: path, why: 'its content belongs under another name' };
    } catch {
      return { file: path, why: 'it is not a receipt' };
    }
  }

  /** Takes a receipt away; gone for good when it returns. */
  async dropReceipt(id: string): Promise<void> {
    await this.#drop('receipts', id);
  }

  /** Takes an attempt away; gone for good when it returns. The caller knows that no receipt is left for it. */
  async dropAttempt(digest: string): Promise<void> {
    await this.#drop('attempts', digest);
  }

  /** Clears away what a process left half written when it died. Only for whoever holds the folder alone. */
  async clearParts(): Promise<void> {
    for (const kind of KINDS) {
      for (const shard of await this.#disk.list(join(this.#root, kind))) {
        for (const file of await this.#disk.list(join(this.#root, kind, shard))) {
          if (file.endsWith('.part')) await this.#disk.remove(join(this.#root, kind, shard, file));
        }
      }
    }
  }

  async #drop(kind: Kind, name: string): Promise<void> {
    await this.#disk.remove(this.#path(kind, name));
    if ((await this.#disk.list(this.#folder(kind, name))).length > 0) {
      await this.#disk.syncFolder(this.#folder(kind, name));
    }
  }

  async #keepByDigest(kind: Kind, digest: string, bytes: Uint8Array): Promise<void> {
    if ((await this.#readByDigest(kind, digest)) === null) await this.#put(kind, digest, bytes);
    // There already, but perhaps by a process that died before its name was on the disk.
    else {
      await this.#syncNameOf(kind, this.#folder(kind, digest));
      await this.#disk.syncFolder(this.#folder(kind, digest));
    }
  }

  /** A folder that is there may have been made by a process that died, or met a fault, before its name was on the disk. */
  async #syncNameOf(kind: Kind, folder: string): Promise<void> {
    if (this.#named.has(folder)) return;
    await this.#disk.syncFolder(join(this.#root, kind));
    await this.#disk.syncFolder(this.#root);
    this.#named.add(folder);
  }

  async #put(kind: Kind, name: string, bytes: Uint8Array): Promise<void> {
    const folder = this.#folder(kind, name);
    await this.#disk.makeFolder(folder);
    await this.#syncNameOf(kind, folder);
    const part = join(folder, `.${name}.${randomBytes(6).toString('hex')}.part`);
    try {
      await this.#disk.write(part, bytes);
      await this.#disk.rename(part, this.#path(kind, name));
    } catch (cause) {
      await this.#disk.remove(part).catch(() => undefined);
      throw cause;
    }
    await this.#disk.syncFolder(folder);
  }

  async #readByDigest(kind: Kind, digest: string): Promise<Uint8Array | null> {
    const bytes = await this.#disk.read(this.#path(kind, digest));
    return bytes !== null && digestOf(bytes) === digest ? bytes : null;
  }

  async #names(kind: Kind): Promise<string[]> {
    const names: string[] = [];
    for (const shard of await this.#disk.list(join(this.#root, kind))) {
      for (const file of await this.#disk.list(join(this.#root, kind, shard))) {
        const name = /^([0-9a-f]{64})\.json$/.exec(file)?.[1];
        if (name !== undefined) names.push(name);
      }
    }
    return names;
  }

  #folder(kind: Kind, name: string): string {
    return join(this.#root, kind, name.slice(0, 2));
  }

  #path(kind: Kind, name: string): string {
    return join(this.#folder(kind, name), `${name}.json`);
  }
}

function idOf(r: Receipt): string {
  return submissionId(r.attempt, r.assignment.id, r.trainee.id);
}
