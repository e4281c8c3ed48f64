import type { AdviceData, Found } from '../advice/found.ts';
import type { Advice, AdviceCode, Line } from '../schema/result.ts';
import { said, toeName, upper } from './names.ts';

type Sentences = { [C in AdviceCode]: (p: AdviceData[C]) => string };

/** Every sentence of advice, in one place. Numbers come from the attempt; a sentence whose numbers are not known is not said. */
const sentences: Sentences = {
  'weld-the-judged-length': (p) =>
    `Weld all of the judged length, ${said(p.from_mm)} to ${said(p.to_mm)} mm; ${said(p.bare_mm)} mm of it are bare.`,

  climb: () => 'You went down the joint. It looks flat and it is hardly fused; start at the bottom and climb.',

  'no-climb': () =>
    'The arc went up and down the joint without climbing it. Start at the bottom, wait for the shelf, and climb on it.',

  'one-pass': (p) =>
    `You went back over ${said(p.twice_mm, 0)} mm of finished bead. One pass: a second one hides the first and mends nothing.`,

  'metal-dropped': (p) =>
    `${said(p.dripped_g)} g dropped out of the joint${
      p.laid_mm2 !== null && p.holds_mm2 !== null
        ? `: you're laying ${said(p.laid_mm2, 0)} mm² and it holds ${said(p.holds_mm2, 0)}`
        : ''
    }. Less heat in one place: climb faster, or turn the wire down.`,

  'too-much-metal': (p) =>
    `You're laying ${said(p.laid_mm2, 0)} mm² and the joint holds ${said(p.holds_mm2, 0)}. Climb faster or turn the wire down${p.handFine ? '; your hand is fine' : ''}.`,

  'arc-back-on-puddle': (p) =>
    `Arc sat ${said(p.back_mm)} mm back in the puddle from ${said(p.from_mm, 0)} to ${said(p.to_mm, 0)}. ${
      p.weave ? 'Get it up on the front when you cross the root' : 'Keep it up on the front of the puddle'
    }; it was ${rootSaid(p.root_mm)} there.`,

  'tip-too-far': (p) =>
    `Tip-to-work was ${said(p.tip_mm)} mm; ${said(p.asked_mm)} was asked. Come in closer: the far tip took amps, and the root is ${rootSaid(p.root_mm)}.`,

  'cold-root': (p) =>
    p.flat
      ? `Flat because it's cold. The root is ${rootSaid(p.root_mm)}. More wire and volts, same hand.`
      : `Cold: the root is ${rootSaid(p.root_mm)} under a crown of ${said(p.convexity_mm)}. More volts first, then wire, same hand.`,

  'root-just-short': (p) =>
    `Root only just there at ${said(p.y_mm, 0)}: ${rootSaid(p.root_mm)}, give or take ${said(p.plusMinus_mm, 2)}. Reach a touch farther ahead when you cross it.`,

  'toe-left-early': (p) =>
    `${toe(p)}: you left before it filled${p.filledShare === null || p.filledShare >= 0.995 ? '' : ` (${said(100 * (1 - p.filledShare), 0)} % of the time)`}. You waited ${said(p.pause_s, 2)} s there, ${said(p.asked_s, 2)} was asked. Count one more.`,

  'toe-not-reached': (p) =>
    `${toe(p)}: the wire stopped ${said(p.short_mm)} mm short of where the metal ran to. Carry it out farther before you wait.`,

  'toe-melted-open': (p) =>
    `${toe(p)}: melted open and left ${said(p.depth_mm, 2)} mm deep at ${said(p.y_mm, 0)}. Wait for it to fill before you leave.`,

  'cold-toe': (p) =>
    `${toe(p)}: metal rests ${said(p.overlap_mm)} mm on plate that never melted at ${said(p.y_mm, 0)}. ${
      p.weave
        ? 'Your pause is there; it is too cold. More volts, same hand.'
        : 'A straight run this fat rolls over its toes; climb faster, or weave.'
    }`,

  'crowned-cold': (p) =>
    `Crowned ${said(p.convexity_mm)} over a root ${rootSaid(p.root_mm)}: it is cold. More volts, same wire, same hand.`,

  'crowned-narrow': ({ convexity_mm, run }) =>
    run.weave
      ? `Tied in, but crowned ${said(convexity_mm)} at ${said(run.y_mm, 0)}. Keep the heat, widen 1 mm, wait on the toes.`
      : `A straight run with this much metal stands ${said(convexity_mm)} high; ${said(run.limit_mm)} is the limit. Weave it: toe, root, toe, with a wait at each toe.`,

  'crowned-slow': (p) =>
    `Crowned ${said(p.convexity_mm)} because you climb slowly: ${said(p.travel_mmps)} mm/s, ${said(p.asked_mmps)} was asked. Take a bigger step up.`,

  undersize: (p) => (p.metalIsThere ? undersizeNarrow(p) : undersizeShort(p)),

  oversize: (p) =>
    `Weld is ${said(p.size_mm)} where at most ${said(p.most_mm)} was asked${p.length_mm > 0 ? `, over ${said(p.length_mm, 0)} mm` : ''}. Climb faster.`,

  'one-sided': (p) =>
    `One leg is ${said(p.legLong_mm)}, the other ${said(p.legShort_mm)}. Shift the weave ${said(p.shift_mm)} mm towards the ${toeName(p.joint, p.side)}.`,

  'crater-open': (p) =>
    p.reStrikes === 0
      ? `Crater left ${said(p.depth_mm)} deep at ${said(p.y_mm, 0)}. Stay a moment, then strike once or twice, short, into it as it sets.`
      : `Crater still ${said(p.depth_mm)} deep at ${said(p.y_mm, 0)} after ${p.reStrikes === 1 ? 'one short re-strike' : `${p.reStrikes} short re-strikes`}. Give it one a little longer, in its middle.`,

  'restart-on-crater': (p) =>
    `You restarted on the cold crater at ${said(p.stop_mm, 0)} and climbed off; the root is ${rootSaid(p.root_mm)}${p.flaw_mm > 0 ? ` over ${said(p.flaw_mm, 0)} mm there` : ''}. Strike about 10 above it, drop back in, wait until it is full, then go.`,

  'restart-not-back': (p) =>
    `You restarted ${said(p.above_mm, 0)} above the stop at ${said(p.stop_mm, 0)} and never came back into the crater; the root is ${rootSaid(p.root_mm)} there. Drop back in, wait until it is full, then go.`,

  'restart-overfilled': (p) => {
    const what = [
      p.crown_mm === null ? '' : `crowned ${said(p.crown_mm)}`,
      p.lap_mm === null ? '' : `${said(p.lap_mm)} over cold plate at a toe`,
    ].filter((x) => x !== '');
    return `Your restart at ${said(p.stop_mm, 0)} ran over: ${what.join(', ')}. You were ${said(p.inCrater_s)} s in the crater; go on as soon as it is full.`;
  },

  'edge-melted-back': (p) =>
    `The edge is melted back ${said(p.back_mm)} mm at ${said(p.y_mm, 0)}. Only touch the edge; wait on the back plate.`,

  'hot-top': (p) =>
    `Top end ran hot: the face grew from ${said(p.low_mm)} to ${said(p.high_mm)} mm wide. Climb faster as the plates warm, or let them cool first.`,

  'uneven-rhythm': (p) =>
    `Your beat wandered by ${said(100 * p.spread, 0)} % round ${said(p.period_s)} s. Count it out loud; steps and toes will even up.`,

  'measure-a-real-one': (p) =>
    `Too close to call, ${p.measure}: limit ${said(p.limit, 2)}, read ${said(p.reading, 2)}, give or take ${said(p.plusMinus, 2)} ${unitSign(p.unit)}. Measure a real one.`,

  'keep-it': (p) => `Root ${rootSaid(p.root_mm)} at its worst, crowned ${said(p.convexity_mm)} at most. Same again.`,

  'see-the-cut': (p) =>
    `${upper(p.measure)} is outside at ${said(p.y_mm, 0)} mm, and nothing in your hand alone accounts for it. Look at the cut there with somebody who knows.`,
};

