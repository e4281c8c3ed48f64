import { PAPER, type Svg } from '../draw/svg.ts';

/**
 * A drawing in black and white for paper: the paper's tint becomes white, every colour the grey of the same lightness (Rec. 709 weights).
 * @param font family for all its text
 */
export function blackAndWhite(svg: Svg, font: string): Svg {
  return svg
    .replaceAll(PAPER, '#ffffff')
    .replace(/#[0-9a-f]{6}\b/gi, greyOf)
    .replace(/font-family:[^;}]*/g, `font-family:${font}`) as Svg;
}

function greyOf(colour: string): string {
  const part = (i: number): number => Number.parseInt(colour.slice(i, i + 2), 16);
  const grey = Math.round(0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5));
  return `#${grey.toString(16).padStart(2, '0').repeat(3)}`;
}

/**
 * Pattern fills as the flat tone of their ground: where tiles meet, PDF viewers draw hairlines that read as structure. The tones differ in
 * lightness and every zone has its outline, so nothing is lost.
 */
export function flatTones(svg: Svg): Svg {
  const grounds = new Map<string, string>();
  for (const [, id, ground] of svg.matchAll(/<pattern id="([^"]+)"[^>]*><rect[^>]*fill="(#[0-9a-f]{6})"/gi)) {
    grounds.set(id!, ground!);
  }
  return svg.replace(/fill="url\(#([^)]+)\)"/g, (whole, id: string) => {
    const ground = grounds.get(id);
    return ground === undefined ? whole : `fill="${ground}"`;
  }) as Svg;
}
