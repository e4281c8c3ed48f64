import type { AdviceData, Found } from '../advice/found.ts';
import type { Advice, AdviceCode, Line } from '../schema/result.ts';
import { handSentences } from './hand.ts';
import { machineSentences, suspectSaid } from './machine.ts';
import { said, toeName, upper } from './names.ts';
import { rootSaid, seenSaid } from './seen.ts';

export type AdviceSentences = { [C in AdviceCode]: (p: AdviceData[C]) => string };

/** Every sentence of advice, in one place. Numbers come from the attempt; a sentence whose numbers are not known is not said. */
const adviceSentences: AdviceSentences = {
  'weld-the-judged-length': (p) =>
    `Weld all of the judged length, ${said(p.from_mm)} to ${said(p.to_mm)} mm; ${said(p.bare_mm)} mm of it are bare.`,

  climb: () =>
    'You went down the joint. Metal laid so runs ahead of the arc and leaves the root short, however flat it looks; nothing of it is judged. Start at the bottom and climb.',

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

  ...handSentences,
  ...machineSentences,

  either: (p) =>
    `${seenSaid(p.seen)} Two things could be behind it: ${suspectSaid(p.one)}, or ${suspectSaid(p.other)}. Mend the first, weld again, and look.`,

  'let-go-early': (p) =>
    `You let go at ${said(p.at_mm, 0)}; the weld goes on to ${said(p.to_mm, 0)}. Strike above the crater, drop back in, fill it, and go on to the end.`,

  'arc-lost': (p) =>
    `The arc was out for ${said(p.out_s)} s at ${said(p.stop_mm, 0)} and you went on as if it burned. ${p.seen === null ? '' : `${seenSaid(p.seen)} `}When it goes out, stop; strike above and drop back into the crater.`,

  'root-just-short': (p) =>
    `Root only just there at ${said(p.y_mm, 0)}: ${rootSaid(p.root_mm)}, give or take ${said(p.plusMinus_mm, 2)}. Your hand was as shown; saw a real one there.`,

  'toe-melted-open': (p) =>
    `${toe(p)}: melted open and left ${said(p.depth_mm, 2)} mm deep at ${said(p.y_mm, 0)}. Wait for it to fill before you leave.`,

  'crowned-straight': (p) =>
    `A straight run with this much metal stands ${said(p.convexity_mm)} high; ${said(p.limit_mm)} is the limit. Climb a little faster, or weave it.`,

  undersize: (p) =>
    p.place === null
      ? `Leg is ${said(p.size_mm)} where ${said(p.asked_mm)} was asked${p.length_mm > 0 ? `, over ${said(p.length_mm, 0)} mm` : ''}.${
          p.laid_mm2 !== null && p.holds_mm2 !== null && p.laid_mm2 < 1.1 * p.holds_mm2
            ? ` You're laying ${said(p.laid_mm2, 0)} mm² and the size takes ${said(p.holds_mm2, 0)}.`
            : ''
        } Your hand was as shown: climb slower, or give it more wire.`
      : `Leg is ${said(p.size_mm)} where ${said(p.asked_mm)} was asked, ${shortAt(p.place)}; the rest holds. ${
          p.place.little ? 'That is little: weld' : 'Weld'
        } as you did, and look what your hand did there.`,

  oversize: (p) =>
    `Weld is ${said(p.size_mm)} where at most ${said(p.most_mm)} was asked${p.length_mm > 0 ? `, over ${said(p.length_mm, 0)} mm` : ''}. Climb faster.`,

  'one-sided': (p) =>
    `One leg is ${said(p.legLong_mm)}, the other ${said(p.legShort_mm)}. Shift the weave ${said(p.shift_mm)} mm towards the ${toeName(p.joint, p.side)}.`,

  'crater-open': (p) =>
    p.reStrikes === 0
      ? `Crater left ${said(p.depth_mm)} deep at ${said(p.y_mm, 0)}. Stay a moment, then strike once or twice, short, into it as it sets.`
      : `Crater still ${said(p.depth_mm)} deep at ${said(p.y_mm, 0)} after ${p.reStrikes === 1 ? 'one short re-strike' : `${p.reStrikes} short re-strikes`}. Give it one a little longer, in its middle.`,

  'restart-on-crater': (p) =>
    `You restarted on the cold crater at ${said(p.stop_mm, 0)} and climbed off. ${p.seen === null ? '' : `${seenSaid(p.seen)} `}Strike about 10 above it, drop back in, wait until it is full, then go.`,

  'restart-not-back': (p) =>
    `You restarted ${said(p.above_mm, 0)} above the stop at ${said(p.stop_mm, 0)} and never came back into the crater. ${p.seen === null ? '' : `${seenSaid(p.seen)} `}Drop back in, wait until it is full, then go.`,

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

  'measure-a-real-one': (p) =>
    `Too close to call, ${p.measure}: limit ${said(p.limit, 2)}, read ${said(p.reading, 2)}, give or take ${said(p.plusMinus, 2)} ${unitSign(p.unit)}. Measure a real one.`,

  'keep-it': (p) => `Root ${rootSaid(p.root_mm)} at its worst, crowned ${said(p.convexity_mm)} at most. Same again.`,

  'see-the-cut': (p) =>
    `${upper(p.measure)} is outside at ${said(p.y_mm, 0)} mm, and nothing in your hand alone accounts for it. Look at the cut there with somebody who knows.`,
};

/** A piece of advice as it goes into a result: with its sentence. */
export function adviceSaid(
  { code, data, y_mm, t_s, cycle, side, change }: Found,
  sentences: AdviceSentences = adviceSentences,
): Advice {
  // Each code has its own data; the table and the union are made of the same names, which the compiler cannot follow through a look-up.
  const say = sentences[code] as (p: typeof data) => string;
  return { code, text: say(data), y_mm, t_s, cycle, side, change };
}

function shortAt({ from_mm, to_mm }: { from_mm: number; to_mm: number }): string {
  return from_mm === to_mm ? `at ${said(from_mm, 0)} mm` : `from ${said(from_mm, 0)} to ${said(to_mm, 0)} mm`;
}

function toe(p: { joint: Parameters<typeof toeName>[0]; side: 'A' | 'B' }): string {
  return upper(toeName(p.joint, p.side));
}

export function unitSign(unit: Line['unit']): string {
  return unit === 'deg' ? '°' : unit;
}
