import { readSection } from '../../../scoring/index.ts';
import { faceHeight_mm } from '../../../scoring/measures/section/face.ts';
import { Chart } from './board.ts';
import type { Welded, Welds } from './welds.ts';

const mm = (x: number): string => x.toFixed(1);

/** Face height along a run, a point each half millimetre. */
function face(w: Welded, from: number, to: number): [number, number][] {
  const out: [number, number][] = [];
  for (let y = from; y <= to + 1e-9; y += 0.5) out.push([y, faceHeight_mm(w.attempt.section(y))]);
  return out;
}

/** Pictures of both ends of a run and of a restart, along the joint of real welds. */
export function runPictures(welds: Welds): [string, string][] {
  return [
    ['start.svg', start(welds)],
    ['full-width.svg', fullWidth(welds)],
    ['shelf.svg', shelf(welds)],
    ['crater.svg', crater(welds)],
    ['restart.svg', restart(welds)],
    ['stops.svg', stops(welds)],
    ['consistency.svg', consistency(welds)],
  ];
}

const UP = 'height on the joint, mm';
const FACE = 'face from the root, mm';

function start({ weave }: Welds): string {
  const b = weave.result.bead.start!;
  return new Chart({ from: 0, to: 30, step: 5, name: UP }, { from: 0, to: 9, step: 1, name: FACE }, 'start lump')
    .shade(b.bottom_mm, b.bottom_mm + 10, 0.06)
    .line(face(weave, 0, 30), 2)
    .line(
      [
        [0, b.settledFace_mm],
        [30, b.settledFace_mm],
      ],
      1,
      '5 4',
    )
    .span(
      [b.lumpAt_mm + 0.8, b.settledFace_mm],
      [b.lumpAt_mm + 0.8, b.settledFace_mm + b.lump_mm],
      `lump ${mm(b.lump_mm)} ± ${mm(b.plusMinus_mm)}`,
    )
    .text(24, b.settledFace_mm + 0.4, 'settled face', 'middle')
    .text(5, 0.5, 'first 10 mm', 'middle')
    .svg();
}

function fullWidth({ climbedOff }: Welds): string {
  const { bead, motion } = climbedOff.result;
  const legs: [number, number][] = [];
  for (let y = 0; y <= 24; y++) {
    const s = readSection(climbedOff.attempt.section(y))?.station;
    legs.push([y, s === undefined ? 0 : s.legA_mm + s.legB_mm]);
  }
  const from = bead.start!.fullWidthFrom_mm!;
  const settled = legs.slice(-8).reduce((sum, [, x]) => sum + x, 0) / 8;
  return new Chart(
    { from: 0, to: 24, step: 4, name: UP },
    { from: 0, to: 16, step: 2, name: 'both legs together, mm' },
    'full width from',
  )
    .line(legs, 2)
    .line(
      [
        [0, 0.9 * settled],
        [24, 0.9 * settled],
      ],
      1,
      '5 4',
    )
    .text(23.5, 0.9 * settled - 1, 'nine tenths of the settled width', 'end')
    .line(
      [
        [from, 0],
        [from, 15],
      ],
      1,
    )
    .text(from + 0.4, 14, `full width from ${mm(from)}`)
    .line(
      [
        [motion.start!.y_mm, 0],
        [motion.start!.y_mm, 3],
      ],
      1,
    )
    .text(motion.start!.y_mm + 0.3, 1, `struck at ${mm(motion.start!.y_mm)}`)
    .svg();
}

/** Running width of the shelf over time, as a share of the settled bead's. */
function widthOver(w: Welded, seconds: number): [number, number][] {
  const { trace } = w.attempt;
  const { t_s, left_s, shelfShare } = w.result.motion.start!;
  const t = trace.column('t_s');
  const wetA = trace.column('wetA_mm');
  const wetB = trace.column('wetB_mm');
  const out: [number, number][] = [];
  let a = 0;
  let b = 0;
  let legs = 0;
  for (let i = 0; i < trace.length && t[i]! - t_s <= seconds; i++) {
    if (wetA[i]! > a) a = wetA[i]!;
    if (wetB[i]! > b) b = wetB[i]!;
    if (t[i]! - t_s < left_s - 0.005) legs = (a + b) / shelfShare!;
    out.push([t[i]! - t_s, a + b]);
  }
  return out.map(([s, x]) => [s, x / legs]);
}

function shelf({ climbedOff, shelf: built }: Welds): string {
  const chart = new Chart(
    { from: 0, to: 3, step: 0.5, name: 'time from the strike, s' },
    { from: 0, to: 1.2, step: 0.2, name: 'width of the shelf over the settled width' },
    'shelf',
  ).line(
    [
      [0, 0.9],
      [3, 0.9],
    ],
    1,
    '5 4',
  );
  for (const [w, text, dash] of [
    [climbedOff, 'climbed off', '6 4'],
    [built, 'shelf waited for', ''],
  ] as const) {
    const m = w.result.motion.start!;
    const low = dash === '' ? 0.2 : 0.09;
    chart
      .line(widthOver(w, 3), 1.8, dash)
      .mark(m.left_s, m.shelfShare!)
      .text(
        dash === '' ? 2.95 : m.left_s + 0.08,
        m.shelfShare! - low,
        `${text}: ${(100 * m.shelfShare!).toFixed(0)} % when left`,
        dash === '' ? 'end' : 'start',
      );
  }
  return chart.svg();
}

