import { said } from './names.ts';

/**
 * Every sentence of advice, in one place. Numbers come from the attempt; a sentence whose numbers are not known is not said.
 */
export const sentences = {
  weldTheLength: (p: { bare_mm: number; from_mm: number; to_mm: number }): string =>
    `Weld all of the judged length, ${said(p.from_mm)} to ${said(p.to_mm)} mm; ${said(p.bare_mm)} mm of it are bare.`,

  climb: (): string => 'You went down the joint. It looks flat and it is hardly fused; start at the bottom and climb.',

  tooMuchMetal: (p: { laid_mm2: number; holds_mm2: number; handFine: boolean }): string =>
    `You're laying ${said(p.laid_mm2, 0)} mm² and the joint holds ${said(p.holds_mm2, 0)}. Climb faster or turn the wire down${p.handFine ? '; your hand is fine' : ''}.`,

  arcBack: (p: { from_mm: number; to_mm: number; back_mm: number; root_mm: number; weave: boolean }): string =>
    `Arc sat ${said(p.back_mm)} mm back in the puddle from ${said(p.from_mm, 0)} to ${said(p.to_mm, 0)}. ${
      p.weave ? 'Get it up on the front when you cross the root' : 'Keep it up on the front of the puddle'
    }; it was ${rootSaid(p.root_mm)} there.`,

  tipTooFar: (p: { tip_mm: number; asked_mm: number; root_mm: number }): string =>
    `Tip-to-work was ${said(p.tip_mm)} mm; ${said(p.asked_mm)} was asked. Come in closer: the far tip took amps, and the root is ${rootSaid(p.root_mm)}.`,

  coldRoot: (p: { root_mm: number; convexity_mm: number; flat: boolean }): string =>
    p.flat
      ? `Flat because it's cold. The root is ${rootSaid(p.root_mm)}. More wire and volts, same hand.`
      : `Cold: the root is ${rootSaid(p.root_mm)} under a crown of ${said(p.convexity_mm)}. More volts first, then wire, same hand.`,

  rootJust: (p: { root_mm: number; plusMinus_mm: number; y_mm: number }): string =>
    `Root only just there at ${said(p.y_mm, 0)}: ${rootSaid(p.root_mm)}, give or take ${said(p.plusMinus_mm, 2)}. Reach a touch farther ahead when you cross it.`,

  toeLeftEarly: (p: { toe: string; pause_s: number; asked_s: number; filledShare: number | null }): string =>
    `${upper(p.toe)}: you left before it filled${p.filledShare === null || p.filledShare >= 0.995 ? '' : ` (${said(100 * (1 - p.filledShare), 0)} % of the time)`}. You waited ${said(p.pause_s, 2)} s there, ${said(p.asked_s, 2)} was asked. Count one more.`,

  toeNotReached: (p: { toe: string; short_mm: number }): string =>
    `${upper(p.toe)}: the wire stopped ${said(p.short_mm)} mm short of where the metal ran to. Carry it out farther before you wait.`,

  coldToe: (p: { toe: string; overlap_mm: number; y_mm: number }): string =>
    `${upper(p.toe)}: metal rests ${said(p.overlap_mm)} mm on plate that never melted at ${said(p.y_mm, 0)}. Your pause is there; it is too cold. More volts, same hand.`,

  coldLapStraight: (p: { toe: string; overlap_mm: number; y_mm: number }): string =>
    `${upper(p.toe)}: metal rests ${said(p.overlap_mm)} mm on plate that never melted at ${said(p.y_mm, 0)}. A straight run this fat rolls over its toes; climb faster, or weave.`,

  toeMeltedOpen: (p: { toe: string; depth_mm: number; y_mm: number }): string =>
    `${upper(p.toe)}: melted open and left ${said(p.depth_mm, 2)} mm deep at ${said(p.y_mm, 0)}. Wait for it to fill before you leave.`,

  crownedCold: (p: { convexity_mm: number; root_mm: number }): string =>
    `Crowned ${said(p.convexity_mm)} over a root ${rootSaid(p.root_mm)}: it is cold. More volts, same wire, same hand.`,

  crownedNarrow: (p: { convexity_mm: number; y_mm: number }): string =>
    `Tied in, but crowned ${said(p.convexity_mm)} at ${said(p.y_mm, 0)}. Keep the heat, widen 1 mm, wait on the toes.`,

  crownedStraight: (p: { convexity_mm: number; limit_mm: number }): string =>
    `A straight run with this much metal stands ${said(p.convexity_mm)} high; ${said(p.limit_mm)} is the limit. Weave it: toe, root, toe, with a wait at each toe.`,

  crownedSlow: (p: { convexity_mm: number; travel_mmps: number; asked_mmps: number }): string =>
    `Crowned ${said(p.convexity_mm)} because you climb slowly: ${said(p.travel_mmps)} mm/s, ${said(p.asked_mmps)} was asked. Take a bigger step up.`,

  undersize: (p: {
    size_mm: number;
    asked_mm: number;
    length_mm: number;
    laid_mm2: number | null;
    holds_mm2: number | null;
  }): string =>
    `Leg is ${said(p.size_mm)} where ${said(p.asked_mm)} was asked${p.length_mm > 0 ? `, over ${said(p.length_mm, 0)} mm` : ''}.${
      p.laid_mm2 !== null && p.holds_mm2 !== null && p.laid_mm2 < 1.1 * p.holds_mm2
        ? ` You're laying ${said(p.laid_mm2, 0)} mm² and the size takes ${said(p.holds_mm2, 0)}.`
        : ''
    } Climb slower.`,

  undersizeNarrow: (p: { size_mm: number; asked_mm: number; laid_mm2: number; holds_mm2: number }): string =>
    `Leg is ${said(p.size_mm)} where ${said(p.asked_mm)} was asked, and the metal is there: ${said(p.laid_mm2, 0)} mm² laid, ${said(p.holds_mm2, 0)} needed. It stands in the middle; widen 1 mm and wait on the toes.`,

  onePass: (p: { twice_mm: number }): string =>
    `You went back over ${said(p.twice_mm, 0)} mm of finished bead. One pass: a second one hides the first and mends nothing.`,

  metalDropped: (p: { dripped_g: number; laid_mm2: number | null; holds_mm2: number | null }): string =>
    `${said(p.dripped_g)} g dropped out of the joint${
      p.laid_mm2 !== null && p.holds_mm2 !== null
        ? `: you're laying ${said(p.laid_mm2, 0)} mm² and it holds ${said(p.holds_mm2, 0)}`
        : ''
    }. Less heat in one place: climb faster, or turn the wire down.`,

  noClimb: (): string =>
    'The arc went up and down the joint without climbing it. Start at the bottom, wait for the shelf, and climb on it.',

  oversize: (p: { size_mm: number; most_mm: number; length_mm: number }): string =>
    `Weld is ${said(p.size_mm)} where at most ${said(p.most_mm)} was asked${p.length_mm > 0 ? `, over ${said(p.length_mm, 0)} mm` : ''}. Climb faster.`,

  oneSided: (p: { toe: string; legLong_mm: number; legShort_mm: number; shift_mm: number }): string =>
    `One leg is ${said(p.legLong_mm)}, the other ${said(p.legShort_mm)}. Shift the weave ${said(p.shift_mm)} mm towards the ${p.toe}.`,

  edgeMeltedBack: (p: { back_mm: number; y_mm: number }): string =>
    `The edge is melted back ${said(p.back_mm)} mm at ${said(p.y_mm, 0)}. Only touch the edge; wait on the back plate.`,

  hotTop: (p: { low_mm: number; high_mm: number }): string =>
    `Top end ran hot: the face grew from ${said(p.low_mm)} to ${said(p.high_mm)} mm wide. Climb faster as the plates warm, or let them cool first.`,

  unevenRhythm: (p: { spread: number; period_s: number }): string =>
    `Your beat wandered by ${said(100 * p.spread, 0)} % round ${said(p.period_s)} s. Count it out loud; steps and toes will even up.`,

  restartOnCrater: (p: { stop_mm: number; above_mm: number; root_mm: number; flaw_mm: number }): string =>
    `You restarted on the cold crater at ${said(p.stop_mm, 0)} and climbed off; the root is ${rootSaid(p.root_mm)}${p.flaw_mm > 0 ? ` over ${said(p.flaw_mm, 0)} mm there` : ''}. Strike about 10 above it, drop back in, wait until it is full, then go.`,

  restartNotBack: (p: { stop_mm: number; above_mm: number; root_mm: number; flaw_mm: number }): string =>
    `You restarted ${said(p.above_mm, 0)} above the stop at ${said(p.stop_mm, 0)} and never came back into the crater; the root is ${rootSaid(p.root_mm)} there. Drop back in, wait until it is full, then go.`,

  restartOverfilled: (p: {
    stop_mm: number;
    crown_mm: number | null;
    lap_mm: number | null;
    inCrater_s: number;
  }): string => {
    const what = [
      p.crown_mm === null ? '' : `crowned ${said(p.crown_mm)}`,
      p.lap_mm === null ? '' : `${said(p.lap_mm)} over cold plate at a toe`,
    ].filter((x) => x !== '');
    return `Your restart at ${said(p.stop_mm, 0)} ran over: ${what.join(', ')}. You were ${said(p.inCrater_s)} s in the crater; go on as soon as it is full.`;
  },

  craterOpen: (p: { depth_mm: number; y_mm: number; reStrikes: number }): string =>
    p.reStrikes === 0
      ? `Crater left ${said(p.depth_mm)} deep at ${said(p.y_mm, 0)}. Stay a moment, then strike once or twice, short, into it as it sets.`
      : `Crater still ${said(p.depth_mm)} deep at ${said(p.y_mm, 0)} after ${p.reStrikes === 1 ? 'one short re-strike' : `${p.reStrikes} short re-strikes`}. Give it one a little longer, in its middle.`,

  measureRealOne: (p: { measure: string; limit: number; reading: number; plusMinus: number; unit: string }): string =>
    `Too close to call, ${p.measure}: limit ${said(p.limit, 2)}, read ${said(p.reading, 2)}, give or take ${said(p.plusMinus, 2)} ${p.unit}. Measure a real one.`,

  keepIt: (p: { root_mm: number; convexity_mm: number }): string =>
    `Root ${rootSaid(p.root_mm)} at its worst, crowned ${said(p.convexity_mm)} at most. Same again.`,

  seeTheCut: (p: { measure: string; y_mm: number }): string =>
    `${upper(p.measure)} is outside at ${said(p.y_mm, 0)} mm, and nothing in your hand alone accounts for it. Look at the cut there with somebody who knows.`,
};

/** "0.6 past the corner", "0.4 short". */
export function rootSaid(root_mm: number): string {
  const tenths = Math.round(root_mm * 10);
  if (tenths === 0) return 'just at the corner';
  return tenths > 0 ? `${said(root_mm)} past the corner` : `${said(-root_mm)} short`;
}

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
