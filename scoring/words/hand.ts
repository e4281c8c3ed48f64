import type { AdviceData } from '../advice/found.ts';
import type { HandCode } from '../schema/result.ts';
import { said, toeName, upper } from './names.ts';
import { beside } from './seen.ts';

type P = AdviceData[HandCode];

/** What a hand did against what was asked, what was seen of the bead, and what to do: always in this order, and never one because of another. */
const told = (what: (p: P) => string, todo: (p: P) => string): ((p: P) => string) => {
  return (p) => `${what(p)}. ${beside(p.seen, p.verdict)}${todo(p)}.`;
};

const over = ({ stretch }: P): string =>
  stretch === null ? '' : ` from ${said(stretch.from_mm, 0)} to ${said(stretch.to_mm, 0)}`;
const towards = ({ side }: P): string => (side === 'A' ? 'right' : 'left');
const toe = ({ joint, side }: P): string => upper(toeName(joint, side ?? 'A'));

/** Every sentence about a hand that was not as asked. */
export const handSentences: { [C in HandCode]: (p: AdviceData[C]) => string } = {
  'arc-back-on-puddle': told(
    (p) =>
      p.weave
        ? `You crossed the root ${said(p.asked - p.is)} mm lower than shown${over(p)}`
        : `Arc sat ${said(-p.is)} mm back in the puddle${over(p)}`,
    (p) =>
      p.weave
        ? 'Get it up on the front of the puddle when you cross the root'
        : 'Keep it up on the front of the puddle',
  ),
  'tip-too-far': told(
    (p) => `Tip-to-work was ${said(p.is)} mm${over(p)}; ${said(p.asked)} was asked`,
    () => 'Come in closer: a far tip takes amps',
  ),
  'tip-too-close': told(
    (p) => `Tip-to-work was ${said(p.is)} mm${over(p)}; ${said(p.asked)} was asked`,
    () => 'Hold it farther out',
  ),
  'pushed-far': told(
    (p) => `You pushed ${said(p.is, 0)}°${over(p)}; ${said(p.asked, 0)} was asked`,
    () => 'Bring the torch nearer to square',
  ),
  dragged: told(
    (p) =>
      p.is < -0.5
        ? `You dragged ${said(-p.is, 0)}°${over(p)}; a push of ${said(p.asked, 0)} was asked`
        : `You pushed ${said(Math.max(0, p.is), 0)}°${over(p)}; ${said(p.asked, 0)} was asked`,
    () => 'Point the wire up the joint',
  ),
  'work-angle-off': told(
    (p) => `Work angle was ${said(p.is, 0)}°${over(p)}; ${said(p.asked, 0)} was asked`,
    (p) =>
      `Lean the torch ${p.is > p.asked ? 'towards' : 'away from'} the ${p.joint === 'lap' ? 'back' : 'right'} plate`,
  ),
  'too-narrow': told(
    (p) =>
      p.is === 0
        ? `You went straight up; a weave ${said(p.asked)} mm wide was asked`
        : `Your weave was ${said(p.is)} mm wide${over(p)}; ${said(p.asked)} was asked`,
    (p) => (p.is === 0 ? 'Toe, root, toe, with a wait at each toe' : 'Carry it out to both toes'),
  ),
  'too-wide': told(
    (p) =>
      `Your weave was ${said(p.is)} mm wide${over(p)}; ${p.asked === 0 ? 'a straight run' : said(p.asked)} was asked`,
    (p) => (p.asked === 0 ? 'Keep on the root' : 'Turn at the toes and not past them'),
  ),
  'to-one-side': told(
    (p) => `Your weave stood ${said(Math.abs(p.is))} mm to the ${towards(p)}${over(p)}`,
    () => 'Bring its middle back over the root',
  ),
  drifted: told(
    (p) => `Your weave drifted ${said(Math.abs(p.is))} mm to the ${towards(p)} on the way up`,
    () => 'Find the root again at every crossing',
  ),
  'toe-skipped': told(
    (p) => `${toe(p)}: you turned back before it ${said(p.is, 0)} times${over(p)}`,
    () => 'Touch both toes in every cycle',
  ),
  'toe-left-early': told(
    (p) => `${toe(p)}: you waited ${said(p.is, 2)} s there${over(p)}; ${said(p.asked, 2)} was asked`,
    () => 'Count one more before you leave',
  ),
  'toes-left-early': told(
    (p) => `You waited ${said(p.is, 2)} s at the toes${over(p)}; ${said(p.asked, 2)} was asked`,
    () => 'Wait at each toe until it has filled',
  ),
  'waited-long': told(
    (p) =>
      `${p.side === null ? 'You waited' : `${toe(p)}: you waited`} ${said(p.is, 2)} s${p.side === null ? ' at the toes' : ' there'}${over(p)}; ${said(p.asked, 2)} was asked`,
    () => 'Go as soon as it has filled',
  ),
  'beat-slow': told(
    (p) => `Your beat was ${said(p.is)} s a cycle${over(p)}; ${said(p.asked)} was asked`,
    () => 'Quicken it, and keep the waits as they are',
  ),
  'beat-fast': told(
    (p) => `Your beat was ${said(p.is)} s a cycle${over(p)}; ${said(p.asked)} was asked`,
    () => 'Slow it down: cross, wait, cross, wait',
  ),
  'climbed-fast': told(
    (p) => `You climbed ${said(p.is)} mm/s${over(p)}; ${said(p.asked)} was asked`,
    () => 'Take a smaller step up',
  ),
  'climbed-slowly': told(
    (p) => `You climbed ${said(p.is)} mm/s${over(p)}; ${said(p.asked)} was asked`,
    () => 'Take a bigger step up',
  ),
  stalled: told(
    (p) => `You stopped climbing for ${said(p.is)} s at ${said(p.stretch?.from_mm ?? 0, 0)}`,
    () => 'Step up in every cycle',
  ),
  jumped: told(
    (p) => `You jumped ${said(p.is)} mm up at ${said(p.stretch?.from_mm ?? 0, 0)}`,
    () => 'Climb on the shelf, never past it',
  ),
  slipped: told(
    (p) => `Your hand slipped ${said(p.is)} mm to the ${towards(p)} at ${said(p.stretch?.from_mm ?? 0, 0)}`,
    () => 'After a slip go back to the root before you climb on',
  ),
  'fits-and-starts': told(
    (p) => `You climbed in fits and starts: ${said(100 * p.is, 0)} % of the time you stood still`,
    () => 'One even step in every cycle',
  ),
  'uneven-rhythm': told(
    (p) => `Your beat wandered by ${said(100 * p.is, 0)} %`,
    () => 'Count it out loud; steps and toes will even up',
  ),
  'uneven-waits': told(
    (p) => `${toe(p)}: your waits wandered by ${said(p.is, 2)} s round ${said(p.asked, 2)}`,
    () => 'Count the same at every visit',
  ),
  shaky: told(
    (p) => `Your aim shook by ${said(p.is)} mm`,
    () => 'Rest your hand, and let the stroke be long and calm',
  ),
};
