import type { Section } from '../../../engine/index.ts';
import type { Station } from '../../schema/station.ts';
import { milli, tenth } from '../precision.ts';
import { faceShape } from './face.ts';
import { edgeMeltedBack_mm, fusedFace } from './fusion.ts';
import { FARTHEST_SHORT_MM } from './isotherm.ts';
import { LEAST_METAL_MM, type Outline, outlineOf, surfaceWay } from './outline.ts';
import { type RootFusion, rootFusion } from './root-fusion.ts';
import { legs, nearestToRoot, size_mm, throats } from './size.ts';
import { overlap_mm, toeAngle_deg, toeRisk_mm, undercut_mm } from './toe.ts';

/** When the metal at the places of a section froze, s; null where it never was liquid. */
export interface FreezeStamps {
  toeA_s: number | null;
  toeB_s: number | null;
  root_s: number | null;
}

/** One section read: its measures, and when the metal at its toes and root froze. */
export interface Reading {
  station: Station;
  stamps: FreezeStamps;
}

/** Reads every bead measure off one section; null where there is no bead. */
export function readSection(sec: Section): Reading | null {
  const o = outlineOf(sec);
  if (o === null) return null;
  const { legA_mm, legB_mm } = legs(o);
  const shape = faceShape(o);
  const throat = throats(o, sec.joint);
  const fusedA = fusedFace(sec, 'A', legA_mm);
  const fusedB = fusedFace(sec, 'B', legB_mm);
  const root = metalAtRoot(sec) ? rootFusion(sec) : NOT_JOINED;
  const melted = edgeMeltedBack_mm(sec);
  const overA = overlap_mm(surfaceWay(o.toeA.u), fusedWay(sec, 'A', fusedA.edge_mm, null));
  const overB = overlap_mm(surfaceWay(o.toeB.u), fusedWay(sec, 'B', fusedB.edge_mm, melted));
  const station: Station = {
    y_mm: milli(sec.y_mm),
    legA_mm: milli(legA_mm),
    legB_mm: milli(legB_mm),
    size_mm: milli(size_mm(o, sec.joint, nearestToRoot(o))),
    throat_mm: milli(throat.throat_mm),
    actualThroat_mm: milli(throat.actualThroat_mm),
    theoreticalThroat_mm: milli(throat.theoreticalThroat_mm),
    faceWidth_mm: milli(shape.faceWidth_mm),
    convexity_mm: milli(shape.convexity_mm),
    concavity_mm: milli(shape.concavity_mm),
    toeAngleA_deg: tenth(toeAngle_deg(o.toeA, overEdge(sec, 'A', o))),
    toeAngleB_deg: tenth(toeAngle_deg(o.toeB, overEdge(sec, 'B', o))),
    undercutA_mm: milli(undercut_mm(sec, o.toeA)),
    undercutB_mm: milli(undercut_mm(sec, o.toeB)),
    overlapA_mm: milli(overA),
    overlapB_mm: milli(overB),
    toeRiskA_mm: milli(toeRisk_mm(overA)),
    toeRiskB_mm: milli(toeRisk_mm(overB)),
    fusionDepthA_mm: milli(fusedA.deepest_mm),
    fusionDepthB_mm: milli(fusedB.deepest_mm),
    leastFusionA_mm: milli(fusedA.least_mm),
    leastFusionB_mm: milli(fusedB.least_mm),
    rootFusionA_mm: milli(root.rootFusionA_mm),
    rootFusionB_mm: milli(root.rootFusionB_mm),
    rootFusion_mm: milli(root.rootFusion_mm),
    rootFused: milli(root.rootFusion_mm) > 0,
    edgeMeltedBack_mm: melted === null ? null : milli(melted),
    hazA_mm: milli(fusedA.haz_mm),
    hazB_mm: milli(fusedB.haz_mm),
  };
  return { station, stamps: stampsOf(sec, o) };
}

/** Thickness of the edge a side ends in, or null where its face runs on. */
function edgeOf(sec: Section, side: 'A' | 'B'): number | null {
  if (sec.joint.kind === 'corner') return side === 'A' ? sec.joint.plateA_mm : sec.joint.plateB_mm;
  return sec.joint.kind === 'lap' && side === 'B' ? sec.joint.gap_mm + sec.joint.plateB_mm : null;
}

function overEdge(sec: Section, side: 'A' | 'B', o: Outline): boolean {
  const edge = edgeOf(sec, side);
  return edge !== null && surfaceWay(side === 'A' ? o.toeA.u : o.toeB.u) > edge;
}

/** Way to the edge of the fused plate: over the corner of an edge it goes on along the upper face. */
function fusedWay(sec: Section, side: 'A' | 'B', edge_mm: number, meltedBack_mm: number | null): number {
  const corner = edgeOf(sec, side);
  if (corner === null || meltedBack_mm === null || edge_mm < corner - sec.cell_mm) return edge_mm;
  return meltedBack_mm > 0 ? corner + meltedBack_mm : edge_mm;
}

/** No metal lies over the root: whatever the plates there went through, nothing ties them together. */
const NOT_JOINED: RootFusion = {
  rootFusionA_mm: -FARTHEST_SHORT_MM,
  rootFusionB_mm: -FARTHEST_SHORT_MM,
  rootFusion_mm: -FARTHEST_SHORT_MM,
};

function metalAtRoot(sec: Section): boolean {
  const root = rootColumn(sec);
  return sec.w_mm[root]! - sec.plate_mm[root]! > LEAST_METAL_MM;
}

function rootColumn(sec: Section): number {
  let root = 0;
  for (let i = 1; i < sec.u_mm.length; i++) if (Math.abs(sec.u_mm[i]!) < Math.abs(sec.u_mm[root]!)) root = i;
  return root;
}

function stampsOf(sec: Section, o: Outline): FreezeStamps {
  const at = (column: number): number | null => {
    const t = sec.frozen_s[column]!;
    return Number.isNaN(t) ? null : milli(t);
  };
  return { toeA_s: at(o.toeA.column), toeB_s: at(o.toeB.column), root_s: at(rootColumn(sec)) };
}
