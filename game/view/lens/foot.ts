import { type Wire, wireOf } from './wire.ts';

/** The face the hand's aim point lies on: half way between the joint's faces and a hand at constant height (engine/torch.ts). */
const FACE_ROOT_MM = 2;
const FACE_SLOPE = 0.5;
const PASSES = 2;

/** Where the wire's line from an aim point meets the skin: the arc's foot as the hand has it now, before the weld has answered. */
export function footOf(
  aim: { u_mm: number; y_mm: number },
  torch: Wire,
  heightAt: (u_mm: number, y_mm: number) => number,
): { u_mm: number; y_mm: number } {
  const { axis } = wireOf({ ...aim, w_mm: 0 }, torch);
  const face = FACE_ROOT_MM + FACE_SLOPE * Math.abs(aim.u_mm);
  let foot = { u_mm: aim.u_mm, y_mm: aim.y_mm };
  for (let n = 0; n < PASSES; n++) {
    const down = (face - heightAt(foot.u_mm, foot.y_mm)) / axis.w_mm;
    foot = { u_mm: aim.u_mm - axis.u_mm * down, y_mm: aim.y_mm - axis.y_mm * down };
  }
  return foot;
}
