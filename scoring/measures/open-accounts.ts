import type { Accounts } from '../../engine/index.ts';
import { Trace } from '../attempt/trace.ts';
import { InputError } from '../schema/problem.ts';
import { curveOf } from './hand/curve.ts';
import { emptyMotion } from './hand/motion.ts';
import type { Measures } from './measures.ts';
import { milli } from './precision.ts';

/** Heat or metal that the model cannot account for beyond these shares: what it shows is neither read nor judged. */
const OPEN_ENERGY = 1e-3;
const OPEN_MASS = 1e-6;

/** Whether heat or metal is missing from an attempt's accounts, or a sum in them is no number. */
export function accountsOpen(accounts: Accounts): boolean {
  // Written so that a number that is none does not pass.
  const closed = accounts.energyError <= OPEN_ENERGY && accounts.massError <= OPEN_MASS;
  return !closed || Object.values(accounts).some((sum) => typeof sum === 'number' && !Number.isFinite(sum));
}

/** What is read off an attempt whose accounts are open: nothing, and why. */
export function nothingRead({ arcTime_s }: Accounts): Measures {
  return {
    motion: emptyMotion(),
    curve: curveOf(new Trace(), { from: 0, to: 0 }, { breaks: [], upperOnly: false }),
    bead: {
      stations: [],
      bare_mm: [],
      worst: null,
      worstAt_mm: {},
      mean: null,
      rootFusedShare: null,
      consistency: null,
      undersize_mm: 0,
      oversize_mm: 0,
      start: null,
      stops: [],
    },
    stamps: [],
    process: {
      current_A: null,
      voltage_V: null,
      heatInput_kJpmm: null,
      heatInputRule: '',
      laid_mm2: null,
      holds_mm2: null,
      arcTime_s: Number.isFinite(arcTime_s) ? milli(arcTime_s) : 0,
      deposited_g: null,
      spatter_g: null,
      dripped_g: null,
    },
    way: 'up',
    weldedTwice_mm: 0,
    notMeasured: [{ what: 'all of it', why: 'accounts open' }],
  };
}

/**
 * Refuses to draw or read an attempt whose accounts are open.
 * @throws InputError
 */
export function checkAccounts(accounts: Accounts, file: string): void {
  if (!accountsOpen(accounts)) return;
  throw new InputError(file, [
    {
      path: '',
      found: 'an attempt whose heat or metal the model cannot account for',
      allowed: 'one whose accounts close; of this one nothing is read or drawn (please report the file)',
    },
  ]);
}
