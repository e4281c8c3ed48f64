/** Verbs shared by tests: weld with the robot hand, change one thing at a time. */
import {
  type Calibration,
  createSimulation,
  defaultOptions,
  defaultWeave,
  type HandFaults,
  type JointOptions,
  type KernelChoice,
  noFaults,
  type ProcessOptions,
  type Simulation,
  type SimulationOptions,
  type TraceSample,
  type WeaveOptions,
  weaveHand,
} from '../../engine/index.ts';

export interface WeldCase {
  joint?: Partial<JointOptions>;
  process?: Partial<ProcessOptions>;
  weave?: Partial<WeaveOptions>;
  faults?: Partial<HandFaults>;
  cell_mm?: number;
  kernel?: KernelChoice;
  fineEverywhere?: boolean;
  calibration?: Partial<Calibration>;
}

export function optionsOf(c: WeldCase): SimulationOptions {
  const o = defaultOptions();
  return {
    joint: { ...o.joint, length_mm: 60, ...c.joint },
    process: { ...o.process, ...c.process },
    cell_mm: c.cell_mm ?? 0.75,
  };
}

/** Welds from 4 mm up to 4 mm below the top unless the case says otherwise. */
export function weld(c: WeldCase, onStep?: (t: TraceSample, sim: Simulation) => void): Simulation {
  const options = optionsOf(c);
  const sim = createSimulation(options, {
    kernel: c.kernel ?? 'auto',
    calibration: c.calibration ?? {},
    fineEverywhere: c.fineEverywhere ?? false,
  });
  const weave = { ...defaultWeave(), length_mm: options.joint.length_mm - 8, ...c.weave };
  for (const pose of weaveHand(weave, { ...noFaults(), ...c.faults })) {
    const trace = sim.step(pose);
    onStep?.(trace, sim);
  }
  return sim;
}
