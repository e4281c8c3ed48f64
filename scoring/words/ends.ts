import type { BeadStop } from '../schema/ends.ts';
import type { Stop } from '../schema/motion.ts';
import type { Result } from '../schema/result.ts';
import { said } from './names.ts';

/** A shelf this full when it was left was built, not climbed off. */
const BUILT_SHARE = 0.9;

/** Start, stops, crater fill, restarts and taps as sentences, with their plus-minus; nothing where there is nothing to say. */
export function endSentences(r: Result): string[] {
  const stops = r.motion.stops.map((stop, i) => stopSentence(stop, r.bead.stops[i] ?? null));
  return [...startSentence(r), ...stops, ...tapSentence(r.motion.taps)];
}

function startSentence(r: Result): string[] {
  const hand = r.motion.start;
  if (hand === null) return [];
  const parts: string[] = [];
  if (hand.shelfShare !== null) {
    const share = `${said(100 * Math.min(1, hand.shelfShare), 0)} % of full width`;
    parts.push(
      hand.shelfShare >= BUILT_SHARE
        ? `shelf built, ${share} when you left it after ${said(hand.left_s)} s`
        : `climbed off after ${said(hand.left_s)} s, before the shelf was there (${share}${
            hand.fullWidth_mm === null ? '' : `, full ${said(Math.max(0, hand.fullWidth_mm))} mm higher`
          })`,
    );
  }
  const bead = r.bead.start;
  if (bead !== null) {
    parts.push(
      bead.lump_mm > 0
        ? `lump ${said(bead.lump_mm)} ± ${said(bead.plusMinus_mm)} mm over the settled face at ${said(bead.lumpAt_mm, 0)}`
        : `no lump (± ${said(bead.plusMinus_mm)} mm)`,
    );
    if (bead.fullWidthFrom_mm !== null) parts.push(`bead full width from ${said(bead.fullWidthFrom_mm, 0)} mm up`);
  }
  return parts.length === 0 ? [] : [`Start at ${said(hand.y_mm, 0)}: ${parts.join('; ')}.`];
}

function stopSentence(stop: Stop, bead: BeadStop | null): string {
  const parts: string[] = [];
  const depth =
    bead === null || bead.craterDepth_mm === null
      ? ''
      : `${said(bead.craterDepth_mm)} ± ${said(bead.plusMinus_mm)} mm below the settled face`;
  const times = stop.reStrikes === 1 ? 'one short re-strike' : `${stop.reStrikes} short re-strikes`;
  if (stop.reStrikes > 0) {
    parts.push(
      bead?.filled === false
        ? `${times}, crater not full yet: ${depth}`
        : `crater filled with ${times}${depth === '' ? '' : `: ${depth}`}`,
    );
  } else if (depth !== '') parts.push(bead?.filled === true ? `crater full: ${depth}` : `open crater: ${depth}`);
  const { restart } = stop;
  if (restart !== null) {
    const how = {
      'above and back': `restarted ${said(restart.above_mm)} mm above it and brought back into the crater`,
      'on the crater': 'restarted on the crater itself',
      'not back': `restarted ${said(restart.above_mm)} mm above it and never back in the crater`,
    }[restart.way];
    parts.push(`${how}, ${said(stop.out_s ?? 0)} s later`);
  }
  const flaw = bead?.flaw ?? null;
  if (flaw !== null) {
    const of = [
      flaw.rootShort_mm > 0 ? `root short over ${said(flaw.rootShort_mm, 0)}` : '',
      flaw.overlap_mm > 0 ? `overlap over ${said(flaw.overlap_mm, 0)}` : '',
      flaw.faceLow_mm > 0 ? `face low over ${said(flaw.faceLow_mm, 0)}` : '',
      flaw.faceHigh_mm > 0 ? `face high over ${said(flaw.faceHigh_mm, 0)}` : '',
    ].filter((x) => x !== '');
    parts.push(
      of.length === 0
        ? `no flaw within 10 mm (± ${said(flaw.plusMinus_mm)} mm)`
        : `flaw over ${said(flaw.length_mm, 0)} ± ${said(flaw.plusMinus_mm)} mm within 10 mm of it (${of.join(', ')})`,
    );
  }
  return `Stop at ${said(stop.y_mm, 0)}${parts.length === 0 ? '' : `: ${parts.join('; ')}`}.`;
}

function tapSentence(taps: number): string[] {
  if (taps === 0) return [];
  return [
    `Trigger tapped: ${taps} short ${taps === 1 ? 'arc' : 'arcs'} that ${taps === 1 ? 'is' : 'are'} neither a run nor crater fill.`,
  ];
}
