export { type SectionSvgOptions, sectionSvg } from './section-svg.ts';
export { type StripSvgOptions, stripSvg } from './strip-svg.ts';
export { type Place, zoneOutlines } from './zones.ts';
