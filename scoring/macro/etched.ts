import type { Section } from '../../engine/index.ts';
import { viewOf } from '../draw/plates.ts';
import { sectionSvg } from '../draw/section-svg.ts';
import type { Svg } from '../draw/svg.ts';
import type { Station } from '../schema/station.ts';

/** How a drawing of a cut lies on its joint. */
export interface CutFrame {
  width_px: number;
  height_px: number;
  /** Where the root lies in the drawing: a runs to the right from it, b upwards. */
  root: { x: number; y: number };
  /** Pixels per millimetre. */
  scale: number;
}

/** A cut as it lies under the glass before anything is measured: no dimension, no root mark, no joint as cut. */
export interface EtchedCut extends CutFrame {
  svg: Svg;
}

/**
 * Where a cut's drawing has its root, and its size at a scale.
 * @param station readings of the section, for how much of the joint is shown; null where there is no bead
 */
export function cutFrame(sec: Section, station: Station | null, scale: number): CutFrame {
  const view = viewOf(sec.joint, station?.legA_mm ?? 5, station?.legB_mm ?? 5);
  return {
    width_px: (view.aMax - view.aMin) * scale,
    height_px: (view.bMax - view.bMin) * scale,
    root: { x: -view.aMin * scale, y: view.bMax * scale },
    scale,
  };
}

/**
 * Draws a cut as it lies under the glass, with the frame to set marks in.
 * @param station as for cutFrame
 */
export function etchedCut(sec: Section, station: Station | null, options: { scale: number; id: string }): EtchedCut {
  const { scale, id } = options;
  return {
    svg: sectionSvg(sec, station, { scale, id, bare: true, asEtched: true }),
    ...cutFrame(sec, station, scale),
  };
}
