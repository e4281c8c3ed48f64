import type { JointOptions } from '../../../engine/index.ts';
import type { Attempt } from '../../attempt/attempt.ts';
import type { BeadStart, BeadStop, Flaw } from '../../schema/ends.ts';
import type { Gap } from '../../schema/gap.ts';
import type { Motion, Stop } from '../../schema/motion.ts';
import { readStart } from '../hand/shelf.ts';
import type { StopsReading } from '../hand/stops.ts';
import { milli, plusMinusAt } from '../precision.ts';
import { craterOf, FILLED_MM, upperEnd_mm } from './crater.ts';
import { restartFlaw } from './restart-flaw.ts';
import { type Settled, settledNear } from './settled.ts';
import { fullWidthFrom_mm, startLump } from './start.ts';
import { bothLegs_mm, heightsOf, SLICE_MM, type Slice, type Survey } from './survey.ts';

export interface Ends {
  motion: Pick<Motion, 'start' | 'stops' | 'taps'>;
  bead: { start: BeadStart | null; stops: BeadStop[] };
  /** Why something at the ends was not measured. */
  notMeasured: Gap[];
}

interface Along {
  slices: readonly Slice[];
  survey: Survey;
  joint: JointOptions;
  cell_mm: number;
}

/** Reads how every run was begun, stopped and taken up again, on the hand and on the bead. Knows nothing of the judged length. */
export function readEnds(attempt: Attempt, survey: Survey, reading: StopsReading): Ends {
  const { stops, taps, start } = reading;
  if (start === null)
    return { motion: { start: null, stops, taps }, bead: { start: null, stops: [] }, notMeasured: [] };
  const slices = survey.along(attempt.simulation.joint);
  const bead: Along = { slices, survey, joint: attempt.simulation.joint, cell_mm: attempt.simulation.cell_mm };
  const stops_mm = stops.map((s) => s.y_mm);
  const near = (y: number): Settled | null => settledNear(slices, y, start.struck_mm, stops_mm);
  const low = near(start.struck_mm);
  return {
    motion: { start: readStart(attempt.trace, start, low?.legs_mm ?? null), stops, taps },
    bead: {
      start: low === null ? null : beadStart(slices, low, start.struck_mm, attempt.simulation.cell_mm),
      stops: stops.map((stop) => beadStop(bead, stop, near(stop.y_mm))),
    },
    notMeasured: low === null ? [{ what: 'ends', why: 'too little bead' }] : [],
  };
}

function beadStart(slices: readonly Slice[], settled: Settled, struck_mm: number, cell_mm: number): BeadStart | null {
  const lump = startLump(slices, settled);
  if (lump === null) return null;
  const full = fullWidthFrom_mm(slices, settled);
  return {
    bottom_mm: milli(slices[0]!.y_mm),
    settledFace_mm: milli(settled.face_mm),
    lump_mm: milli(lump.lump_mm),
    lumpAt_mm: milli(lump.at_mm),
    plusMinus_mm: milli(plusMinusAt('start lump', cell_mm) + settled.give_mm),
    fullWidthFrom_mm: full === null ? null : milli(full),
    fullWidthAboveStrike_mm: full === null ? null : milli(full - struck_mm),
  };
}

function beadStop(bead: Along, stop: Stop, settled: Settled | null): BeadStop {
  const { cell_mm, slices, survey } = bead;
  const crater = settled === null ? null : craterOf(survey, stop.y_mm, endAbove(bead, stop), settled);
  const plusMinus = plusMinusAt('crater', cell_mm) + (settled?.give_mm ?? 0);
  return {
    y_mm: stop.y_mm,
    craterDepth_mm: crater === null ? null : milli(crater.depth_mm),
    craterAt_mm: crater === null ? null : milli(crater.at_mm),
    plusMinus_mm: milli(plusMinus),
    hollow_mm: crater === null ? null : milli(crater.hollow_mm),
    leastSize_mm: crater === null ? null : milli(crater.leastSize_mm),
    leastSizeAt_mm: crater === null ? null : milli(crater.leastSizeAt_mm),
    filled: crater === null ? null : crater.depth_mm < FILLED_MM,
    flaw: stop.restart === null || settled === null ? null : flawAt(slices, stop, settled, cell_mm, plusMinus),
  };
}

function flawAt(slices: readonly Slice[], stop: Stop, settled: Settled, cell_mm: number, face: number): Flaw | null {
  return restartFlaw(slices, stop.y_mm, settled, {
    root: plusMinusAt('root fusion', cell_mm),
    overlap: plusMinusAt('overlap', cell_mm),
    face,
    length: plusMinusAt('restart flaw', cell_mm),
  });
}

/** The bead goes on past a stop when there is metal this far above it, mm. */
const GOES_ON_MM = 8;
/** ... with legs of this much together: a drip above a stop is no bead. */
const GOES_ON_LEGS_MM = 4;

/** Upper end of the bead the stop is in; null where it goes on. A weld that runs off the joint ends with the joint. */
function endAbove({ slices, survey, joint }: Along, stop: Stop): number | null {
  if (slices.some((s) => s.y_mm > stop.y_mm + GOES_ON_MM && bothLegs_mm(s) > GOES_ON_LEGS_MM)) return null;
  const last = slices[slices.length - 1];
  if (last === undefined) return null;
  const top = heightsOf(joint).to_mm;
  return last.y_mm + SLICE_MM > top ? top : upperEnd_mm(survey, last.y_mm, last.y_mm + SLICE_MM);
}
