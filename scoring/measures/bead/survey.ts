import { type Section, TAB_MM } from '../../../engine/index.ts';
import type { Station } from '../../schema/station.ts';
import { milli, plusMinus } from '../precision.ts';
import { faceHeight_mm } from '../section/face.ts';
import { rootFusion } from '../section/root-fusion.ts';
import { type FreezeStamps, readSection } from '../section/station.ts';

/** Distance between the cuts along a joint, mm. */
export const SLICE_MM = 1;

/** The bead at one height, with what comparing places along it needs. */
export interface Slice {
  y_mm: number;
  face_mm: number;
  station: Station;
  stamps: FreezeStamps;
}

/** Fusion at the root at one height, bead or not; mm, rounded as a station's. */
interface Root {
  rootFusionA_mm: number;
  rootFusionB_mm: number;
  rootFusion_mm: number;
}

interface Cut {
  slice: Slice | null;
  root: Root;
}

interface Length {
  length_mm: number;
  tabs: boolean;
}

/**
 * The cuts of one finished attempt: every height is sawn and measured the first time it is asked for and never again, whoever asks. The piece
 * must not be welded on meanwhile.
 */
export class Survey {
  readonly #section: (y_mm: number) => Section;
  readonly #known = new Map<number, Cut>();

  /** @param section a cut square to the joint at a height, mm */
  constructor(section: (y_mm: number) => Section) {
    this.#section = section;
  }

  /** How many heights were cut so far. */
  get cuts(): number {
    return this.#known.size;
  }

  /** The bead at a height, mm; null where there is none. */
  at(y_mm: number): Slice | null {
    return this.#cut(y_mm).slice;
  }

  /** Fusion at the root at a height, mm, with metal there or without. */
  root(y_mm: number): Root {
    return this.#cut(y_mm).root;
  }

  /** The bead over the whole joint, tabs too, a slice a millimetre; heights without a bead are left out. */
  along(joint: Length): Slice[] {
    const { from_mm, to_mm } = heightsOf(joint);
    const out: Slice[] = [];
    for (let k = 0; from_mm + k * SLICE_MM <= to_mm + 1e-9; k++) {
      const slice = this.at(from_mm + k * SLICE_MM);
      if (slice !== null) out.push(slice);
    }
    return out;
  }

  /** The cut at a height, made and measured if it is the first time. */
  #cut(y_mm: number): Cut {
    let cut = this.#known.get(y_mm);
    if (cut === undefined) {
      cut = measured(this.#section(y_mm));
      this.#known.set(y_mm, cut);
    }
    return cut;
  }
}

function measured(sec: Section): Cut {
  const reading = readSection(sec);
  if (reading !== null) {
    const { station, stamps } = reading;
    return { slice: { y_mm: sec.y_mm, face_mm: faceHeight_mm(sec), station, stamps }, root: station };
  }
  const bare = rootFusion(sec);
  return {
    slice: null,
    root: {
      rootFusionA_mm: milli(bare.rootFusionA_mm),
      rootFusionB_mm: milli(bare.rootFusionB_mm),
      rootFusion_mm: milli(bare.rootFusion_mm),
    },
  };
}

/** Lowest and highest cut there can be: the joint and its tabs. */
export function heightsOf(joint: Length): { from_mm: number; to_mm: number } {
  const more = joint.tabs ? TAB_MM - SLICE_MM : 0;
  return { from_mm: -more, to_mm: joint.length_mm + more };
}

/** Both legs together: the width a welder sees the bead cover. mm */
export function bothLegs_mm(s: Slice): number {
  return s.station.legA_mm + s.station.legB_mm;
}

/** One height of the opened root. */
export interface RootPlace {
  y_mm: number;
  /** There is a bead at this height. */
  welded: boolean;
  rootFusionA_mm: number;
  rootFusionB_mm: number;
  fused: boolean;
  /** How far the readings may be off, mm: nearer to the root line than this, tied in or not is in doubt. */
  plusMinus_mm: number;
}

/** What one depth of fusion at a root says, mm past the root line: tied in for sure, not for sure, or nearer to the line than it can be read. */
export function tiedIn(fusion_mm: number, plusMinus_mm: number): 'tied in' | 'in doubt' | 'not tied in' {
  if (Math.abs(fusion_mm) < plusMinus_mm) return 'in doubt';
  return fusion_mm > 0 ? 'tied in' : 'not tied in';
}

/**
 * The opened root: a fillet broken open along its root shows fusion over the whole length, where a macro shows one cut. Read from the
 * survey, so with the same digits as the stations.
 * @param plusMinus_mm of root fusion, at the cell the piece was welded with
 */
export function openedRoot(
  survey: Survey,
  length_mm: number,
  plusMinus_mm: number = plusMinus['root fusion'].value,
): RootPlace[] {
  const strip: RootPlace[] = [];
  for (let k = 0; k * SLICE_MM <= length_mm + 1e-9; k++) {
    const y_mm = milli(k * SLICE_MM);
    const { rootFusionA_mm, rootFusionB_mm, rootFusion_mm } = survey.root(y_mm);
    const welded = survey.at(y_mm) !== null;
    // Plates that melted and kept no metal are bare, and a bare root is never tied in.
    strip.push({ y_mm, welded, rootFusionA_mm, rootFusionB_mm, fused: welded && rootFusion_mm > 0, plusMinus_mm });
  }
  return strip;
}
