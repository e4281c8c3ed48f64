import { dimension, drawingOf, INK, type Spot, type Svg, tag, textAt } from './svg.ts';

/** Pixels for each millimetre of the drawn fillet, its leg, how far its face stands out, and where the plates end. */
const PX_MM = 11;
const LEG_MM = 8;
const CROWN_MM = 1.3;
const PLATE_MM = 5;
const BEYOND_MM = 15;
const EDGE_MM = 2.4;

/**
 * A fillet with what is measured on it, lettered a to f: legs, throat, convexity, past the corner, into the plates. The key of a sheet that
 * readings are written on; nothing in it is to scale with any weld.
 */
export function filletKeySvg(kind: 'tee' | 'lap' | 'corner'): Svg {
  const lap = kind === 'lap';
  const top = lap ? LEG_MM + 1 : BEYOND_MM;
  const width = (PLATE_MM + BEYOND_MM + 2 * EDGE_MM + 3) * PX_MM;
  const height = (PLATE_MM + top + 2 * EDGE_MM) * PX_MM;
  // Root at the origin, x along the right (back) plate, y up the left (edge) plate.
  const at = (x: number, y: number): Spot => ({
    x: (PLATE_MM + EDGE_MM + 3 + x) * PX_MM,
    y: (top + EDGE_MM - y) * PX_MM,
  });
  const path = (d: string, values: Record<string, string | number>): string => tag('path', { d, ...values });
  const p = ({ x, y }: Spot): string => `${x.toFixed(1)} ${y.toFixed(1)}`;
  const solid = { fill: 'none', stroke: INK, 'stroke-width': 1.6, 'stroke-linejoin': 'round' };
  const toeA = at(LEG_MM, 0);
  const toeB = at(0, LEG_MM);
  const middle = LEG_MM / 2;
  const bulge = CROWN_MM / Math.SQRT2;
  const control = at(middle + 2 * bulge, middle + 2 * bulge);
  const chord = at(middle, middle);
  const face = at(middle + bulge, middle + bulge);
  const face_ = `M${p(toeA)}Q${p(control)} ${p(toeB)}`;
  const size = 15;
  const letter = (x: number, y: number, text: string): string =>
    textAt(at(x, y), text, { 'font-size': size, 'font-weight': 600, fill: INK, 'text-anchor': 'middle' });
  const fused = `M${p(toeA)}C${p(at(5, -1.7))} ${p(at(1, -1.9))} ${p(at(-0.9, -0.9))}C${p(at(-1.9, 1))} ${p(at(-1.7, 5))} ${p(toeB)}`;
  const right = `M${p(at(BEYOND_MM, 0))}L${p(at(-PLATE_MM - (lap ? 3 : 0), 0))}M${p(at(BEYOND_MM, -PLATE_MM))}L${p(at(-PLATE_MM - (lap ? 3 : 0), -PLATE_MM))}`;
  const left = lap
    ? `M${p(at(0, 0))}L${p(at(0, LEG_MM))}L${p(at(-PLATE_MM - 3, LEG_MM))}`
    : `M${p(at(0, 0))}L${p(at(0, top))}M${p(at(-PLATE_MM, 0))}L${p(at(-PLATE_MM, top))}`;
  return drawingOf(
    width,
    height,
    'What is measured on the cut',
    [
      path(right, solid),
      path(left, solid),
      path(fused, { ...solid, 'stroke-width': 1, 'stroke-dasharray': '5 4' }),
      path(face_, { ...solid, 'stroke-width': 2.4 }),
      path(`M${p(toeA)}L${p(toeB)}`, { ...solid, 'stroke-width': 0.8, 'stroke-dasharray': '2 3' }),
      dimension(at(0, -PLATE_MM - 1.2), at(LEG_MM, -PLATE_MM - 1.2), '', 0, size),
      letter(LEG_MM / 2, -PLATE_MM - 2.3, 'a'),
      dimension(at(LEG_MM + 3.4, 0), at(LEG_MM + 3.4, LEG_MM), '', 0, size),
      letter(LEG_MM + 4.4, LEG_MM / 2 - 0.4, 'b'),
      dimension(at(0, 0), chord, '', 0, size),
      letter(1.3, 2.6, 'c'),
      dimension(chord, face, '', 0, size),
      letter(middle + bulge + 1.1, middle + bulge + 0.9, 'd'),
      dimension(at(0, 0), at(-0.9, -0.9), '', 0, size * 0.7),
      letter(-1.8, -2.6, 'e'),
      letter(3.4, -3.1, 'f'),
      letter(-2.7, 3.2, 'g'),
    ].join(''),
  );
}
