import type { Limit } from '../schema/profile.ts';
import type { Line, LineVerdict } from '../schema/result.ts';

/** What limits may depend on, in the profile's own unit. */
export interface Basis {
  plate: number;
  throat: number;
  face: number;
  leg: number;
}

/** Value of a limit for a basis; 0 where nothing is permitted. */
export function limitValue(limit: Limit, basis: Basis): number {
  switch (limit.form) {
    case 'none':
      return 0;
    case 'floor':
      return limit.value;
    case 'line': {
      const value = limit.base + limit.slope * basis[limit.of];
      return limit.most === null ? value : Math.min(value, limit.most);
    }
    case 'steps': {
      const x = basis[limit.of];
      for (const row of limit.rows) {
        if (row.upTo === null || (row.open ? x < row.upTo : x <= row.upTo)) return row.limit;
      }
      return limit.rows[limit.rows.length - 1]!.limit;
    }
  }
}

/** Which side of its limit a reading has to keep to. */
export type Sense = 'at most' | 'at least';

/** Readings, limits and plus-minus meet on a grid of 1e-6, so that 0.2 + 0.1 is not above 0.3. */
function grid(x: number): number {
  return Math.round(x * 1e6);
}

/**
 * Within: the reading keeps the limit even if it is off by its whole plus-minus. Outside: it breaks it even so. Else too close to call.
 */
export function compare(reading: number, plusMinus: number, limit: number, sense: Sense): LineVerdict {
  const r = sense === 'at most' ? grid(reading) : -grid(reading);
  const l = sense === 'at most' ? grid(limit) : -grid(limit);
  const e = grid(plusMinus);
  if (r + e <= l) return 'within';
  return r - e > l ? 'outside' : 'too close to call';
}

/** How far inside the limit the reading stands, in the reading's own unit; negative outside. */
export function margin(reading: number, limit: number, sense: Sense): number {
  return sense === 'at most' ? limit - reading : reading - limit;
}

const ORDER: readonly LineVerdict[] = ['within', 'too close to call', 'outside'];

/** The worse of two line verdicts. */
export function worse(a: LineVerdict, b: LineVerdict): LineVerdict {
  return ORDER.indexOf(a) >= ORDER.indexOf(b) ? a : b;
}

/** Exact, by definition of the international inch. */
export const MM_PER_INCH = 25.4;

/** Factor from mm to a unit of length; 1 for the rest. */
export function perMm(unit: Line['unit']): number {
  return unit === 'in' ? 1 / MM_PER_INCH : 1;
}

/** A reading or limit of a line in mm, whatever unit its profile is in. */
export function inMm({ unit }: Pick<Line, 'unit'>, value: number): number {
  return unit === 'in' ? value * MM_PER_INCH : value;
}
