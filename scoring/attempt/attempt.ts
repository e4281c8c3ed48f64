import {
  type Accounts,
  type Recording,
  replay,
  Seconds,
  type Section,
  type SimulationOptions,
} from '../../engine/index.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import { Trace } from './trace.ts';

/**
 * What an attempt left behind: everything scoring looks at. The game has it at hand when the arc goes out; from a file it is welded
 * again by `attemptOf`. Both give the same result.
 */
export interface Attempt {
  simulation: SimulationOptions;
  trace: Trace;
  /** A cut square to the joint at a height, mm. */
  section(y_mm: number): Section;
  accounts: Accounts;
  stateHash: string;
  /** Check numbers it passed through, one a second of weld and one at the end, to follow the recording's chain by. */
  states: readonly string[];
}

/** Welds a recording again and keeps what scoring needs. @throws EngineError when its settings are out of range */
export function attemptOf(recording: AttemptRecording): Attempt {
  const trace = new Trace();
  const seconds = new Seconds();
  const sim = replay(recording satisfies Recording, (sample, welded) => {
    trace.add(sample);
    seconds.note(welded);
  });
  return {
    simulation: recording.simulation,
    trace,
    section: (y_mm) => sim.section(y_mm),
    accounts: sim.accounts(),
    stateHash: sim.hash(),
    states: seconds.all(sim),
  };
}
