import type { JointOptions } from '../../engine/index.ts';
import type { LineMeasure } from '../schema/profile.ts';
import type { DROPPED } from '../schema/proved.ts';

type Kind = JointOptions['kind'];

/** The two sides in the welder's words; A and B stay in JSON. */
export function plateName(kind: Kind, side: 'A' | 'B'): string {
  if (kind === 'lap') return side === 'A' ? 'back plate' : 'edge plate';
  return side === 'A' ? 'right plate' : 'left plate';
}

/** A toe in the welder's words. */
export function toeName(kind: Kind, side: 'A' | 'B'): string {
  if (kind === 'lap') return side === 'A' ? 'right toe (back plate)' : 'left toe (edge)';
  return side === 'A' ? 'right toe' : 'left toe';
}

/** Measures as said on screen and paper. */
export function measureName(measure: LineMeasure | typeof DROPPED, side: 'A' | 'B' | null, kind: Kind): string {
  const on =
    side === null
      ? ''
      : `, ${measure === 'fusion to plate' ? plateName(kind, side) : side === 'A' ? 'right toe' : 'left toe'}`;
  const names: Partial<Record<LineMeasure | typeof DROPPED, string>> = {
    'root fusion': 'past the corner at the root',
    'fusion to plate': 'fused into the plate',
    leg: 'leg',
    throat: 'throat',
    'leg short, length': 'length with a leg under the size asked',
    'throat short, length': 'length with a throat under the size asked',
    'size over': 'size of the weld',
    gap: 'root gap',
    'crater depth': 'crater, below the face',
    'leg at the crater': 'leg at the crater',
  };
  return (names[measure] ?? measure) + on;
}

/** A number as said: two decimals at most, no trailing zeros. */
export function said(x: number, decimals = 1): string {
  const text = x.toFixed(decimals);
  return text.includes('.') ? text.replace(/0+$/, '').replace(/\.$/, '').replace(/^-0$/, '0') : text;
}

/** The first letter a capital one. */
export function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
