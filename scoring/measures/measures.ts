import type { DeviceInfo } from '../../engine/index.ts';
import type { Attempt } from '../attempt/attempt.ts';
import { type Span, spanBetween, type Trace } from '../attempt/trace.ts';
import type { Asked, Exercise } from '../schema/exercise.ts';
import type { Gap } from '../schema/gap.ts';
import type { Band } from '../schema/leeway.ts';
import type { Motion } from '../schema/motion.ts';
import type { Result } from '../schema/result.ts';
import { readEnds } from './bead/ends.ts';
import { readBead } from './bead/summary.ts';
import type { Survey } from './bead/survey.ts';
import { curveOf, type HandCurve } from './hand/curve.ts';
import { readHand } from './hand/motion.ts';
import { type Way, wayOf, weldedTwice_mm } from './hand/passes.ts';
import { readStops } from './hand/stops.ts';
import { plusMinusAt, runKindOf } from './precision.ts';
import { processFigures } from './process.ts';
import type { FreezeStamps } from './section/station.ts';

/** What has to be known besides the attempt to measure it; no limit is among it. */
export interface MeasureQuestion {
  /** The attempt's cuts. */
  survey: Survey;
  judged: Exercise['judged'];
  asked: Asked | null;
  device: DeviceInfo;
  lead: Band;
  /** Only the upper root crossing of a cycle counts (looping triangle). */
  upperOnly: boolean;
}

/** Everything read off one attempt. */
export interface Measures {
  motion: Motion;
  /** The hand along the judged length, read from its aim alone. */
  curve: HandCurve;
  bead: Result['bead'];
  /** Freeze stamps of each station, same order. */
  stamps: readonly FreezeStamps[];
  process: Result['process'];
  /** Which way the torch went over the judged length. */
  way: Way;
  /** Length of the judged joint over which the arc came back to finished bead. */
  weldedTwice_mm: number;
  notMeasured: Gap[];
}

/** Measures an attempt once: the hand from its trace, the bead from its cuts, the machine from its accounts. */
export function measure(attempt: Attempt, q: MeasureQuestion): Measures {
  const { trace, simulation } = attempt;
  const { from_mm, to_mm } = q.judged;
  const stops = readStops(trace);
  const span = spanBetween(trace, from_mm, to_mm);
  const read = span ?? wholeSpan(trace);
  const hand = readHand(trace, read, { ...q, breaks: stops.breaks });
  const ends = readEnds(attempt, q.survey, stops);
  const motion = { ...hand.motion, ...ends.motion };
  const legGive_mm = plusMinusAt('leg', simulation.cell_mm, runKindOf(motion.width_mm));
  const along = readBead(q.survey, legGive_mm, q.judged, q.asked);
  return {
    motion,
    curve: curveOf(trace, read ?? { from: 0, to: 0 }, { breaks: stops.breaks, upperOnly: q.upperOnly }),
    bead: { ...along.bead, ...ends.bead },
    stamps: along.stamps,
    process: processFigures(simulation, attempt.accounts, motion.travel_mmps, q.asked),
    way: wayOf(trace, q.judged, stops.technique),
    weldedTwice_mm: weldedTwice_mm(trace, from_mm, to_mm, stops.technique),
    notMeasured: [...hand.notMeasured, ...ends.notMeasured],
  };
}

/** Where the arc burned at all: a drill that never reached the judged length still shows what the hand did. */
function wholeSpan(trace: Trace): Span | null {
  return spanBetween(trace, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
}
