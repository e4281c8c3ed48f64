import type { Section } from '../../../engine/index.ts';
import { readSection, type Station } from '../../../scoring/index.ts';
import { fusedFace } from '../../../scoring/measures/section/fusion.ts';
import { type Outline, outlineOf } from '../../../scoring/measures/section/outline.ts';
import { nearestToRoot } from '../../../scoring/measures/section/size.ts';
import { lineOfHeat, makeSection } from '../../scoring/measures/sections.ts';
import { across, CutBoard } from './board.ts';
import type { WeldName, Welds } from './welds.ts';

/** Pictures that need no weld. */
export function madeUpCuts(): [string, string][] {
  return [['undercut.svg', undercut()]];
}

interface Cut {
  sec: Section;
  s: Station;
  o: Outline;
}

function cutOf(sec: Section): Cut {
  const reading = readSection(sec);
  const outline = outlineOf(sec);
  if (reading === null || outline === null) throw new Error(`no bead at ${sec.y_mm} mm to draw`);
  return { sec, s: reading.station, o: outline };
}

const mm = (x: number): string => x.toFixed(1);
const ROOT = { a: 0, b: 0 };

/** Pictures of bead measures, each over a real cut but for undercut, which the model never makes. */
export function cutPictures(welds: Welds): [string, string][] {
  const at = (name: WeldName, y_mm: number): Cut => cutOf(welds[name].attempt.section(y_mm));
  const sound = at('weave', 22);
  const cold = at('cold', 20);
  const crater = welds.weave.result.bead.stops[0]!;
  return [
    ['legs.svg', legs(sound)],
    ['size.svg', size(sound)],
    ['throat.svg', throat(sound)],
    ['convexity.svg', convexity(sound)],
    ['concavity.svg', concavity(at('weave', crater.craterAt_mm! + 1.5))],
    ['toe-angle.svg', toeAngle(sound)],
    ['overlap.svg', overlap(cold)],
    ['toe-risk.svg', toeRisk(at('hot', 20))],
    ['fusion.svg', fusion(sound)],
    ['root-fusion.svg', rootPast(sound)],
    ['root-short.svg', rootShort(cold)],
    ['edge-melted-back.svg', edge(at('lap', 25))],
  ];
}

function legs({ sec, s }: Cut): string {
  return new CutBoard(sec, s, 'legs')
    .help({ a: s.legA_mm, b: 0 }, { a: s.legA_mm, b: -1.6 })
    .span({ a: 0, b: -1.2 }, { a: s.legA_mm, b: -1.2 }, `leg ${mm(s.legA_mm)}`)
    .help({ a: 0, b: s.legB_mm }, { a: -1.6, b: s.legB_mm })
    .span({ a: -1.2, b: 0 }, { a: -1.2, b: s.legB_mm }, `leg ${mm(s.legB_mm)}`, 34)
    .mark({ a: s.legA_mm, b: 0 })
    .mark({ a: 0, b: s.legB_mm })
    .text({ a: s.legA_mm + 0.4, b: 0.4 }, 'toe')
    .text({ a: 0.4, b: s.legB_mm + 0.3 }, 'toe')
    .text({ a: 0.5, b: 0.7 }, 'root')
    .svg();
}

function size({ sec, s }: Cut): string {
  const z = s.size_mm;
  return new CutBoard(sec, s, 'size')
    .line([ROOT, { a: z, b: 0 }, { a: 0, b: z }, ROOT], '', 1.8)
    .help({ a: z, b: 0 }, { a: z, b: -1.6 })
    .span({ a: 0, b: -1.2 }, { a: z, b: -1.2 }, `size ${mm(z)}`)
    .svg();
}

function throat({ sec, s, o }: Cut): string {
  const toeA = { a: s.legA_mm, b: 0 };
  const toeB = { a: 0, b: s.legB_mm };
  const t = (s.theoreticalThroat_mm * s.theoreticalThroat_mm) / (s.legA_mm * s.legB_mm);
  const foot = { a: t * s.legB_mm, b: t * s.legA_mm };
  const near = o.face.reduce((p, q) => (q.u * q.u + q.w * q.w < p.u * p.u + p.w * p.w ? q : p));
  const reach = nearestToRoot(o) / Math.sqrt(near.u * near.u + near.w * near.w);
  const face = across({ u: near.u * reach, w: near.w * reach });
  return new CutBoard(sec, s, 'throat')
    .line([toeA, toeB], '5 4')
    .span(ROOT, foot, '')
    .span(ROOT, face, '')
    .text({ a: foot.a + 0.3, b: foot.b - 0.7 }, `theoretical ${mm(s.theoreticalThroat_mm)}`)
    .text({ a: face.a + 0.7, b: face.b - 0.2 }, `actual ${mm(s.actualThroat_mm)}`)
    .text({ a: 1.2, b: -1.4 }, `effective ${mm(s.throat_mm)}`)
    .svg();
}

