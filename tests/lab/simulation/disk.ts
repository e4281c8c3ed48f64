import { createHash } from 'node:crypto';
import { dirname } from 'node:path';
import type { Disk } from '../../../scoring/lab/disk.ts';

/** What a name leads to. A file's content is on the platter when `write` has returned; its name may not be. */
type Node = Uint8Array | 'folder';

/**
 * A disk in memory that can lose its power: names are on the platter once their folder was synced, until then each is there or not as chance has it. Stricter
 * than the file systems schools have, which keep most names for a while in order.
 */
export class SimulatedDisk implements Disk {
  #seen = new Map<string, Node>();
  #platter = new Map<string, Node>();
  /** Bytes that fit; what is written past them is torn. */
  room = Number.POSITIVE_INFINITY;

  constructor(root: string) {
    for (const names of [this.#seen, this.#platter]) names.set(root, 'folder');
  }

  async makeFolder(path: string): Promise<boolean> {
    if (this.#seen.has(path)) return false;
    await this.makeFolder(dirname(path));
    this.#seen.set(path, 'folder');
    return true;
  }

  async write(path: string, bytes: Uint8Array): Promise<void> {
    if (!this.#seen.has(dirname(path))) throw fault('ENOENT');
    this.#seen.set(path, bytes.slice());
  }

  /** A write that power or room ended half way. */
  tear(path: string, bytes: Uint8Array, at: number): void {
    if (this.#seen.has(dirname(path))) this.#seen.set(path, bytes.slice(0, Math.floor(at * bytes.length)));
  }

  async rename(from: string, to: string): Promise<void> {
    const node = this.#seen.get(from);
    if (node === undefined) throw fault('ENOENT');
    this.#seen.delete(from);
    this.#seen.set(to, node);
  }

  async syncFolder(path: string): Promise<void> {
    if (!this.#seen.has(path)) throw fault('ENOENT');
    for (const names of [this.#seen, this.#platter])
      for (const name of [...names.keys()]) if (dirname(name) === path) this.#settle(name, true);
  }

  async read(path: string): Promise<Uint8Array | null> {
    const node = this.#seen.get(path);
    return node === undefined || node === 'folder' ? null : node.slice();
  }

  async list(path: string): Promise<string[]> {
    const inside = [...this.#seen.keys()].filter((name) => dirname(name) === path && name !== path);
    return inside.map((name) => name.slice(path.length + 1)).sort();
  }

  async remove(path: string): Promise<void> {
    this.#seen.delete(path);
  }

  /** Every name and what is in it, as one short text. */
  print(): string {
    const hash = createHash('sha256');
    for (const name of [...this.#seen.keys()].sort()) hash.update(`\n${name} `).update(this.#seen.get(name)!);
    return hash.digest('hex');
  }

  /** The power goes and comes back. @param chance whether a name that was not synced has reached the platter */
  cut(chance: () => boolean): void {
    for (const name of new Set([...this.#seen.keys(), ...this.#platter.keys()])) this.#settle(name, chance());
    // What lies in a folder whose own name was lost is lost with it.
    const lost = (name: string): boolean => name !== dirname(name) && name !== '/' && this.#orphan(name);
    for (const name of [...this.#platter.keys()].sort()) if (lost(name)) this.#platter.delete(name);
    this.#seen = new Map(this.#platter);
  }

  #orphan(name: string): boolean {
    const folder = dirname(name);
    return folder !== '/' && !this.#platter.has(folder);
  }

  #settle(name: string, asSeen: boolean): void {
    if (!asSeen) return;
    const node = this.#seen.get(name);
    if (node === undefined) this.#platter.delete(name);
    else this.#platter.set(name, node);
  }
}

export function fault(code: string): Error {
  return Object.assign(new Error(`simulated ${code}`), { code });
}
