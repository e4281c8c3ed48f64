import type { Seen } from '../../advice/found.ts';
import type { Verdict } from '../../schema/result.ts';
import { upper } from '../names.ts';
import { measureName, said } from './names.ts';

/** What was seen of the bead, as a sentence of its own. */
export function seenSaid(seen: Seen): string {
  switch (seen.what) {
    case 'dropped':
      return `${dropped(seen)}.`;
    case 'bare':
      return `${said(seen.bare_mm)} mm sind ohne Naht, ab ${said(seen.from_mm, 0)}.`;
    case 'line': {
      const { measure, side, kind, reading, y_mm } = seen;
      const doubt = seen.verdict === 'too close to call' ? ', zu knapp' : '';
      if (measure === 'root fusion') return `Die Wurzel ist bei ${said(y_mm, 0)} ${rootSaid(reading)}${doubt}.`;
      const unit = seen.unit === 'deg' ? '°' : seen.unit === '%' ? ' %' : ` ${seen.unit}`;
      const digits = seen.unit === 'in' ? 3 : seen.unit === 'mm' ? 1 : 0;
      return `${upper(measureName(measure, side, kind))} ${said(reading, digits)}${unit} bei ${said(y_mm, 0)}; ${senseSaid(seen.sense)} ${said(seen.limit, digits)}${doubt}.`;
    }
  }
}

/** Which way a limit holds. */
export function senseSaid(sense: 'at most' | 'at least'): string {
  return sense === 'at most' ? 'höchstens' : 'mindestens';
}

function dropped({ dripped_g }: Extract<Seen, { what: 'dropped' }>): string {
  return `${said(dripped_g)} g sind aus der Fuge getropft`;
}

/** Beside a habit: what was seen, or that the bead held in spite of it. */
export function beside(seen: Seen | null, verdict: Verdict): string {
  if (verdict === 'within')
    return `Diesmal hat es gehalten${seen?.what === 'dropped' ? `, doch ${dropped(seen)}` : ''}. `;
  return seen === null ? '' : `${seenSaid(seen)} `;
}

/** "0,6 über die Ecke hinaus erfasst", "0,4 zu kurz". */
export function rootSaid(root_mm: number): string {
  const tenths = Math.round(root_mm * 10);
  if (tenths === 0) return 'gerade an der Ecke';
  return tenths > 0 ? `${said(root_mm)} über die Ecke hinaus erfasst` : `${said(-root_mm)} zu kurz`;
}