/** Unit normal of the toe line out of the root. */
function normalOf(o: Outline): { u: number; w: number } {
  const du = o.toeA.u - o.toeB.u;
  const dw = o.toeA.w - o.toeB.w;
  const length = Math.sqrt(du * du + dw * dw);
  return { u: -dw / length, w: du / length };
}

/** Face point farthest off the toe line, outward (+1) or inward (-1), and its foot on that line. */
function farthest(o: Outline, way: 1 | -1): { face: { u: number; w: number }; foot: { u: number; w: number } } {
  const n = normalOf(o);
  const off = (p: { u: number; w: number }): number => (p.u - o.toeB.u) * n.u + (p.w - o.toeB.w) * n.w;
  const face = o.face.reduce((p, q) => (way * off(q) > way * off(p) ? q : p));
  const d = off(face);
  return { face, foot: { u: face.u - d * n.u, w: face.w - d * n.w } };
}

function convexity({ sec, s, o }: Cut): string {
  const { face, foot } = farthest(o, 1);
  const n = normalOf(o);
  const out = (p: { u: number; w: number }, by: number) => across({ u: p.u + by * n.u, w: p.w + by * n.w });
  return new CutBoard(sec, s, 'convexity')
    .line([across(o.toeA), across(o.toeB)], '5 4')
    .help(across(o.toeA), out(o.toeA, 3.2))
    .help(across(o.toeB), out(o.toeB, 3.2))
    .span(out(o.toeB, 2.8), out(o.toeA, 2.8), `face ${mm(s.faceWidth_mm)}`, 30)
    .span(across(foot), across(face), '')
    .text({ a: across(foot).a - 3.6, b: across(foot).b - 1.2 }, `convexity ${mm(s.convexity_mm)}`)
    .svg();
}

function concavity({ sec, s, o }: Cut): string {
  const { face, foot } = farthest(o, -1);
  return new CutBoard(sec, s, 'concavity')
    .line([across(o.toeA), across(o.toeB)], '5 4')
    .span(across(face), across(foot), '')
    .text({ a: across(foot).a + 0.6, b: across(foot).b + 0.6 }, `concavity ${mm(s.concavity_mm)}`)
    .svg();
}

function toeAngle({ sec, s, o }: Cut): string {
  const toe = { a: s.legA_mm, b: 0 };
  const inward = (way: -1 | 1, slope: number, by: number) => {
    const length = Math.sqrt(1 + slope * slope);
    const from = way === -1 ? o.toeA : o.toeB;
    return across({ u: from.u + (way * by) / length, w: from.w + (way * slope * by) / length });
  };
  return new CutBoard(sec, s, 'toeangle')
    .line([toe, inward(-1, o.toeA.slope, 4)], '', 1.6)
    .line([toe, { a: toe.a + 3, b: 0 }], '', 1.6)
    .line([across(o.toeB), inward(1, o.toeB.slope, 4)], '', 1.6)
    .line([across(o.toeB), { a: 0, b: s.legB_mm + 3 }], '', 1.6)
    .text({ a: toe.a + 0.7, b: 1.1 }, `${s.toeAngleA_deg.toFixed(0)}°`)
    .text({ a: 0.9, b: s.legB_mm + 0.9 }, `${s.toeAngleB_deg.toFixed(0)}°`)
    .svg();
}

/** No weld of the model has undercut: plate and bead drawn to stated shape, read by the same measure. */
function undercut(): string {
  const half = 6 / Math.SQRT2;
  const groove = (u: number): number => (u > half && u < half + 1.6 ? 0.6 * Math.sin((Math.PI * (u - half)) / 1.6) : 0);
  const sec = makeSection({
    surface: (u, plate) => (Math.abs(u) < half ? Math.max(plate, half + 0.4) : plate) - Math.SQRT2 * groove(u),
    peak: lineOfHeat(2.2, 2.2, 4.4),
  });
  const { s } = cutOf(sec);
  const deep = sec.u_mm.reduce(
    (best, _, i) => (sec.plate_mm[i]! - sec.w_mm[i]! > sec.plate_mm[best]! - sec.w_mm[best]! ? i : best),
    0,
  );
  const bottom = across({ u: sec.u_mm[deep]!, w: sec.w_mm[deep]! });
  return new CutBoard(sec, s, 'undercut')
    .span({ a: bottom.a, b: 0 }, bottom, '')
    .text({ a: bottom.a - 0.2, b: -1.6 }, `undercut ${mm(s.undercutA_mm)}`, 'end')
    .text({ a: 0.3, b: 7.9 }, 'made up, none in the model')
    .svg();
}

