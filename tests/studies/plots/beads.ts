/**
 * Plots of whole beads: the balance from cold to hot, and the tendencies of the trade as pairs of cuts. Every cut is welded by the robot
 * hand when the plot is drawn; numbers are means over the settled length.
 */
import * as Plot from '@observablehq/plot';
import { readSection, sectionSvg } from '../../../scoring/index.ts';
import { type Summary, summarise, type TendencyCase, weldCase } from '../../tendencies/summary.ts';
import { CALIBRATED, PREDICTED } from '../../tendencies/table.ts';
import { COLOURS, dots, line, type Panel, type Point, sheet, words } from './sheet.ts';

const CELL_MM = 0.75;

/** Volts and feed raised together, travel and hand the same. */
const LADDER = [
  [15, 3.5],
  [16, 4],
  [17, 4.3],
  [18, 4.6],
  [19, 5.2],
  [19.5, 5.5],
  [20.5, 6],
] as const;

const rung = ([volts_V, feed_mpmin]: readonly [number, number]): TendencyCase => ({
  joint: { plateA_mm: 5, plateB_mm: 5, length_mm: 50 },
  process: { volts_V, feed_mpmin },
  weave: { travel_mmps: 2, cyclesPerSecond: 0.9 },
  between: [22, 40],
});

/** A bare cut half way up the settled length, as nested SVG with ids of its own. */
function cutOf(c: TendencyCase, id: string): string {
  const sim = weldCase(c, CELL_MM);
  const [from, to] = c.between ?? [20, sim.options.joint.length_mm - 12];
  const section = sim.section((from + to) / 2);
  return sectionSvg(section, readSection(section)?.station ?? null, { scale: 14, id, bare: true });
}

export function balance(): string {
  const welds = LADDER.map((r) => ({
    name: `${r[0]} V, ${r[1]} m/min`,
    case: rung(r),
    s: summarise(rung(r), CELL_MM),
  }));
  const power = ({ s }: (typeof welds)[number], k: number): number => (LADDER[k]![0] * s.current) / 1000;
  const over = (of: (s: Summary) => number): Point[] => welds.map((w, k) => ({ x: power(w, k), y: of(w.s) }));
  const first = power(welds[0]!, 0);
  const root: Panel = {
    title: 'Root fusion past the corner: below 0 the root is short',
    options: {
      marks: [
        Plot.ruleY([0], { stroke: '#888' }),
        line(over((s) => s.root)),
        dots(
          over((s) => s.rootA),
          COLOURS[0],
        ),
        dots(
          over((s) => s.rootB),
          COLOURS[1],
        ),
        words('lying plate', power(welds[4]!, 4), welds[4]!.s.rootA - 0.14, COLOURS[0]),
        words('standing plate', power(welds[3]!, 3), welds[3]!.s.rootB + 0.16, COLOURS[1]),
      ],
      x: { label: 'arc power U I, kW' },
      y: { label: 'mm' },
    },
  };
  const crown: Panel = {
    title: 'Convexity and its limits, ISO 5817 C and D1.1 (SI)',
    options: {
      marks: [
        line(over((s) => s.convexity)),
        dots(
          over((s) => s.convexity),
          COLOURS[0],
        ),
        Plot.line(
          over((s) => Math.min(4, 1 + 0.15 * s.faceWidth)),
          { x: 'x', y: 'y', stroke: COLOURS[1], strokeDasharray: '5 3' },
        ),
        words('ISO 5817 C: 1 + 0.15 b', first + 0.3, 2.55, COLOURS[1]),
        Plot.line(
          over((s) => (s.faceWidth <= 8 ? 2 : 3)),
          { x: 'x', y: 'y', stroke: COLOURS[3], strokeDasharray: '2 3', curve: 'step' },
        ),
        words('D1.1: 2 mm up to 8 mm of face, then 3', first + 0.3, 3.15, COLOURS[3]),
      ],
      x: { label: 'arc power U I, kW' },
      y: { label: 'mm', domain: [0, 3.4] },
    },
  };
  const tiles = pairsOf(welds).map((pair) => ({
    title: '',
    drawings: pair.map((w) => ({
      svg: cutOf(w.case, `at${w.s.current.toFixed(0)}`),
      notes: [w.name, `root ${w.s.root.toFixed(2)}, convexity ${w.s.convexity.toFixed(2)} mm`],
    })),
  }));
  return sheet('From cold to hot at one travel and one hand: 5 mm tee, 0.9 mm wire, 2 mm/s', [root, crown], 2, tiles);
}

function pairsOf<T>(list: T[]): T[][] {
  return Array.from({ length: Math.ceil(list.length / 2) }, (_, k) => list.slice(2 * k, 2 * k + 2));
}

/** Those whose difference shows in a cut. */
const SHOWN = [
  'a straight run is more convex than a weave',
  'crossing on the front of the puddle ties the root in deeper',
  'more volts and feed at equal travel: deeper at the root',
  'at equal metal the colder bead overlaps more',
  'a farther tip leaves the root colder',
  'slow travel crowns',
  'volts alone: flatter',
  'no pause at the toes: crowned',
  'riding back in the puddle crowns',
  'a faster straight run is narrower',
  'pause left out at one toe: that leg shorter',
  'a wider weave: flatter',
  'warm plates: deeper walls',
  'thicker plate: walls melted less',
  'a lap melts its edge back, a tee has none',
  'vertical-down leaves the root shallower than vertical-up',
];

const WORDS: Partial<Record<keyof Summary, string>> = {
  depthA: 'depth in the lying plate',
  depthB: 'depth in the standing plate',
  legB: 'leg on the standing plate',
  undercut: 'deepest undercut',
  edgeBack: 'edge melted back',
};

export function tendencies(): string {
  const tiles = SHOWN.map((name, k) => {
    const t = [...PREDICTED, ...CALIBRATED].find((entry) => entry.name === name);
    if (!t) throw new Error(`plots of tendencies: found no tendency "${name}" in the table`);
    const drawing = (c: TendencyCase, id: string) => ({
      svg: cutOf(c, id),
      notes: [`${WORDS[t.quantity] ?? t.quantity} ${summarise(c, CELL_MM)[t.quantity].toFixed(2)} mm`],
    });
    return { title: t.name, drawings: [drawing(t.more, `more${k}`), drawing(t.less, `less${k}`)] };
  });
  return sheet('Tendencies of the trade: left the weld with more of the quantity under it', [], 2, tiles);
}
