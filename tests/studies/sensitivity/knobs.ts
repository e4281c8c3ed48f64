/** What can be turned at the bench, by as much as a real hand or machine errs, from two welds everything starts from. */
import { defaultProcess, defaultWeave } from '../../../engine/index.ts';
import type { TendencyCase } from '../../tendencies/summary.ts';

export const PIECES = ['tee', 'lap'] as const;
export type Piece = (typeof PIECES)[number];

/** From 14 mm on the means of both starts stand within 0.05 mm of those of a run twice as long. */
const LENGTH_MM = 40;
export const BETWEEN: [number, number] = [14, 28];

/** Held apart from the ready exercises, which may change: 6 mm plates, 19 V and 5.2 m/min, an inverted V at 2.2 mm/s. */
const process = { ...defaultProcess(), volts_V: 19, feed_mpmin: 5.2 };
const vee = {
  ...defaultWeave(),
  pattern: 'inverted-v' as const,
  cyclesPerSecond: 0.9,
  width_mm: 6,
  travel_mmps: 2.2,
  pauseA_s: 0.25,
  pauseB_s: 0.25,
  apex_mm: 2.5,
  firstToe: 'A' as const,
  tipToWork_mm: 12,
  workAngle_deg: 45,
  travelAngle_deg: 8,
  shelf_s: 1.2,
};

/** The tee is a workshop's middle; the lap is 6 mm plate with 0.8 mm solid wire, gun square, as a yard welds it (common practice). */
export const START: Record<Piece, TendencyCase> = {
  tee: { joint: { length_mm: LENGTH_MM }, process, weave: vee, between: BETWEEN },
  lap: {
    joint: { kind: 'lap', length_mm: LENGTH_MM },
    process: { wire_mm: 0.8, volts_V: 19, feed_mpmin: 7.1 },
    weave: {
      ...vee,
      width_mm: 6,
      pauseA_s: 0.2,
      pauseB_s: 0.2,
      travel_mmps: 2.1,
      cyclesPerSecond: 1,
      travelAngle_deg: 0,
    },
    between: BETWEEN,
  },
};

export interface Knob {
  name: string;
  unit: string;
  /** Settings in rising order, the start's own among them. */
  at(start: TendencyCase): number[];
  turned(start: TendencyCase, value: number): TendencyCase;
}

type Weave = NonNullable<TendencyCase['weave']>;
type Process = NonNullable<TendencyCase['process']>;
type Joint = NonNullable<TendencyCase['joint']>;

const withWeave = (c: TendencyCase, weave: Partial<Weave>): TendencyCase => ({ ...c, weave: { ...c.weave, ...weave } });
const withProcess = (c: TendencyCase, process: Partial<Process>): TendencyCase => ({
  ...c,
  process: { ...c.process, ...process },
});
const withJoint = (c: TendencyCase, joint: Partial<Joint>): TendencyCase => ({ ...c, joint: { ...c.joint, ...joint } });
const round = (x: number): number => Math.round(x * 100) / 100;
const around = (middle: number, ...by: number[]): number[] =>
  [middle, ...by.map((d) => round(middle + d))].sort((a, b) => a - b);

export const KNOBS: readonly Knob[] = [
  {
    name: 'volts',
    unit: 'V',
    at: (c) => around(c.process!.volts_V!, -2, 2),
    turned: (c, volts_V) => withProcess(c, { volts_V }),
  },
  {
    name: 'feed',
    unit: 'm/min',
    at: (c) => around(c.process!.feed_mpmin!, -1, 1),
    turned: (c, feed_mpmin) => withProcess(c, { feed_mpmin }),
  },
  {
    name: 'travel',
    unit: 'mm/s',
    at: (c) => around(c.weave!.travel_mmps!, -0.3 * c.weave!.travel_mmps!, 0.3 * c.weave!.travel_mmps!),
    turned: (c, travel_mmps) => withWeave(c, { travel_mmps }),
  },
  {
    name: 'tip-to-work',
    unit: 'mm',
    at: (c) => around(c.weave!.tipToWork_mm!, 4, 8),
    turned: (c, tipToWork_mm) => withWeave(c, { tipToWork_mm }),
  },
  {
    name: 'lead',
    unit: 'mm',
    at: () => [-3, -2, -1, 0],
    turned: (c, lead_mm) => ({ ...c, faults: { ...c.faults, lead_mm } }),
  },
  {
    name: 'push',
    unit: 'degree',
    at: (c) => around(c.weave!.travelAngle_deg!, -15, 15),
    turned: (c, travelAngle_deg) => withWeave(c, { travelAngle_deg }),
  },
  {
    name: 'work angle',
    unit: 'degree',
    at: (c) => around(c.weave!.workAngle_deg!, -10, 10),
    turned: (c, workAngle_deg) => withWeave(c, { workAngle_deg }),
  },
  {
    name: 'pause',
    unit: 's',
    at: () => [0, 0.2, 0.4],
    turned: (c, pause) => withWeave(c, { pauseA_s: pause, pauseB_s: pause }),
  },
  {
    name: 'width',
    unit: 'mm',
    at: (c) => around(c.weave!.width_mm!, -2, 2),
    turned: (c, width_mm) => withWeave(c, { width_mm }),
  },
  {
    name: 'beat',
    unit: '1/s',
    at: () => [0.6, 1, 1.5],
    turned: (c, cyclesPerSecond) => withWeave(c, { cyclesPerSecond }),
  },
  { name: 'gap', unit: 'mm', at: () => [0, 1, 2], turned: (c, gap_mm) => withJoint(c, { gap_mm }) },
  {
    name: 'plate',
    unit: 'mm',
    at: () => [4, 6, 8, 10],
    turned: (c, plate) => withJoint(c, { plateA_mm: plate, plateB_mm: plate }),
  },
  {
    name: 'start temperature',
    unit: '°C',
    at: () => [20, 150, 250],
    turned: (c, startTemp_C) => withJoint(c, { startTemp_C }),
  },
  {
    name: 'wire',
    unit: 'mm',
    at: () => [0.8, 0.9, 1, 1.2],
    turned: (c, wire) => withProcess(c, { wire_mm: wire as NonNullable<Process['wire_mm']> }),
  },
];

export const fileOf = (knob: Knob): string => `${knob.name.replaceAll(' ', '-')}.svg`;
