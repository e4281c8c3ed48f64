import type { AdviceCode } from '../schema/result.ts';

/** What kind of trouble a fault is, the ones the eye misses first: the order in which a class is looked at. */
const FAULT_KINDS = ['root', 'bead not there', 'toes', 'metal', 'shape', 'hand', 'none'] as const;
export type FaultKind = (typeof FAULT_KINDS)[number];

/** Every first fix as the name of the fault it mends, and its kind. */
export const faults: Record<AdviceCode, { name: string; kind: FaultKind }> = {
  'weld-the-judged-length': { name: 'judged length not welded', kind: 'bead not there' },
  climb: { name: 'welded downhill', kind: 'root' },
  'no-climb': { name: 'arc did not climb', kind: 'bead not there' },
  'one-pass': { name: 'second pass over a finished bead', kind: 'bead not there' },
  'metal-dropped': { name: 'metal dropped out', kind: 'metal' },
  'too-much-metal': { name: 'more metal laid than the joint holds', kind: 'metal' },
  'arc-back-on-puddle': { name: 'arc back in the puddle at the root', kind: 'root' },
  'tip-too-far': { name: 'tip too far from the work', kind: 'root' },
  'let-go-early': { name: 'let go before the end', kind: 'bead not there' },
  'arc-lost': { name: 'arc lost on the way', kind: 'bead not there' },
  jumped: { name: 'jumped up the joint', kind: 'bead not there' },
  'tip-too-close': { name: 'tip too close to the work', kind: 'hand' },
  'pushed-far': { name: 'pushed too far', kind: 'hand' },
  dragged: { name: 'dragged', kind: 'hand' },
  'work-angle-off': { name: 'work angle off', kind: 'hand' },
  'too-narrow': { name: 'weave too narrow', kind: 'shape' },
  'too-wide': { name: 'weave too wide', kind: 'shape' },
  'to-one-side': { name: 'weave to one side', kind: 'toes' },
  drifted: { name: 'weave drifting to one side', kind: 'toes' },
  'toe-skipped': { name: 'toe not gone to', kind: 'toes' },
  'toes-left-early': { name: 'both toes left before they filled', kind: 'toes' },
  'waited-long': { name: 'waited too long at the toes', kind: 'hand' },
  'beat-slow': { name: 'beat too slow', kind: 'hand' },
  'beat-fast': { name: 'beat too fast', kind: 'hand' },
  'climbed-fast': { name: 'climbed too fast', kind: 'hand' },
  'climbed-slowly': { name: 'climbed too slowly', kind: 'hand' },
  stalled: { name: 'stood still on the way', kind: 'hand' },
  slipped: { name: 'hand slipped', kind: 'hand' },
  'fits-and-starts': { name: 'climbed in fits and starts', kind: 'hand' },
  'uneven-waits': { name: 'uneven waits at a toe', kind: 'hand' },
  shaky: { name: 'shaky aim', kind: 'hand' },
  either: { name: 'outside, two causes possible', kind: 'shape' },
  'too-hot': { name: 'too hot for the joint', kind: 'metal' },
  'too-little-wire': { name: 'too little metal laid', kind: 'metal' },
  'gap-takes-metal': { name: 'gap not made up', kind: 'metal' },
  'crowned-straight': { name: 'crowned, straight run', kind: 'shape' },
  'cold-root': { name: 'root not tied in, too cold', kind: 'root' },
  'root-just-short': { name: 'root only just there', kind: 'root' },
  'toe-left-early': { name: 'toe left before it filled', kind: 'toes' },
  'toe-melted-open': { name: 'toe melted open', kind: 'toes' },
  'cold-toe': { name: 'cold lap at a toe', kind: 'toes' },
  undersize: { name: 'undersize', kind: 'shape' },
  oversize: { name: 'oversize', kind: 'shape' },
  'one-sided': { name: 'bead to one side', kind: 'shape' },
  'crater-open': { name: 'crater left open', kind: 'shape' },
  'restart-on-crater': { name: 'restarted on the cold crater', kind: 'root' },
  'restart-overfilled': { name: 'crater overfilled at a restart', kind: 'shape' },
  'restart-not-back': { name: 'restart not brought back into the crater', kind: 'root' },
  'edge-melted-back': { name: 'edge melted back', kind: 'shape' },
  'hot-top': { name: 'top end ran hot', kind: 'metal' },
  'uneven-rhythm': { name: 'uneven beat', kind: 'hand' },
  'measure-a-real-one': { name: 'too close to call', kind: 'none' },
  'keep-it': { name: 'nothing to change', kind: 'none' },
  'see-the-cut': { name: 'outside, cause not in the hand alone', kind: 'shape' },
};

/** A fault in an instructor's words. */
export function faultName(code: AdviceCode): string {
  return faults[code].name;
}

/** 0 for the kind looked at first. */
export function kindOrder(code: AdviceCode): number {
  return FAULT_KINDS.indexOf(faults[code].kind);
}
