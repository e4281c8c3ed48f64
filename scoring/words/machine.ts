import type { AdviceData, Suspect } from '../advice/found.ts';
import type { HandCode, SettingsCode } from '../schema/result.ts';
import { said, toeName, upper } from './names.ts';
import { beside } from './seen.ts';

type P = AdviceData[SettingsCode];

const AS_SHOWN = 'Your hand was as shown';

/** "16 V and 4 m/min are set; the workshop welds such a joint at 19 V and 5.2." Only what differs. */
function setAgainst({ set, usual }: P): string {
  if (usual === null) return '';
  const parts: [string, string][] = [];
  if (Math.abs(set.volts_V - usual.volts_V) >= 0.05) parts.push([`${said(set.volts_V)} V`, `${said(usual.volts_V)} V`]);
  if (Math.abs(set.feed_mpmin - usual.feed_mpmin) >= 0.05)
    parts.push([`${said(set.feed_mpmin)} m/min`, `${said(usual.feed_mpmin)} m/min`]);
  if (parts.length === 0) return '';
  const list = (k: 0 | 1): string => parts.map((p) => p[k]).join(' and ');
  return `Set: ${list(0)}; the workshop welds such a joint at ${list(1)}.`;
}

/** Where nothing of it shows in the lines, the settings are named and nothing is made of them. */
const told = (todo: (p: P) => string): ((p: P) => string) => {
  return (p) => {
    const shows = beside(p.seen, p.verdict).trim();
    const against = setAgainst(p);
    const nothingShows = p.seen === null || p.verdict === 'within';
    const end = nothingShows && against !== '' ? 'Go back to that, and look at the difference' : todo(p);
    return [`${AS_SHOWN}.`, shows, against, `${end}.`].filter((part) => part !== '').join(' ');
  };
};

/** Every sentence about a machine that does not fit the joint: said only where the hand was as asked. */
export const machineSentences: { [C in SettingsCode]: (p: AdviceData[C]) => string } = {
  'cold-root': told(() => 'Too cold: more volts first, then wire, same hand'),
  'cold-toe': told((p) => `${upper(toeName(p.joint, p.side ?? 'A'))} is cold all along: more volts, same hand`),
  'too-much-metal': told(() => 'More metal than such a joint takes: turn the wire down, or climb faster than shown'),
  'too-hot': told(() => 'Too hot: fewer volts, then less wire, same hand'),
  'too-little-wire': told(() => 'Less metal than such a joint takes: more wire, or climb slower than shown'),
  'gap-takes-metal': told(
    (p) => `The joint stands ${said(p.gap_mm)} mm open and takes metal for it: climb slower, same weave`,
  ),
};

const suspects: Record<HandCode | SettingsCode, string> = {
  'arc-back-on-puddle': 'a root crossed a little low',
  'tip-too-far': 'a tip held a little far',
  'tip-too-close': 'a tip held a little close',
  'pushed-far': 'a little more push than asked',
  dragged: 'a little less push than asked',
  'work-angle-off': 'the work angle',
  'too-narrow': 'a weave a little narrow',
  'too-wide': 'a weave a little wide',
  'to-one-side': 'a weave a little to one side',
  drifted: 'a weave that drifts a little',
  'toe-skipped': 'a toe not gone to',
  'toe-left-early': 'a toe left a little early',
  'toes-left-early': 'toes left a little early',
  'waited-long': 'waits a little long',
  'beat-slow': 'a beat a little slow',
  'beat-fast': 'a beat a little fast',
  'climbed-fast': 'a climb a little fast',
  'climbed-slowly': 'a climb a little slow',
  stalled: 'a stop on the way',
  jumped: 'a jump on the way',
  slipped: 'a slip on the way',
  'fits-and-starts': 'an uneven climb',
  'uneven-rhythm': 'an uneven beat',
  'uneven-waits': 'uneven waits at a toe',
  shaky: 'an unsteady aim',
  'cold-root': 'settings too cold',
  'cold-toe': 'settings too cold',
  'too-much-metal': 'too much wire',
  'too-hot': 'settings too hot',
  'too-little-wire': 'too little wire',
  'gap-takes-metal': 'the gap',
};

/** A cause that may be behind what is seen, as it is named beside another. */
export function suspectSaid(code: Suspect): string {
  return suspects[code];
}
