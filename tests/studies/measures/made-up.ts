import { createRandom } from '../../../engine/index.ts';
import { spanBetween } from '../../../scoring/attempt/trace.ts';
import { readHand } from '../../../scoring/measures/hand/motion.ts';
import { readStops } from '../../../scoring/measures/hand/stops.ts';
import { makeTrace, trapezoid } from '../../scoring/measures/traces.ts';
import { Chart } from './board.ts';

const said = (x: number, decimals = 1): string => x.toFixed(decimals);

/** Pictures that need no weld. */
export function madeUpHands(): [string, string][] {
  return [
    ['spectrum.svg', spectrum()],
    ['tip-and-angles.svg', angles()],
  ];
}

/** Spectrum of an even and of an uneven weave of the same mean beat; made-up hands, read by the same measure. */
function spectrum(): string {
  const random = createRandom(5);
  const starts = [0];
  for (let k = 0; k < 40; k++) starts.push(starts[k]! + 1.1 * (1 + 0.3 * random.normal()));
  const even = trapezoid(1.1, 5, 0.25, 0.25);
  const uneven = (t: number): number => {
    const k = Math.max(0, starts.findIndex((s) => s > t) - 1);
    return trapezoid(1, 5, 0.2, 0.2)((t - starts[k]!) / (starts[k + 1]! - starts[k]!));
  };
  const chart = new Chart(
    { from: 0, to: 2.4, step: 0.4, name: 'cycles a second' },
    { from: 0, to: 1, step: 0.2, name: 'share of the sideways movement' },
    'spectral concentration',
  ).shade(0.85 / 1.1, 1.15 / 1.1, 0.12);
  for (const [u, dark] of [
    [uneven, false],
    [even, true],
  ] as const) {
    const bins = energies(u, 22);
    for (const [f, share] of bins) chart.bar(f + (dark ? -0.008 : 0.008), 0.016, share, dark);
  }
  const share = (u: (t: number) => number): number => {
    const trace = makeTrace({ seconds: 22, u, y: (t) => 10 + 2 * t });
    const hand = readHand(trace, spanBetween(trace, 0, 100), {
      breaks: readStops(trace).breaks,
      device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 },
      lead: { from: -1, to: 1 },
      upperOnly: false,
    });
    return hand.motion.beatShare!;
  };
  return chart
    .text(1.15, 0.85, `dark, even beat: ${said(share(even), 2)} in the band`)
    .text(1.15, 0.73, `light, uneven beat: ${said(share(uneven), 2)}`)
    .text(1.15, 0.61, 'band: 15 % either side of the beat')
    .svg();
}

function energies(u: (t: number) => number, seconds: number): [number, number][] {
  const n = seconds * 100;
  const values = Array.from({ length: n }, (_, i) => u(i / 100));
  const mean = values.reduce((a, b) => a + b, 0) / n;
  const total = values.reduce((a, b) => a + (b - mean) ** 2, 0);
  const out: [number, number][] = [];
  for (let k = 1; k / seconds <= 2.4; k++) {
    let re = 0;
    let im = 0;
    for (let i = 0; i < n; i++) {
      re += (values[i]! - mean) * Math.cos((2 * Math.PI * k * i) / n);
      im += (values[i]! - mean) * Math.sin((2 * Math.PI * k * i) / n);
    }
    out.push([k / seconds, (2 * (re * re + im * im)) / n / total]);
  }
  return out;
}

/** Plain geometry: the wire at 45° from the back plate seen along the joint, and pushed 8° seen from the side. */
function angles(): string {
  const chart = new Chart(
    { from: -2, to: 30, step: 4, name: 'mm' },
    { from: -4, to: 18, step: 4, name: 'mm' },
    'tip-to-work, work angle and travel angle',
    720,
    440,
  );
  const work = Math.PI / 4;
  const tip: [number, number] = [12 * Math.cos(work), 12 * Math.sin(work)];
  const push = (8 * Math.PI) / 180;
  const foot: [number, number] = [20, 6];
  const from: [number, number] = [foot[0] + 8 * Math.cos(push), foot[1] - 8 * Math.sin(push)];
  const arc = (cx: number, cy: number, r: number, a: number, b: number): [number, number][] =>
    Array.from({ length: 13 }, (_, i) => {
      const f = a + ((b - a) * i) / 12;
      return [cx + r * Math.cos(f), cy + r * Math.sin(f)];
    });
  return chart
    .line(
      [
        [0, 16],
        [0, 0],
        [14, 0],
      ],
      2,
    )
    .line([[0, 0], tip], 3)
    .line(arc(0, 0, 5, 0, work), 1.2)
    .text(5.3, 1.6, 'work angle 45°')
    .text(8, -1.2, 'back plate of a lap, right plate of a tee', 'middle')
    .span([tip[0] + 0.7, tip[1] - 0.7], [0.7, -0.7], '')
    .text(9.3, 6.4, 'tip-to-work')
    .text(0.6, 15, 'seen along the joint')
    .line(
      [
        [foot[0], -3],
        [foot[0], 16],
      ],
      2,
    )
    .line([foot, from], 3)
    .line([foot, [foot[0] + 8, foot[1]]], 1, '5 4')
    .line(arc(foot[0], foot[1], 6.4, -push, 0), 1.2)
    .text(foot[0] + 0.5, foot[1] - 2.4, 'travel angle 8°, push')
    .text(foot[0] + 0.4, 15, 'seen from the side')
    .svg();
}
