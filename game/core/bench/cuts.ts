import type { Section } from '../../../engine/index.ts';
import {
  compareOwn,
  cutFrame,
  etchedCut,
  InputError,
  type Language,
  type Station,
  sectionSvg,
} from '../../../scoring/index.ts';
import type { BenchAnswer, BenchRequest, CutMessage } from './protocol.ts';

export type CutRequest = Extract<BenchRequest, { type: 'cut' | 'etched' | 'compareOwn' }>;

/**
 * What the page asked of a section: drawn with its readings, drawn bare, or compared with marks set on it.
 * @param station the section's readings; null where there is no bead
 */
export function answerCut(request: CutRequest, section: Section, station: Station | null, job: number): BenchAnswer {
  const { y_mm } = request;
  if (request.type === 'compareOwn') {
    try {
      return { type: 'ownReading', job, y_mm, reading: compareOwn(section, request.marks), refused: null };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      const [first] = error.problems;
      return {
        type: 'ownReading',
        job,
        y_mm,
        reading: null,
        refused: { found: first.found, allowed: first.allowed },
      };
    }
  }
  const { scale } = request;
  if (request.type === 'etched')
    return { type: 'etched', job, y_mm, cut: station && etchedCut(section, station, { scale, id: 'glass' }) };
  const { id, glass, language } = request;
  const cut = cutMessage(section, station, { y_mm, id, scale, language }, job);
  return glass && station ? { ...cut, svg: etchedCut(section, station, { scale, id }).svg } : cut;
}

/** A cut drawn with its readings, and what laying another beside it needs. */
export function cutMessage(
  section: Section,
  station: Station | null,
  { y_mm, id, scale, language }: { y_mm: number; id: string; scale: number; language: Language },
  job: number,
): CutMessage {
  return {
    type: 'cut',
    job,
    y_mm,
    scale,
    svg: sectionSvg(section, station, { id, scale, language }),
    frame: cutFrame(section, station, scale),
    surface_mm: surfaceOf(section),
    station,
  };
}

/** Surface of a section as a, b pairs (see the frame in the engine's types). */
function surfaceOf(section: Section): number[] {
  const out: number[] = [];
  for (const [i, u] of section.u_mm.entries()) {
    const w = section.w_mm[i];
    out.push((w + u) / Math.SQRT2, (w - u) / Math.SQRT2);
  }
  return out;
}
