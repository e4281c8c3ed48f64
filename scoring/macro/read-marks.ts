import type { JointOptions } from '../../engine/index.ts';
import { milli, tenth } from '../measures/precision.ts';
import { faceShape } from '../measures/section/face.ts';
import { legs, nearestToRoot, size_mm, throats } from '../measures/section/size.ts';
import { toeAngle_deg } from '../measures/section/toe.ts';
import { outlineThrough } from './face-curve.ts';
import { markedFusion } from './fusion-marks.ts';
import { refused } from './joint-frame.ts';
import type { PlacedMarks } from './marks.ts';

/** What the marks on one cut come to, mm and degrees; null: not marked, or not far enough. Measures as defined under `bead/`. */
export interface MarkedReadings {
  legA_mm: number;
  legB_mm: number;
  size_mm: number;
  throat_mm: number;
  actualThroat_mm: number;
  theoreticalThroat_mm: number;
  faceWidth_mm: number;
  convexity_mm: number;
  concavity_mm: number;
  toeAngleA_deg: number;
  toeAngleB_deg: number;
  undercutA_mm: number | null;
  undercutB_mm: number | null;
  fusionDepthA_mm: number | null;
  fusionDepthB_mm: number | null;
  leastFusionA_mm: number | null;
  leastFusionB_mm: number | null;
  rootFusionA_mm: number | null;
  rootFusionB_mm: number | null;
  rootFusion_mm: number | null;
}

/** Legs shorter than this are no fillet but a slip of the hand, mm. */
const LEAST_LEG_MM = 0.5;
/** A toe this far back on the upper face of a lap's edge stands on top of it, mm. */
const ON_TOP_MM = 0.2;

/**
 * Reads a cut by its marks, with the same geometry a model's cut is read by.
 * @throws InputError when the marks make no fillet: a toe on the wrong side of the root, no face point, a face point outside the toes
 */
export function readMarks(m: PlacedMarks, joint: JointOptions): MarkedReadings {
  const o = outlineThrough(m.toeA, m.toeB, m.face);
  const { legA_mm, legB_mm } = legs(o);
  for (const [path, leg] of [
    ['marks.toeA', legA_mm],
    ['marks.toeB', legB_mm],
  ] as const)
    if (!(leg >= LEAST_LEG_MM))
      throw refused(path, `a toe ${leg.toFixed(1)} mm out from the root`, 'a toe out along its plate from the root');
  const shape = faceShape(o);
  const throat = throats(o, joint);
  const a = markedFusion(m.fusionA, 'A', 0, legA_mm);
  const b = markedFusion(m.fusionB, 'B', joint.gap_mm, legB_mm);
  const root = a.root_mm === null || b.root_mm === null ? null : Math.min(a.root_mm, b.root_mm);
  return {
    legA_mm: milli(legA_mm),
    legB_mm: milli(legB_mm),
    size_mm: milli(size_mm(o, joint, nearestToRoot(o))),
    throat_mm: milli(throat.throat_mm),
    actualThroat_mm: milli(throat.actualThroat_mm),
    theoreticalThroat_mm: milli(throat.theoreticalThroat_mm),
    faceWidth_mm: milli(shape.faceWidth_mm),
    convexity_mm: milli(shape.convexity_mm),
    concavity_mm: milli(shape.concavity_mm),
    toeAngleA_deg: tenth(toeAngle_deg(o.toeA)),
    toeAngleB_deg: tenth(toeAngle_deg(o.toeB, joint.kind === 'lap' && m.toeB.a < -ON_TOP_MM)),
    undercutA_mm: m.undercutA === null ? null : milli(Math.max(0, -m.undercutA.b)),
    undercutB_mm: m.undercutB === null ? null : milli(Math.max(0, -m.undercutB.a)),
    fusionDepthA_mm: rounded(a.deepest_mm),
    fusionDepthB_mm: rounded(b.deepest_mm),
    leastFusionA_mm: rounded(a.least_mm),
    leastFusionB_mm: rounded(b.least_mm),
    rootFusionA_mm: rounded(a.root_mm),
    rootFusionB_mm: rounded(b.root_mm),
    rootFusion_mm: rounded(root),
  };
}

function rounded(x: number | null): number | null {
  return x === null ? null : milli(x);
}
