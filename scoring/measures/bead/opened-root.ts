import type { Section } from '../../../engine/index.ts';
import { milli } from '../precision.ts';
import { outlineOf } from '../section/outline.ts';
import { rootFusion } from '../section/root-fusion.ts';

/** One height of the opened root. */
export interface RootPlace {
  y_mm: number;
  /** There is a bead at this height. */
  welded: boolean;
  rootFusionA_mm: number;
  rootFusionB_mm: number;
  fused: boolean;
}

/**
 * The opened root: a fillet broken open along its root shows fusion over the whole length, where a macro shows one cut. Read from
 * sections with the same measure and the same digits as the stations.
 * @param step_mm distance between heights
 */
export function openedRoot(section: (y_mm: number) => Section, length_mm: number, step_mm = 1): RootPlace[] {
  const strip: RootPlace[] = [];
  for (let k = 0; k * step_mm <= length_mm + 1e-9; k++) {
    const y_mm = milli(k * step_mm);
    const cut = section(y_mm);
    const root = rootFusion(cut);
    strip.push({
      y_mm,
      welded: outlineOf(cut) !== null,
      rootFusionA_mm: milli(root.rootFusionA_mm),
      rootFusionB_mm: milli(root.rootFusionB_mm),
      fused: milli(root.rootFusion_mm) > 0,
    });
  }
  return strip;
}
