import { angleBetween_deg } from '../round.ts';
import type { Toe } from './outline.ts';

/**
 * **Toe angle**: between the plate outside the weld and the face at the toe, through the air; 135° for a flat mitre on a right-angled
 * tee (ISO 5817:2014, 505). Degrees. Taken from a least-squares quadratic over the last 2 mm of face: a tighter curl is
 * read blunter than it is.
 * @param onTop the toe stands on top of a lap's edge instead of on the fusion face
 */
export function toeAngle_deg(toe: Toe, onTop = false): number {
  const way = toe.side === 'A' ? 1 : -1;
  // Inward along the face, and outward along the plate: away from the root at 45° in the welder's view, or down over an edge's top.
  return angleBetween_deg(-way, -way * toe.slope, way, onTop ? -1 : 1);
}
