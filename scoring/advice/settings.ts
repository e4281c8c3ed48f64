import type { Exercise } from '../schema/exercise.ts';
import type { Change, Line } from '../schema/result.ts';
import { causeOf } from './cause.ts';
import { broken, type Facts, isWeave, outside, runsTheLength, shareOf } from './facts.ts';
import type { Found, Seen, SettingsCode } from './found.ts';
import { machineOff } from './machine.ts';
import { metalOf, PLACE_SHARE, sizeLine, usualFor } from './metal.ts';
import { seenOf, worstSeen } from './seen.ts';

/** Advice about the machine. */
export type MachineFault = Extract<Found, { code: SettingsCode }>;

/** Where the bead is in doubt and shows neither heat nor cold, settings are spoken of only where they are this far off. */
const ALTHOUGH_IT_DOES_NOT_SHOW = 2;

/**
 * What the machine has to answer for where the hand was as asked: settings that are not those the workshop welds such a joint with, if what is
 * seen goes with them or all of it held; else, of what is seen, only what runs the whole length.
 */
export function settingsFault(f: Facts): MachineFault | null {
  const off = machineOff(asSet(f));
  const { hot, cold } = evidence(f);
  if (off !== null) {
    // A bead that holds with settings far from what is asked is no reason to use them again: that it held is said, and what differs.
    if (allHeld(f)) return machine(f, off.code, metalLost(f));
    // Of settings that are cold for sure, a root in doubt at a place or two is part of what they do.
    const shows = off.way === 'hot' ? hot : cold || broken(f, 'root fusion') !== null;
    if (shows) return machine(f, off.code);
    return hot || cold || off.strength < ALTHOUGH_IT_DOES_NOT_SHOW ? null : machine(f, off.code, null);
  }
  const root = broken(f, 'root fusion');
  if (root !== null && runsTheLength(f, root)) return machine(f, 'cold-root', seenOf(f, root));
  if (hot && !cold && overfilled(f)) return machine(f, 'too-hot');
  return coldToes(f);
}

/** Within on every line, also where that gets no verdict because the metal did not go over in short circuits: that is the settings' own doing. */
function allHeld({ lines, reasons, verdict }: Facts): boolean {
  const transfer = reasons.length > 0 && reasons.every((r) => r.code === 'outside-transfer');
  return verdict === 'within' || (transfer && lines.every((l) => l.verdict === 'within'));
}

/** The exercise with the settings that were welded with: where they are the trainee's own, they are not the exercise's. */
function asSet(f: Facts): Exercise {
  return { ...f.exercise, process: f.process };
}

const CHANGES: Record<SettingsCode, Change> = {
  'cold-root': { what: 'volts_V', by: 0.5 },
  'cold-toe': { what: 'volts_V', by: 0.5 },
  'too-little-wire': { what: 'feed_mpmin', by: 0.25 },
  'too-much-metal': { what: 'feed_mpmin', by: -0.25 },
  'too-hot': { what: 'volts_V', by: -0.5 },
  'gap-takes-metal': { what: 'travel_mmps', by: -0.2 },
};

/** Metal lost beyond this share of what was laid is no chance drop. */
const DROPPED_SHARE = 0.01;

function metalLost({ figures }: Facts): Seen | null {
  const dripped_g = figures.dripped_g ?? 0;
  return dripped_g > DROPPED_SHARE * (figures.deposited_g ?? 0) ? { what: 'dropped', dripped_g } : null;
}

/** What the bead itself says: metal lost or edges melted away is hot; a root or a size that falls short with nothing lost is cold. */
function evidence(f: Facts): { hot: boolean; cold: boolean } {
  const lost = metalLost(f) !== null;
  const hot = lost || outside(f, 'undercut') !== null || outside(f, 'edge melted back') !== null || crowned(f);
  const root = broken(f, 'root fusion');
  // A root in doubt at a place or two is no cold machine; one in doubt along most of the joint is.
  const short = root !== null && (root.verdict === 'outside' || runsTheLength(f, root));
  const size = sizeLine(f, 'at least');
  const cold = short || (!lost && size !== null && shareOf(f, size) >= PLACE_SHARE);
  return { hot, cold: cold && !lost };
}

/** A crown, or a size over what was asked, is the machine's from this share of the length on: a bead that sags starts somewhere. */
const CROWN_SHARE = 0.15;

function crowned(f: Facts): boolean {
  const lines = [outside(f, 'convexity'), outside(f, 'size over'), sizeLine(f, 'at most')];
  return lines.some((l) => l !== null && shareOf(f, l) >= CROWN_SHARE);
}

function overfilled(f: Facts): boolean {
  const lines = (['convexity', 'size over', 'undercut', 'edge melted back'] as const).map((m) => outside(f, m));
  return f.reasons.some((r) => r.code === 'dropped-out') || lines.some((l) => l !== null && runsTheLength(f, l));
}

function coldToes(f: Facts): MachineFault | null {
  // A fat straight run rolls over its toes whatever the heat.
  if (!isWeave(f)) return null;
  for (const side of ['A', 'B'] as const) {
    const line = outside(f, 'overlap', side) ?? outside(f, 'fusion to plate', side);
    if (line !== null && runsTheLength(f, line)) return machine(f, 'cold-toe', seenOf(f, line), line);
  }
  return null;
}

function machine(
  f: Facts,
  code: SettingsCode,
  seen: Seen | null = worstSeen(f),
  line: Line | null = null,
): MachineFault {
  const { laid_mm2, holds_mm2 } = metalOf(asSet(f));
  const y = seen === null ? null : seen.what === 'line' ? seen.y_mm : seen.what === 'bare' ? seen.from_mm : null;
  const side = line?.side ?? null;
  const usual = usualFor(asSet(f));
  const { volts_V, feed_mpmin } = f.process;
  return {
    code,
    data: {
      joint: f.joint.kind,
      side,
      seen,
      verdict: f.verdict,
      laid_mm2,
      holds_mm2,
      gap_mm: f.joint.gap_mm,
      set: { volts_V, feed_mpmin },
      usual: usual === null ? null : { volts_V: usual.process.volts_V, feed_mpmin: usual.process.feed_mpmin },
    },
    ...(y === null ? { y_mm: null, t_s: null, cycle: null } : causeOf(f, y, side ?? 'root')),
    side,
    change: CHANGES[code],
  };
}
