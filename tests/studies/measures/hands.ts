import type { Trace } from '../../../scoring/index.ts';
import { Chart } from './board.ts';
import type { Welds } from './welds.ts';

const said = (x: number, decimals = 1): string => x.toFixed(decimals);
/** Stretch of the weave that is drawn: two cycles from a pause at the right toe. */
const CYCLES = 2;

/** Pictures of hand measures, from the trace of a real weld. */
export function handPictures(welds: Welds): [string, string][] {
  return [
    ['crossing.svg', crossing(welds)],
    ['beat.svg', beat(welds)],
    ['step-up.svg', stepUp(welds)],
    ['filled.svg', filled(welds)],
    ['travel.svg', travelled(welds)],
  ];
}

interface Window {
  from: number;
  to: number;
  first: Welds['weave']['result']['motion']['toes'][number];
}

/** Samples of two cycles in the middle of the run. */
function middle({ weave }: Welds): Window {
  const { toes, period_s } = weave.result.motion;
  const rights = toes.filter((v) => v.toe === 'A');
  const first = rights[rights.length >> 1]!;
  const from = Math.round(100 * (first.from_s - 0.15));
  return { from, to: from + Math.round(100 * (CYCLES * period_s! + 0.1)), first };
}

function pathOf(trace: Trace, w: Window, x: 't_s' | 'aimU_mm', y: 'aimU_mm' | 'aimY_mm'): [number, number][] {
  const out: [number, number][] = [];
  const t0 = trace.column('t_s')[w.from]!;
  for (let i = w.from; i < w.to; i++) out.push([trace.column(x)[i]! - (x === 't_s' ? t0 : 0), trace.column(y)[i]!]);
  return out;
}

function crossing(welds: Welds): string {
  const w = middle(welds);
  const { trace } = welds.weave.attempt;
  const t0 = trace.column('t_s')[w.from]!;
  const foot: [number, number][] = [];
  const front: [number, number][] = [];
  for (let i = w.from; i < w.to; i++) {
    const s = trace.column('t_s')[i]! - t0;
    foot.push([s, trace.column('footY_mm')[i]!]);
    const f = trace.column('frontY_mm')[i]!;
    if (!Number.isNaN(f)) front.push([s, f]);
  }
  const low = Math.floor(Math.min(...foot.map((p) => p[1])) - 1);
  const chart = new Chart(
    { from: 0, to: 2.4, step: 0.4, name: 'time, s' },
    { from: low, to: low + 9, step: 1, name: 'height on the joint, mm' },
    'arc on the front of the puddle',
  )
    .line(foot, 2)
    .line(front, 1.4, '6 4');
  const crossings = welds.weave.result.motion.crossings.filter((c) => c.t_s > t0 && c.t_s < t0 + 2.2);
  for (const [n, c] of crossings.entries()) {
    const s = c.t_s - t0;
    chart
      .line(
        [
          [s, low],
          [s, low + 9],
        ],
        0.6,
        '1 3',
      )
      .mark(s, c.y_mm);
    if (n === 1) chart.text(s + 0.05, low + 0.6, `lead ${said(c.lead_mm!, 2)} at this root crossing`);
  }
  return chart.text(0.1, low + 8, 'dashed: upper edge of the liquid; full: arc foot').svg();
}

function beat(welds: Welds): string {
  const w = middle(welds);
  const { motion } = welds.weave.result;
  const { trace } = welds.weave.attempt;
  const t0 = trace.column('t_s')[w.from]!;
  const A = motion.reachA_mm!;
  const B = -motion.reachB_mm!;
  const visits = motion.toes.filter((v) => v.from_s > t0 - 0.2 && v.from_s < t0 + CYCLES * motion.period_s!);
  const right = visits.filter((v) => v.toe === 'A');
  const left = visits.find((v) => v.toe === 'B')!;
  const at = (t: number): number => t - t0;
  const half = (v: (typeof visits)[number]): number => at((v.from_s + v.to_s) / 2);
  return new Chart(
    { from: 0, to: 2.4, step: 0.4, name: 'time, s' },
    { from: -5, to: 5, step: 1, name: 'aim across the joint, right toe up, mm' },
    'reach, pause, period and width',
  )
    .line(
      [
        [0, 0],
        [2.4, 0],
      ],
      0.8,
      '2 3',
    )
    .line(pathOf(trace, w, 't_s', 'aimU_mm'), 2)
    .span([half(right[0]!) - right[0]!.pause_s / 2, A + 0.7], [half(right[0]!) + right[0]!.pause_s / 2, A + 0.7], '')
    .text(half(right[0]!) + 0.2, A + 0.6, `pause ${said(right[0]!.pause_s, 2)} s`)
    .span([half(left) - left.pause_s / 2, B - 0.7], [half(left) + left.pause_s / 2, B - 0.7], '')
    .text(half(left) + 0.2, B - 1, `pause ${said(left.pause_s, 2)} s`)
    .span([half(right[0]!), 3.9], [half(right[1]!), 3.9], `period ${said(motion.period_s!, 2)} s`, 14)
    .span([half(right[1]!), 0], [half(right[1]!), A], `reach ${said(A)}`, -8)
    .span([2.34, B], [2.34, A], `width ${said(motion.width_mm!)}`, 8)
    .svg();
}

