import type { Seen } from '../advice/found.ts';
import type { Verdict } from '../schema/result.ts';
import { measureName, said, upper } from './names.ts';

/** What was seen of the bead, as a sentence of its own: "Leg 4.8 mm at 51, at least 6." */
export function seenSaid(seen: Seen): string {
  switch (seen.what) {
    case 'dropped':
      return `${dropped(seen)}.`;
    case 'bare':
      return `${said(seen.bare_mm)} mm are bare, from ${said(seen.from_mm, 0)} on.`;
    case 'line': {
      const { measure, side, kind, reading, y_mm } = seen;
      const doubt = seen.verdict === 'too close to call' ? ', too close to call' : '';
      if (measure === 'root fusion') return `The root is ${rootSaid(reading)} at ${said(y_mm, 0)}${doubt}.`;
      const unit = seen.unit === 'deg' ? '°' : seen.unit === '%' ? ' %' : ` ${seen.unit}`;
      const digits = seen.unit === 'in' ? 3 : seen.unit === 'mm' ? 1 : 0;
      return `${upper(measureName(measure, side, kind))} ${said(reading, digits)}${unit} at ${said(y_mm, 0)}; ${seen.sense} ${said(seen.limit, digits)}${doubt}.`;
    }
  }
}

function dropped({ dripped_g }: Extract<Seen, { what: 'dropped' }>): string {
  return `${said(dripped_g)} g dropped out of the joint`;
}

/** Beside a habit: what was seen, or that the bead held in spite of it. */
export function beside(seen: Seen | null, verdict: Verdict): string {
  if (verdict === 'within') return `It held this time${seen?.what === 'dropped' ? `, though ${dropped(seen)}` : ''}. `;
  return seen === null ? '' : `${seenSaid(seen)} `;
}

/** "0.6 past the corner", "0.4 short". */
export function rootSaid(root_mm: number): string {
  const tenths = Math.round(root_mm * 10);
  if (tenths === 0) return 'just at the corner';
  return tenths > 0 ? `${said(root_mm)} past the corner` : `${said(-root_mm)} short`;
}