function overlap({ sec, s }: Cut): string {
  const edge = s.legA_mm - s.overlapA_mm;
  return new CutBoard(sec, s, 'overlap')
    .help({ a: s.legA_mm, b: 0.6 }, { a: s.legA_mm, b: -1.6 })
    .help({ a: edge, b: 0.6 }, { a: edge, b: -1.6 })
    .span({ a: edge, b: -1.2 }, { a: s.legA_mm, b: -1.2 }, '')
    .text({ a: s.legA_mm + 0.3, b: -1.5 }, `overlap ${mm(s.overlapA_mm)}`)
    .text({ a: edge - 0.2, b: -2.5 }, 'plate fused up to here', 'end')
    .svg();
}

function toeRisk({ sec, s }: Cut): string {
  const edge = s.legA_mm + s.toeRiskA_mm;
  return new CutBoard(sec, s, 'toerisk')
    .help({ a: s.legA_mm, b: 0.3 }, { a: s.legA_mm, b: 1.6 })
    .help({ a: edge, b: -0.3 }, { a: edge, b: 1.6 })
    .span({ a: s.legA_mm, b: 1.2 }, { a: edge, b: 1.2 }, '')
    .text({ a: s.legA_mm + 0.5, b: 2 }, `toe risk ${mm(s.toeRiskA_mm)}`)
    .svg();
}

function fusion({ sec, s }: Cut): string {
  const A = fusedFace(sec, 'A', s.legA_mm);
  const B = fusedFace(sec, 'B', s.legB_mm);
  return new CutBoard(sec, s, 'fusion')
    .span({ a: A.deepestAt_mm, b: 0 }, { a: A.deepestAt_mm, b: -A.deepest_mm }, '')
    .text({ a: A.deepestAt_mm + 1.4, b: -1.1 }, `fused ${mm(s.fusionDepthA_mm)} deep`)
    .span({ a: A.deepestAt_mm, b: -A.deepest_mm }, { a: A.deepestAt_mm, b: -A.deepest_mm - A.haz_mm }, '')
    .text({ a: A.deepestAt_mm + 0.5, b: -A.deepest_mm - 0.6 * A.haz_mm }, `heat-affected ${mm(s.hazA_mm)}`)
    .span({ a: 0, b: B.deepestAt_mm }, { a: -B.deepest_mm, b: B.deepestAt_mm }, '')
    .text({ a: -B.deepest_mm - 0.3, b: B.deepestAt_mm + 0.6 }, mm(s.fusionDepthB_mm), 'end')
    .text({ a: 1.6, b: 7.8 }, `least ${mm(s.leastFusionA_mm)} below, ${mm(s.leastFusionB_mm)} beside`)
    .svg();
}

function rootPast({ sec, s }: Cut): string {
  return new CutBoard(sec, s, 'rootpast')
    .span({ a: 0.375, b: 0 }, { a: 0.375, b: -s.rootFusionA_mm }, '')
    .span({ a: 0, b: 0.375 }, { a: -s.rootFusionB_mm, b: 0.375 }, '')
    .text({ a: 1.2, b: -1.2 }, `${mm(s.rootFusionA_mm)} past the corner`)
    .text({ a: -s.rootFusionB_mm - 0.4, b: 0.9 }, `${mm(s.rootFusionB_mm)} past`, 'end')
    .svg();
}

function rootShort({ sec, s }: Cut): string {
  const land = -s.rootFusion_mm;
  const onA = s.rootFusionA_mm <= s.rootFusionB_mm;
  const far = onA ? { a: land, b: 0 } : { a: 0, b: land };
  const low = onA ? -1.2 : 0;
  return new CutBoard(sec, s, 'rootshort')
    .line([ROOT, far], '', 4)
    .help(far, onA ? { a: land, b: -1.6 } : { a: -1.6, b: land })
    .span(onA ? { a: 0, b: low } : { a: -1.2, b: 0 }, onA ? { a: land, b: low } : { a: -1.2, b: land }, '')
    .text({ a: 1.2, b: -1.6 }, `${mm(land)} short, never fused`)
    .svg();
}

function edge({ sec, s }: Cut): string {
  const top = sec.joint.plateB_mm + sec.joint.gap_mm;
  const back = s.edgeMeltedBack_mm ?? 0;
  return new CutBoard(sec, s, 'edgeback')
    .help({ a: 0, b: top }, { a: 0, b: top + 1.7 })
    .help({ a: -back, b: top - 0.4 }, { a: -back, b: top + 1.7 })
    .span({ a: -back, b: top + 1.3 }, { a: 0, b: top + 1.3 }, '')
    .text({ a: 0.4, b: top + 1.2 }, `edge melted back ${mm(back)}`)
    .svg();
}