function stepUp(welds: Welds): string {
  const w = middle(welds);
  const { motion } = welds.weave.result;
  const { trace } = welds.weave.attempt;
  const path = pathOf(trace, w, 'aimU_mm', 'aimY_mm');
  const rights = motion.toes.filter((v) => v.toe === 'A' && v.y_mm >= path[0]![1] - 0.5);
  const [one, two] = [rights[0]!, rights[1]!];
  const low = Math.floor(path[0]![1] - 2);
  return new Chart(
    { from: -6, to: 8, step: 2, name: 'across the joint, mm' },
    { from: low, to: low + 8, step: 1, name: 'height on the joint, mm' },
    'step up',
    420,
    420,
  )
    .line(path, 2)
    .span([3.6, one.y_mm], [3.6, two.y_mm], `step up ${said(two.y_mm - one.y_mm)}`, -8)
    .svg();
}

function filled(welds: Welds): string {
  const w = middle(welds);
  const { trace } = welds.weave.attempt;
  const t0 = trace.column('t_s')[w.from]!;
  const wet: [number, number][] = [];
  const wire: [number, number][] = [];
  for (let i = w.from; i < w.to; i++) {
    const s = trace.column('t_s')[i]! - t0;
    const x = trace.column('wetA_mm')[i]!;
    if (!Number.isNaN(x)) wet.push([s, x]);
    wire.push([s, Math.SQRT2 * Math.max(0, trace.column('aimU_mm')[i]!)]);
  }
  const leave = w.first.to_s - t0;
  const beyond = wet.find(([s]) => s >= leave)![1];
  return new Chart(
    { from: 0, to: 2.4, step: 0.4, name: 'time, s' },
    { from: 0, to: 8, step: 1, name: 'out along the right plate, mm' },
    'toe filled when left',
  )
    .line(wet, 2)
    .line(wire, 1.4, '6 4')
    .line(
      [
        [leave, 0],
        [leave, 7.5],
      ],
      0.8,
      '2 3',
    )
    .span(
      [leave, Math.SQRT2 * w.first.reach_mm],
      [leave, beyond],
      `wetted ${said(beyond - Math.SQRT2 * w.first.reach_mm)} beyond the wire`,
      -8,
    )
    .text(1.2, 7.5, 'full: wetted edge; dashed: wire')
    .text(leave + 0.06, 0.4, 'wire leaves the toe')
    .svg();
}

function travelled(welds: Welds): string {
  const { trace } = welds.weave.attempt;
  const { motion } = welds.weave.result;
  const t = trace.column('t_s');
  const y = trace.column('aimY_mm');
  const line: [number, number][] = [];
  for (let i = 0; i < trace.length; i += 2) if (trace.arcOn[i] === 1) line.push([t[i]!, y[i]!]);
  const mid = line[line.length >> 1]!;
  const slope = motion.travel_mmps!;
  return new Chart(
    { from: 0, to: 24, step: 4, name: 'arc time, s' },
    { from: 0, to: 50, step: 10, name: 'height on the joint, mm' },
    'travel',
  )
    .line(line, 1.2)
    .line(
      [
        [mid[0] - 9, mid[1] - 9 * slope],
        [mid[0] + 9, mid[1] + 9 * slope],
      ],
      2,
      '7 4',
    )
    .text(23.5, 8, `travel ${said(slope, 2)} mm/s: slope over arc time`, 'end')
    .svg();
}
