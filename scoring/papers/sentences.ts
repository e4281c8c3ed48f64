import { sizeAsked } from '../schema/exercise.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import type { Result } from '../schema/result.ts';
import { said, toeName } from '../words/names.ts';
import { tiedInSaid } from '../words/root.ts';

/** Shielding gases as said on paper. */
export const GAS = {
  'M21-ArC-18': '82/18 argon and carbon dioxide (M21)',
  'M21-ArC-25': '75/25 argon and carbon dioxide (M21)',
  C1: 'carbon dioxide (C1)',
} as const;

/** Joint and machine as one sentence. */
export function settingsSentence(recording: AttemptRecording, r: Result): string {
  const { joint, process } = recording.simulation;
  const plates =
    joint.plateA_mm === joint.plateB_mm
      ? said(joint.plateA_mm)
      : `${said(joint.plateA_mm)} and ${said(joint.plateB_mm)}`;
  const asked = r.exercise?.asked;
  const size =
    asked === undefined
      ? ''
      : asked.kind === 'leg'
        ? `, leg ${said(asked.size_mm)}`
        : `, throat ${said(asked.size_mm)} (leg ${said(sizeAsked(asked).leg_mm)})`;
  const gap = joint.gap_mm > 0 ? `, gap ${said(joint.gap_mm)}` : '';
  const warm = joint.startTemp_C === joint.ambient_C ? '' : `, plates at ${said(joint.startTemp_C, 0)} °C`;
  const metal =
    r.process.laid_mm2 === null
      ? ''
      : ` – laid ${said(r.process.laid_mm2)} mm²${r.process.holds_mm2 === null ? '' : `, the joint holds ${said(r.process.holds_mm2)}`}`;
  const kind = joint.kind.charAt(0).toUpperCase() + joint.kind.slice(1);
  return (
    `${kind}, ${plates} mm plates ${said(joint.plateWidth_mm)} wide, ${said(joint.length_mm)} long${size}${gap}${warm} – ` +
    `${said(process.wire_mm)} wire, ${said(process.feed_mpmin)} m/min, ${said(process.volts_V)} V, ${GAS[process.gas]}${metal}.`
  );
}

/** What bead, hand and machine did, a short sentence each. */
export function handSentences(r: Result, kind: AttemptRecording['simulation']['joint']['kind']): string[] {
  const out: string[] = [];
  const m = r.motion;
  const bead = r.bead.mean;
  if (bead !== null) {
    const root = tiedInSaid(r);
    out.push(
      `Bead, mean: legs ${said(bead.legA_mm)} right and ${said(bead.legB_mm)} left, throat ${said(bead.throat_mm)}, face ${said(bead.faceWidth_mm)} wide, crown ${said(bead.convexity_mm)}${
        root === null ? '' : `; ${root}`
      }.`,
    );
  }
  const hand: string[] = [];
  if (m.arcOnFrontShare !== null) {
    hand.push(`arc on the front of the puddle at ${said(100 * m.arcOnFrontShare, 0)} % of the crossings`);
  }
  for (const side of ['A', 'B'] as const) {
    const pause = side === 'A' ? m.pauseA_s : m.pauseB_s;
    const filled = side === 'A' ? m.toeFilledShareA : m.toeFilledShareB;
    if (pause === null) continue;
    hand.push(
      `${toeName(kind, side)} ${said(pause, 2)} s${filled === null ? '' : `, filled when left ${said(100 * filled, 0)} %`}`,
    );
  }
  if (m.period_s !== null) hand.push(`${said(1 / m.period_s, 2)} cycles a second`);
  if (m.width_mm !== null) hand.push(`${said(m.width_mm)} wide`);
  if (m.stepUp_mm !== null) hand.push(`step up ${said(m.stepUp_mm)}`);
  if (m.travel_mmps !== null) hand.push(`travel ${said(m.travel_mmps, 2)} mm/s`);
  if (m.tipToWork_mm !== null) hand.push(`tip-to-work ${said(m.tipToWork_mm)}`);
  if (m.workAngle_deg !== null) hand.push(`work angle ${said(m.workAngle_deg, 0)}°`);
  if (m.travelAngle_deg !== null) hand.push(`travel angle ${said(m.travelAngle_deg, 0)}°`);
  if (hand.length > 0) out.push(`Hand: ${hand.join('; ')}.`);
  const p = r.process;
  if (p.current_A !== null && p.voltage_V !== null) {
    const heat = p.heatInput_kJpmm === null ? '' : `, heat input ${said(p.heatInput_kJpmm, 2)} kJ/mm`;
    out.push(`Machine: ${said(p.current_A, 0)} A, ${said(p.voltage_V)} V, arc time ${said(p.arcTime_s)} s${heat}.`);
  }
  return out;
}

/** Marks a limit that was not checked against its edition, and what the mark says. */
export const FOOTNOTE = '\u00b9';
export const PROVENANCE = `${FOOTNOTE} Value from memory, not checked against the edition named: look it up before you rely on it.`;

/** What a trend number is for. */
export const TREND = "for the course of this hand's own attempts, never a mark against others.";

/** Words the papers share. */

export const LINES_HEAD = [
  'line and rule',
  'reading',
  'limit',
  'inside | beyond',
  'verdict',
  'where, mm',
  'real coupon',
] as const;

/** Cells of the title block that are filled in by hand. */
export const COUPON_CELLS: readonly (readonly [string, string])[] = [
  ['Real coupon, number', ''],
  ['Cut and etched on', ''],
  ['Read by, initials', ''],
  ['Trainee, initials', ''],
];

export const STRIP_SAYS =
  'The root, broken open: filled where it tied in, blank where it did not, dotted where it is not judged. Triangles: cuts marked before welding. Heavy rule: judged length, mm.';