function crater({ weave, filled }: Welds): string {
  const open = weave.result.bead.stops[0]!;
  const settled = weave.result.bead.start!.settledFace_mm;
  const at = open.craterAt_mm!;
  const low = settled - open.craterDepth_mm!;
  const done = filled.result.bead.stops[0]!;
  return new Chart({ from: 30, to: 50, step: 2, name: UP }, { from: 0, to: 8, step: 1, name: FACE }, 'crater depth')
    .line(face(weave, 30, 50), 2)
    .line(face(filled, 30, 50), 1.6, '7 4')
    .line(
      [
        [30, settled],
        [50, settled],
      ],
      1,
      '2 3',
    )
    .line(
      [
        [at, 0],
        [at, 7.5],
      ],
      1,
      '5 4',
    )
    .span([at, settled], [at, low], `crater ${mm(open.craterDepth_mm!)} ± ${mm(open.plusMinus_mm)} `, 10)
    .text(at - 0.2, 0.4, 'one throat before the end', 'end')
    .text(30.4, settled + 0.3, 'settled face')
    .text(43.9, 6.4, `re-struck twice: ${mm(done.craterDepth_mm!)}`)
    .mark(weave.result.motion.stops[0]!.y_mm, 0)
    .text(weave.result.motion.stops[0]!.y_mm + 0.2, 1.2, 'arc out')
    .svg();
}

function restart({ restart: w }: Welds): string {
  const stop = w.result.motion.stops[0]!;
  const bead = w.result.bead.stops[0]!;
  const root: [number, number][] = [];
  for (let y = 18; y <= 44; y++) root.push([y, readSection(w.attempt.section(y))?.station.rootFusion_mm ?? -3]);
  const flaw = bead.flaw!;
  return new Chart(
    { from: 18, to: 44, step: 2, name: UP },
    { from: -2, to: 1, step: 0.5, name: 'past the corner at the root, mm' },
    'flaw at a restart',
  )
    .shade(stop.y_mm - 10, Math.min(44, stop.y_mm + 10), 0.06)
    .line(
      [
        [18, 0],
        [44, 0],
      ],
      1,
      '5 4',
    )
    .line(root, 2)
    .line(
      [
        [stop.y_mm, -2],
        [stop.y_mm, 0.9],
      ],
      1,
    )
    .text(stop.y_mm - 0.3, 0.8, `arc out at ${mm(stop.y_mm)}`, 'end')
    .line(
      [
        [stop.restart!.y_mm, -2],
        [stop.restart!.y_mm, 0.9],
      ],
      1,
      '4 3',
    )
    .text(stop.restart!.y_mm + 0.3, 0.8, `struck ${mm(stop.restart!.above_mm)} above it, on the cold crater`)
    .mark(flaw.rootFusionAt_mm, flaw.rootFusion_mm)
    .text(
      flaw.rootFusionAt_mm + 0.6,
      flaw.rootFusion_mm - 0.2,
      `root short over ${flaw.rootShort_mm.toFixed(0)} ± ${mm(flaw.plusMinus_mm)} mm`,
    )
    .text(19.6, -1.85, 'within 10 mm of the stop')
    .svg();
}

/** Arc on and off over the last seconds: a stop with its crater filled, and taps. */
function stops({ filled, tapped }: Welds): string {
  const last = filled.result.motion.stops[0]!;
  const from = last.t_s - 2;
  const chart = new Chart(
    { from: 0, to: 7, step: 1, name: 'time, s' },
    { from: 0, to: 5, step: 5, name: '' },
    'stops, re-strikes and taps',
  );
  const strip = (w: Welded, start: number, y: number): void => {
    const { trace } = w.attempt;
    const t = trace.column('t_s');
    const line: [number, number][] = [];
    for (let i = 0; i < trace.length; i++) {
      const s = t[i]! - start;
      if (s >= 0 && s <= 7) line.push([s, y + (trace.arcOn[i] === 1 ? 0.9 : 0)]);
    }
    chart.line(line, 1.6);
  };
  strip(filled, from, 3);
  strip(tapped, 4, 0.6);
  return chart
    .text(
      0.1,
      4.3,
      `run: arc out at ${mm(last.t_s)} s, then ${last.reStrikes} short re-strikes within 6 mm: crater filled`,
    )
    .text(0.1, 1.9, 'short arcs up the joint: tapped, neither run nor crater fill')
    .svg();
}

/** Size along the judged length of an even and of an uneven hand. */
function consistency({ whole, uneven }: Welds): string {
  const chart = new Chart(
    { from: 20, to: 50, step: 5, name: UP },
    { from: 4, to: 8, step: 1, name: 'size, mm' },
    'consistency along the length',
  );
  for (const [w, dash, y, text] of [
    [whole, '', 7.6, 'full, even hand'],
    [uneven, '6 4', 7.2, 'dashed, uneven hand'],
  ] as const) {
    const { stations, consistency: c } = w.result.bead;
    chart
      .line(
        stations.filter((s) => s.y_mm <= 50).map((s): [number, number] => [s.y_mm, s.size_mm]),
        1.8,
        dash,
      )
      .text(21, y, `${text}: standard deviation ${c!.size_mm.toFixed(2)} over its judged length`);
  }
  return chart.svg();
}
