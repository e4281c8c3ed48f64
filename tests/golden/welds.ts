/** The golden welds: what stands in welds.json, what is welded now, and what the difference means. */
import { readFileSync } from 'node:fs';
import { ENGINE_VERSION } from '../../engine/index.ts';
import { SCENES } from '../scenes/scenes.ts';
import { type Second, witness } from './witness.ts';

export const WELDS_FILE = new URL('./welds.json', import.meta.url);

export interface GoldenWelds {
  engine: string;
  /** By scene: [check number, digest of what was shown], a pair a second. */
  scenes: Record<string, [state: string, shown: string][]>;
}

export function storedWelds(): GoldenWelds {
  return JSON.parse(readFileSync(WELDS_FILE, 'utf8'));
}

/** Every scene to its end, or its first so many seconds. */
export function weldAll(lastOf: (scene: string) => number | undefined = () => undefined): GoldenWelds {
  const pair = (s: Second): [string, string] => [s.state, s.shown];
  return {
    engine: ENGINE_VERSION,
    scenes: Object.fromEntries(SCENES.map((scene) => [scene.name, witness(scene, lastOf(scene.name)).map(pair)])),
  };
}

/** The golden set's first so many seconds of each scene. */
export function storedUpTo(lastOf: (scene: string) => number | undefined): GoldenWelds {
  const { engine, scenes } = storedWelds();
  return {
    engine,
    scenes: Object.fromEntries(Object.entries(scenes).map(([name, all]) => [name, all.slice(0, lastOf(name))])),
  };
}

/** First second at which a scene differs, in words; null where it does not. */
function parted(name: string, was: [string, string][] | undefined, now: [string, string][]): string | null {
  if (was === undefined) return `${name}: not in the golden set`;
  for (let n = 0; n < Math.max(was.length, now.length); n++) {
    const a = was[n];
    const b = now[n];
    if (a === undefined || b === undefined) return `${name}: ${was.length} seconds stood, ${now.length} are welded`;
    if (a[1] !== b[1]) return `${name}: what is shown differs from second ${n + 1} on`;
    if (a[0] !== b[0]) return `${name}: the check number differs from second ${n + 1} on, nothing shown does`;
  }
  return null;
}

/**
 * What is wrong between the golden set and the engine as it is: bits that moved under the same version, a version that moved without bits,
 * a set that was not recorded again. Null where nothing is.
 */
export function quarrel(stored: GoldenWelds, now: GoldenWelds): string | null {
  const moved = Object.keys(now.scenes)
    .map((name) => parted(name, stored.scenes[name], now.scenes[name]!))
    .filter((line) => line !== null);
  const gone = Object.keys(stored.scenes).filter((name) => !(name in now.scenes));
  if (stored.engine === now.engine && moved.length > 0)
    return `bits moved and ENGINE_VERSION stayed at ${now.engine}:\n${moved.join('\n')}`;
  if (stored.engine !== now.engine && moved.length === 0)
    return `ENGINE_VERSION went from ${stored.engine} to ${now.engine} and no bit moved`;
  if (stored.engine !== now.engine)
    return `the golden set is of engine ${stored.engine}: record it for ${now.engine} with npm run golden`;
  if (gone.length > 0) return `scenes without a weld: ${gone.join(', ')}`;
  return null;
}
