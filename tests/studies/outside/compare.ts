/** What the model gives where a set read elsewhere (tests/reference/outside) says something it can be asked. Nothing was set by these numbers. */
import {
  createSimulation,
  defaultOptions,
  defaultWeave,
  type GasName,
  metalLaid_mm2,
  OPTION_RANGES,
  POSE_RATE_HZ,
  type ProcessOptions,
  steadyVolts,
  weaveHand,
  wireState,
} from '../../../engine/index.ts';
import { ends, type OutsideSet, readSet } from '../../reference/outside/schema.ts';

export interface Point {
  /** What was set there, in words. */
  at: string;
  /** What the source gives, its ends, and what the model gives. */
  said: number;
  low: number;
  high: number;
  model: number;
}

export interface Comparison {
  quantity: string;
  unit: string;
  set: OutsideSet;
  points: Point[];
}

const middle = (cell: string): number => {
  const { low, high } = ends(cell);
  return (low + high) / 2;
};
const WIRES = (OPTION_RANGES.process!.wire_mm as { oneOf: readonly number[] }).oneOf;
const FEED = OPTION_RANGES.process!.feed_mpmin as { low: number; high: number };
const USUAL_TIP_MM = 12;

/** Settings that draw so many amperes; null where no wire of the row or no feed does. */
function settingsFor(set: OutsideSet, row: Record<string, string>): { process: ProcessOptions; amps: number } | null {
  const range = ends(row.wire!);
  const within = WIRES.filter((wire) => wire >= range.low && wire <= range.high);
  const wire_mm = within[within.length >> 1] as ProcessOptions['wire_mm'] | undefined;
  const gas = set.process.gas_nearest as GasName;
  if (wire_mm === undefined) return null;
  const amps = middle(row.amps!);
  const tip = row.tip ? middle(row.tip) : USUAL_TIP_MM;
  const at = (feed_mpmin: number): ProcessOptions => ({
    ...defaultOptions().process,
    wire_mm,
    gas,
    feed_mpmin,
    volts_V: middle(row.volts!),
  });
  let { low, high } = FEED;
  if (wireState(at(low), tip).current_A > amps || wireState(at(high), tip).current_A < amps) return null;
  for (let n = 0; n < 40; n++) {
    const half = (low + high) / 2;
    if (wireState(at(half), tip).current_A < amps) low = half;
    else high = half;
  }
  return { process: at(low), amps };
}

/** Volts in the middle of the steady range against volts recommended for those amperes. */
function volts(name: string): Comparison {
  const set = readSet(name);
  const points = set.rows.flatMap((row): Point[] => {
    const found = settingsFor(set, row);
    if (!found) return [];
    const at = `${row.plate} mm, ${row.wire} mm wire, ${row.amps} A`;
    return [
      { at, said: middle(row.volts!), ...ends(row.volts!), model: steadyVolts(found.process, found.amps).middle },
    ];
  });
  return { quantity: 'volts', unit: 'V', set, points };
}

/** Leg of a flat fillet that the metal laid would fill, against the leg named for those amperes and that travel. */
function legs(name: string): Comparison {
  const set = readSet(name);
  const points = set.rows.flatMap((row): Point[] => {
    const found = settingsFor(set, row);
    if (!found) return [];
    const laid = metalLaid_mm2(found.process, (middle(row.travel!) * 10) / 60);
    const at = `${row.plate} mm, ${row.wire} mm wire, ${row.amps} A, ${row.travel} cm/min`;
    return [{ at, said: middle(row.leg!), ...ends(row.leg!), model: Math.sqrt(2 * laid) }];
  });
  return { quantity: 'leg by metal laid', unit: 'mm', set, points };
}

const COOLING_S = 60;

