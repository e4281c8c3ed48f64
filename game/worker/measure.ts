import type { Section } from '../../engine/index.ts';

export function sectionSvg(s: Section, _o: { label: string; width_px: number }): string {
  const pts = Array.from(s.u_mm, (u, i) => `${u.toFixed(2)},${(-s.w_mm[i]).toFixed(2)}`).join(' ');
  return `<svg viewBox="-16 -16 32 24"><polyline points="${pts}" fill="none" stroke="#1f2326" stroke-width="0.15"/></svg>`;
}
