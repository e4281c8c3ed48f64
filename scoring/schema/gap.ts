import type { DeviceInfo } from '../../engine/index.ts';

/** Why something stands as not measured; each with what its sentence needs. */
export type GapReason =
  | { why: 'arc never burned' }
  | { why: 'no puddle crossed' }
  | { why: 'no puddle under arc' }
  | { why: 'straight run' }
  | { why: 'too few cycles'; least: number }
  | { why: 'held by exercise'; device: DeviceInfo['kind'] }
  | { why: 'too little bead' }
  | { why: 'root not marked' }
  | { why: 'fusion line not marked' }
  | { why: 'none marked' }
  | { why: 'cold plate not seen' }
  | { why: 'not read off marks' }
  | { why: 'accounts open' };

/** What can stand as not measured, on an attempt or on a coupon's photograph. */
export type GapName =
  | 'motion'
  | 'arc on front'
  | 'weave'
  | 'tip to work'
  | 'work angle'
  | 'travel angle'
  | 'ends'
  | 'root fusion'
  | 'plate fusion'
  | 'undercut'
  | 'overlap'
  | 'melted edge'
  | 'all of it';

/** A reading that is not there, and why. Said by `gapSaid`. */
export type Gap = { what: GapName } & GapReason;
