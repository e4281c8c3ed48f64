import { PART, type Section } from '../../engine/index.ts';
import { type Place, zoneOutlines } from '../draw/zones.ts';
import { milli } from '../measures/precision.ts';
import { depthOf, inward, spread } from '../measures/section/isotherm.ts';
import { alongA, alongB, outlineOf } from '../measures/section/outline.ts';
import { readSection } from '../measures/section/station.ts';
import type { Station } from '../schema/station.ts';
import { byHand } from './by-hand.ts';
import { depthAt } from './fusion-marks.ts';
import type { PlacedMarks } from './marks.ts';
import { type MarkedReadings, readMarks } from './read-marks.ts';

/** What a trainee marked on a cut of the bench, in the cut's own frame (mm from the true root). Undercut is not asked for here. */
export type OwnMarks = Pick<PlacedMarks, 'toeA' | 'toeB' | 'face' | 'fusionA' | 'fusionB'> & { root: Place };

/** One measure, the trainee's reading beside the bench's. */
export interface OwnRow {
  /** A hollow is a row only where there is one to speak of. */
  measure: 'leg' | 'throat' | 'convexity' | 'hollow' | 'fused depth' | 'root';
  side: 'A' | 'B' | null;
  /** mm; null: the marks do not reach that far. */
  yours_mm: number | null;
  bench_mm: number;
  /** Readings by hand this close agree, mm (byHand). */
  tolerance_mm: number;
  agrees: boolean;
}

/** Which line fusion points lie on. */
export type LineMet = 'fusion line' | 'heat-affected zone' | 'neither' | 'nothing marked';

/** How the marks of one plate lie on the lines of the cut. */
export interface OwnSide {
  side: 'A' | 'B';
  met: LineMet;
  /** Points marked, and how many of them lie on the line named. */
  points: number;
  there: number;
  /** How far the fusion line lies from the marks: positive, nearer the weld; negative, deeper in the plate. Mean over the points that missed, mm. */
  nearer_mm: number;
}

/** How far a mark lies from where it belongs, mm; null where there is no such place. */
export interface OwnMark {
  mark: 'root' | 'toeA' | 'toeB';
  off_mm: number;
  /** Out along the plate (toes): positive, the mark lies too far out. */
  out_mm: number;
  agrees: boolean;
}

/** A trainee's own reading of a cut, beside the bench's. */
export interface OwnReading {
  rows: OwnRow[];
  marks: OwnMark[];
  sides: OwnSide[];
  /** Everything marked agrees. */
  agrees: boolean;
  /** The lines as they are, for laying over the cut, mm. */
  fusionLines: Place[][];
  zoneEdges: Place[][];
}

/** A ring's way along the plate's own face is no line in the etch. mm inside the face that still counts as on it. */
const INSIDE_MM = 0.02;

/**
 * Compares a trainee's marks on a cut with what the bench reads there, within what a hand may be off; says of fusion points which of the
 * two lines of the etch they were set on: the fusion line or the edge of the heat-affected zone.
 * @throws InputError when the marks make no fillet
 * @returns null where the cut has no bead
 */
export function compareOwn(sec: Section, marks: OwnMarks): OwnReading | null {
  const read = readSection(sec);
  const outline = outlineOf(sec);
  if (read === null || outline === null) return null;
  const fromRoot = (p: Place): Place => ({ a: p.a - marks.root.a, b: p.b - marks.root.b });
  const yours = readMarks(
    {
      toeA: fromRoot(marks.toeA),
      toeB: fromRoot(marks.toeB),
      face: marks.face.map(fromRoot),
      fusionA: marks.fusionA.map(fromRoot),
      fusionB: marks.fusionB.map(fromRoot),
      undercutA: null,
      undercutB: null,
    },
    sec.joint,
  );
  const rows = rowsOf(yours, read.station);
  const toe = (mark: 'toeA' | 'toeB'): OwnMark => {
    const actual = mark === 'toeA' ? outline.toeA : outline.toeB;
    const at = { a: alongA(actual), b: alongB(actual) };
    const own = marks[mark];
    return markAt(mark, apart(own, at), mark === 'toeA' ? own.a - at.a : own.b - at.b);
  };
  const set = [markAt('root', apart(marks.root, { a: 0, b: 0 }), 0), toe('toeA'), toe('toeB')];
  const lines = { A: etchLines(sec, 'A'), B: etchLines(sec, 'B') };
  const sides = (['A', 'B'] as const).map((side) =>
    sideOf(sec, side, side === 'A' ? marks.fusionA : marks.fusionB, lines[side]),
  );
  return {
    rows,
    marks: set,
    sides,
    agrees:
      rows.every((row) => row.agrees) && set.every((m) => m.agrees) && sides.every((s) => s.met === 'fusion line'),
    fusionLines: [...lines.A.fusion, ...lines.B.fusion],
    zoneEdges: [...lines.A.zone, ...lines.B.zone],
  };
}

