import { ENGINE_VERSION } from '../../engine/index.ts';
import { FREE_NAME } from '../exercises/free.ts';
import { exerciseNamed } from '../exercises/ready.ts';
import { accountsOpen } from '../measures/open-accounts.ts';
import { findingsIn } from './findings.ts';
import type { FoundNote } from './found.ts';
import { aidsUsed, type ReasonQuestion } from './reasons.ts';
import { outsideTransfer } from './transfer.ts';

/** Metal that dropped out is of note from this share of the wire fed on. */
const NOTED_DROP = 0.005;
/** One pass short-circuiting past this size is another procedure (common practice, no source). mm */
const LARGEST_PASS_MM = 6;

/** Facts that change no reading but should be known to whoever looks at the attempt. */
export function notesFor(q: ReasonQuestion, profileName: string | null): FoundNote[] {
  const { recording, attempt, exercise } = q;
  const notes: FoundNote[] = [];
  const origin = recording.origin.kind;
  const device = recording.device.kind;
  if (origin === 'robot') notes.push({ code: 'robot', data: {} });
  if (exercise?.piece !== undefined) {
    const { number, seed } = exercise.piece;
    const { gap_mm, startTemp_C } = exercise.joint;
    notes.push({ code: 'piece', data: { number, seed, gap_mm, startTemp_C, cuts_mm: exercise.cuts_mm } });
  }
  if ((origin === 'robot') !== (device === 'robot')) {
    notes.push({ code: 'origin-device-mismatch', data: { origin, device } });
  }
  if (recording.engine !== ENGINE_VERSION) {
    notes.push({ code: 'engine-differs', data: { welded: recording.engine, here: ENGINE_VERSION } });
  }
  if (recording.chain === null && recording.stateHash !== null) notes.push({ code: 'no-chain', data: {} });
  notes.push(...findingsIn(recording, exercise));
  const aids = aidsUsed(recording, exercise);
  if (aids.length > 0) notes.push({ code: 'aids', data: { aids } });
  if (recording.aids.handRig !== null) notes.push({ code: 'hand-rig', data: recording.aids.handRig });
  if (exercise !== null) {
    const { name, profile } = exercise;
    if (exerciseNamed(name) === undefined && name !== FREE_NAME) {
      notes.push({ code: 'not-a-ready-exercise', data: { name } });
    }
    if (profileName !== null && profileName !== profile) {
      notes.push({ code: 'profile-changed', data: { by: profileName, asked: profile } });
    }
    if (exercise.asked.size_mm > LARGEST_PASS_MM) notes.push({ code: 'size-over-6', data: {} });
  }
  const { dripped_g, fed_g } = attempt.accounts;
  if (!accountsOpen(attempt.accounts) && dripped_g > NOTED_DROP * fed_g)
    notes.push({ code: 'metal-dropped', data: { dripped_g } });
  const transfer = outsideTransfer(recording, exercise);
  if (transfer !== null) notes.push({ code: 'outside-transfer', data: transfer });
  if (attempt.accounts.leftTheRoom) notes.push({ code: 'left-the-room', data: {} });
  if ((recording.ended === 'stopped' || recording.ended === 'time-limit') && q.bead.bare_mm.length > 0)
    notes.push({ code: 'stopped-early', data: {} });
  return notes;
}
