import type { Gap, GapName, GapReason } from '../schema/gap.ts';

const gapNames: Record<GapName, string> = {
  motion: 'motion',
  'arc on front': 'arc on the front of the puddle',
  weave: 'reach, pauses, beat, width and step up',
  'tip to work': 'tip-to-work',
  'work angle': 'work angle',
  'travel angle': 'travel angle',
  ends: 'start lump, shelf and crater',
  'root fusion': 'root fusion',
  'plate fusion': 'fusion into the plates',
  undercut: 'undercut',
  overlap: 'overlap',
  'melted edge': 'edge melted back',
  'all of it': 'bead, hand and metal',
};

/** What is not measured and why, in words; as results and reports carry it. */
export function gapSaid(gap: Gap): { what: string; why: string } {
  return { what: gapNames[gap.what], why: gapReason(gap) };
}

function gapReason(reason: GapReason): string {
  switch (reason.why) {
    case 'arc never burned':
      return 'the arc never burned over the judged length';
    case 'no puddle crossed':
      return 'the arc never crossed the root over a puddle';
    case 'no puddle under arc':
      return 'there was no puddle under the arc';
    case 'straight run':
      return 'a straight run has no weave cycles';
    case 'too few cycles':
      return `fewer than ${reason.least} weave cycles over the judged length`;
    case 'held by exercise':
      return `not measured with this device (${reason.device}); held by the exercise`;
    case 'too little bead':
      return 'too little bead between its ends to compare them with';
    case 'root not marked':
      return 'the fusion line is not marked up to the root on both plates, so the cut gets no verdict';
    case 'fusion line not marked':
      return 'the fusion line is not marked from the root to the toe on both plates';
    case 'none marked':
      return 'none was marked';
    case 'cold plate not seen':
      return 'whether metal rests on cold plate at a toe is not read off marks';
    case 'accounts open':
      return 'the model cannot account for its heat or metal in this attempt';
    case 'not read off marks':
      return 'not read off marks';
  }
}