/** Beads laid on a flat plate one upon another, cooling in between: what each adds to the crown in the settled half of the run, mm. */
function layerHeights(feed_mpmin: number, travel_mmps: number, startTemp_C: number, layers: number): number[] {
  const { joint, process } = defaultOptions();
  const length_mm = 70;
  const settings = { ...process, feed_mpmin };
  const volts_V = steadyVolts(settings, wireState(settings, USUAL_TIP_MM).current_A).middle;
  const sim = createSimulation({
    joint: { ...joint, kind: 'plate', plateA_mm: 10, length_mm, startTemp_C },
    process: { ...settings, volts_V },
    cell_mm: 0.75,
  });
  const weave = {
    ...defaultWeave(),
    pattern: 'straight' as const,
    start_mm: 5,
    length_mm: length_mm - 10,
    travel_mmps,
    shelf_s: 0,
  };
  const crown = (): number => {
    let sum = 0;
    let count = 0;
    for (let y = length_mm / 2; y < length_mm - 15; y++, count++) sum += Math.max(...sim.section(y).w_mm);
    return sum / count;
  };
  const crowns = [0];
  for (let layer = 0; layer < layers; layer++) {
    for (const pose of weaveHand(weave)) sim.step({ ...pose, u_mm: 0, tipToWork_mm: USUAL_TIP_MM });
    crowns.push(crown());
    const aside = { ...[...weaveHand(weave)].at(-1)!, u_mm: 0, tipToWork_mm: USUAL_TIP_MM, trigger: false };
    if (layer + 1 < layers) for (let n = 0; n < COOLING_S * POSE_RATE_HZ; n++) sim.step(aside);
  }
  return crowns.slice(1).map((height, layer) => height - crowns[layer]!);
}

const FEEDS_IPM = ['100', '140', '180', '220'];
const TRAVELS_MMPS = [5, 10];
const MPMIN_PER_IPM = 0.0254;

/** Height against travel at four of the sixteen feeds, and its exponent between two speeds. */
function heightsOf(said: string, height: (feed_mpmin: number, travel_mmps: number) => number): [Point[], Point[]] {
  const set = readSet('deposition-er70s6');
  const exponents = set.rows.map((row) => Number(row.a));
  const exponent: Point[] = [];
  const crown: Point[] = [];
  for (const row of set.rows.filter((each) => FEEDS_IPM.includes(each.feed!))) {
    const [slow, fast] = TRAVELS_MMPS.map((travel) => {
      const model = height(Number(row.feed) * MPMIN_PER_IPM, travel);
      const fit = Math.exp(Number(row.a) * Math.log(travel) + Number(row.b));
      crown.push({ at: `${row.feed} in/min, ${travel} mm/s, ${said}`, said: fit, low: fit, high: fit, model });
      return model;
    });
    exponent.push({
      at: `${row.feed} in/min, ${said}`,
      said: Number(row.a),
      low: Math.min(...exponents),
      high: Math.max(...exponents),
      model: Math.log(fast! / slow!) / Math.log(TRAVELS_MMPS[1]! / TRAVELS_MMPS[0]!),
    });
  }
  return [exponent, crown];
}

/** One bead on a cold plate and on one as warm as a wall; and, as in the source, a layer on its like. */
function height(): Comparison[] {
  const set = readSet('deposition-er70s6');
  const [cold, warm] = [20, 250].map((start_C) =>
    heightsOf(`plate at ${start_C} °C`, (feed, travel) => layerHeights(feed, travel, start_C, 1)[0]!),
  );
  const [exponent, second] = heightsOf('on its like', (feed, travel) => layerHeights(feed, travel, 20, 2)[1]!);
  return [
    { quantity: 'exponent of height over travel', unit: '', set, points: [...cold![0], ...warm![0]] },
    { quantity: 'height of a bead', unit: 'mm', set, points: [...cold![1], ...warm![1]] },
    { quantity: 'exponent of a second layer', unit: '', set, points: exponent },
    { quantity: 'height of a second layer', unit: 'mm', set, points: second },
  ];
}

export function compareAll(): Comparison[] {
  return [
    ...['panasonic-mag-horizontal-fillet', 'otc-co2-horizontal-fillet', 'otc-co2-flat-fillet'].map(legs),
    ...[
      'panasonic-mag-horizontal-fillet',
      'otc-co2-horizontal-fillet',
      'otc-co2-flat-fillet',
      'panasonic-mag-butt',
    ].map(volts),
    ...height(),
  ];
}
