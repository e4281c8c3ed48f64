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
  'cold-root': { name: 'root not tied in, too cold', kind: 'root' },
  'root-just-short': { name: 'root only just there', kind: 'root' },
  'toe-left-early': { name: 'toe left before it filled', kind: 'toes' },
  'toe-not-reached': { name: 'toe not reached', kind: 'toes' },
  'toe-melted-open': { name: 'toe melted open', kind: 'toes' },
  'cold-toe': { name: 'cold lap at a toe', kind: 'toes' },
  'crowned-cold': { name: 'crowned, too cold', kind: 'shape' },
  'crowned-narrow': { name: 'crowned, weave too narrow', kind: 'shape' },
  'crowned-slow': { name: 'crowned, climbed too slowly', kind: 'shape' },
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
