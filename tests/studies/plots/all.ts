import { balance, tendencies } from './beads.ts';
import { cooling, histories, moving, stefan } from './heat.ts';
import { surfaces } from './surfaces.ts';
import { wire } from './wire.ts';

export const FOLDER = new URL('../../../assets/reference/', import.meta.url);

/** Every plot by file name. */
export function drawAll(): Map<string, string> {
  return new Map([
    ['histories.svg', histories()],
    ['moving.svg', moving()],
    ['stefan.svg', stefan()],
    ['cooling.svg', cooling()],
    ['surfaces.svg', surfaces()],
    ['wire.svg', wire()],
    ['balance.svg', balance()],
    ['tendencies.svg', tendencies()],
  ]);
}