function rowsOf(yours: MarkedReadings, bench: Station): OwnRow[] {
  const row = (
    measure: OwnRow['measure'],
    side: OwnRow['side'],
    own: number | null,
    actual: number,
    tolerance_mm: number,
  ): OwnRow => ({
    measure,
    side,
    yours_mm: own,
    bench_mm: actual,
    tolerance_mm,
    agrees: own !== null && Math.abs(own - actual) <= tolerance_mm + 1e-9,
  });
  const deep = (x: number): number => Math.max(0, x);
  return [
    row('leg', 'B', yours.legB_mm, bench.legB_mm, byHand.leg),
    row('leg', 'A', yours.legA_mm, bench.legA_mm, byHand.leg),
    row('throat', null, yours.throat_mm, bench.throat_mm, byHand.throat),
    row('convexity', null, yours.convexity_mm, bench.convexity_mm, byHand.convexity),
    ...(Math.max(yours.concavity_mm, bench.concavity_mm) > byHand.convexity
      ? [row('hollow', null, yours.concavity_mm, bench.concavity_mm, byHand.convexity)]
      : []),
    row('fused depth', 'B', yours.fusionDepthB_mm, deep(bench.fusionDepthB_mm), byHand.fusion),
    row('fused depth', 'A', yours.fusionDepthA_mm, deep(bench.fusionDepthA_mm), byHand.fusion),
    row('root', null, yours.rootFusion_mm, bench.rootFusion_mm, byHand['root fusion']),
  ];
}

function markAt(mark: OwnMark['mark'], off: number, out: number): OwnMark {
  return { mark, off_mm: milli(off), out_mm: milli(out), agrees: off <= byHand.leg + 1e-9 };
}

interface EtchLines {
  fusion: Place[][];
  zone: Place[][];
}

/** The two lines the etch shows in one plate, without their way along the plate's own face. */
function etchLines(sec: Section, side: 'A' | 'B'): EtchLines {
  const part = side === 'A' ? PART.A : PART.B;
  const inside = insidePlate(sec.joint, side);
  const lines = (reached: number): Place[][] =>
    zoneOutlines(sec, part, reached).flatMap((ring) => runsInside(ring, inside));
  return { fusion: lines(sec.solidus_C), zone: lines(sec.ac1_C) };
}

/** Whether a place lies inside a plate as cut, clear of its faces and its back: a zone's ring also runs along those. */
function insidePlate({ kind, gap_mm, plateA_mm, plateB_mm }: Section['joint'], side: 'A' | 'B'): (p: Place) => boolean {
  const between = (x: number, from: number, to: number): boolean => x > from + INSIDE_MM && x < to - INSIDE_MM;
  const far = Number.POSITIVE_INFINITY;
  if (side === 'A')
    return kind === 'corner'
      ? (p) => p.b < -INSIDE_MM && between(p.a, 0, plateA_mm)
      : (p) => between(p.b, -plateA_mm, 0);
  if (kind === 'tee') return (p) => between(p.a, -plateB_mm, 0) && between(p.b, gap_mm, far);
  return (p) =>
    p.a < -INSIDE_MM && between(p.b, kind === 'lap' ? gap_mm : 0, (kind === 'lap' ? gap_mm : 0) + plateB_mm);
}

/** Stretches of a closed ring inside, each with its points in order. */
function runsInside(ring: readonly Place[], inside: (p: Place) => boolean): Place[][] {
  const start = ring.findIndex((p) => !inside(p));
  if (start < 0) return [[...ring, ring[0]!]];
  const runs: Place[][] = [];
  let run: Place[] = [];
  for (let k = 1; k <= ring.length; k++) {
    const p = ring[(start + k) % ring.length]!;
    if (inside(p)) run.push(p);
    else {
      if (run.length > 1) runs.push(run);
      run = [];
    }
  }
  return runs;
}

function sideOf(sec: Section, side: 'A' | 'B', points: readonly Place[], lines: EtchLines): OwnSide {
  const from = { A: 0, B: sec.joint.gap_mm }[side];
  let onLine = 0;
  let onZone = 0;
  let nearer = 0;
  for (const p of points) {
    const { along, deep } = depthAt(p, side, from);
    const line = inward(sec, side, from + along);
    const actual = line === null ? null : Math.max(0, depthOf(line, spread(sec.solidus_C, sec.start_C), sec.cell_mm));
    const toFusion = Math.min(
      distance(p, lines.fusion),
      actual === null ? Number.POSITIVE_INFINITY : Math.abs(deep - actual),
    );
    if (toFusion <= byHand.fusion + 1e-9) {
      onLine++;
      continue;
    }
    const toZone = distance(p, lines.zone);
    if (toZone <= byHand.fusion + 1e-9) onZone++;
    const way = actual === null || deep >= actual ? 1 : -1;
    nearer += way * (Number.isFinite(toFusion) ? toFusion : Math.max(0, deep));
  }
  const missed = points.length - onLine;
  const met: LineMet =
    points.length === 0
      ? 'nothing marked'
      : missed === 0
        ? 'fusion line'
        : onZone * 2 >= missed
          ? 'heat-affected zone'
          : 'neither';
  return {
    side,
    met,
    points: points.length,
    there: met === 'fusion line' ? onLine : met === 'heat-affected zone' ? onZone : missed,
    nearer_mm: missed === 0 ? 0 : milli(nearer / missed),
  };
}

function apart(p: Place, q: Place): number {
  return Math.sqrt((p.a - q.a) ** 2 + (p.b - q.b) ** 2);
}

function distance(p: Place, lines: readonly Place[][]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const line of lines)
    for (let i = 1; i < line.length; i++) {
      const q = line[i - 1]!;
      const r = line[i]!;
      const da = r.a - q.a;
      const db = r.b - q.b;
      const length2 = da * da + db * db;
      const t = length2 > 0 ? Math.min(1, Math.max(0, ((p.a - q.a) * da + (p.b - q.b) * db) / length2)) : 0;
      least = Math.min(least, apart(p, { a: q.a + t * da, b: q.b + t * db }));
    }
  return least;
}
