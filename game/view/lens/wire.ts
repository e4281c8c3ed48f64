import type { Place } from './pinhole.ts';

/** How the torch stands over its aim point. */
export interface Wire {
  tipToWork_mm: number;
  workAngle_deg: number;
  travelAngle_deg: number;
  wire_mm: number;
}

const EVEN_WORK_ANGLE = 45;
/** Arc length from the metal to the wire's end: about what a short-circuiting arc keeps between two shorts. */
const ARC_LENGTH_MM = 2;

/**
 * Where the wire points and ends. `axis` runs from the metal to the contact tip, a unit vector; a push angle over zero has the torch
 * below the foot, a work angle under 45 leans it over the right plate. Without a torch the wire stands square to the joint.
 */
export function wireOf(foot: Place, torch: Wire | null): { axis: Place; end: Place; leaves: Place } {
  const travel = ((torch?.travelAngle_deg ?? 0) * Math.PI) / 180;
  const work = (((torch?.workAngle_deg ?? EVEN_WORK_ANGLE) - EVEN_WORK_ANGLE) * Math.PI) / 180;
  const axis = {
    u_mm: -Math.sin(work) * Math.cos(travel),
    y_mm: -Math.sin(travel),
    w_mm: Math.cos(work) * Math.cos(travel),
  };
  const out = (by_mm: number): Place => ({
    u_mm: foot.u_mm + axis.u_mm * by_mm,
    y_mm: foot.y_mm + axis.y_mm * by_mm,
    w_mm: foot.w_mm + axis.w_mm * by_mm,
  });
  return { axis, end: out(ARC_LENGTH_MM), leaves: out(Math.max(ARC_LENGTH_MM + 1, torch?.tipToWork_mm ?? 12)) };
}