function undersizeShort(p: AdviceData['undersize']): string {
  const over = p.length_mm > 0 ? `, over ${said(p.length_mm, 0)} mm` : '';
  const metal =
    p.laid_mm2 !== null && p.holds_mm2 !== null && p.laid_mm2 < 1.1 * p.holds_mm2
      ? ` You're laying ${said(p.laid_mm2, 0)} mm² and the size takes ${said(p.holds_mm2, 0)}.`
      : '';
  return `Leg is ${said(p.size_mm)} where ${said(p.asked_mm)} was asked${over}.${metal} Climb slower.`;
}

function undersizeNarrow(p: AdviceData['undersize']): string {
  return `Leg is ${said(p.size_mm)} where ${said(p.asked_mm)} was asked, and the metal is there: ${said(p.laid_mm2 ?? 0, 0)} mm² laid, ${said(p.holds_mm2 ?? 0, 0)} needed. It stands in the middle; widen 1 mm and wait on the toes.`;
}

/** A piece of advice as it goes into a result: with its sentence. */
export function adviceSaid({ code, data, y_mm, t_s, cycle, side, change }: Found): Advice {
  // Each code has its own data; the table and the union are made of the same names, which the compiler cannot follow through a look-up.
  const say = sentences[code] as (p: typeof data) => string;
  return { code, text: say(data), y_mm, t_s, cycle, side, change };
}

/** "0.6 past the corner", "0.4 short". */
export function rootSaid(root_mm: number): string {
  const tenths = Math.round(root_mm * 10);
  if (tenths === 0) return 'just at the corner';
  return tenths > 0 ? `${said(root_mm)} past the corner` : `${said(-root_mm)} short`;
}

function toe(p: { joint: Parameters<typeof toeName>[0]; side: 'A' | 'B' }): string {
  return upper(toeName(p.joint, p.side));
}

function unitSign(unit: Line['unit']): string {
  return unit === 'deg' ? '°' : unit;
}
