import type { Limit } from '../schema/profile.ts';

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
