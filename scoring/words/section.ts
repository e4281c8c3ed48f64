import type { JointOptions } from '../../engine/index.ts';
import { type PlusMinusName, plusMinusAt, type RunKind } from '../measures/precision.ts';
import type { Reading } from '../measures/section/station.ts';
import { plateName, said } from './names.ts';
import { rootSaid } from './seen.ts';

/** What the plus-minus of readings goes by. */
interface Precision {
  cell_mm: number;
  run: RunKind;
}

/** The readings of one cut, as said at the bench, line by line. */
export function sectionLines(
  y_mm: number,
  reading: Reading | null,
  kind: JointOptions['kind'],
  precision: Precision,
): string[] {
  if (reading === null) return [`Cut at ${said(y_mm)} mm: no weld here.`];
  const s = reading.station;
  const a = plateName(kind, 'A');
  const b = plateName(kind, 'B');
  const pm = (name: PlusMinusName): string => `± ${said(plusMinusAt(name, precision.cell_mm, precision.run), 2)}`;
  const rows = [
    [`leg, ${a}`, said(s.legA_mm, 2), pm('leg')],
    [`leg, ${b}`, said(s.legB_mm, 2), pm('leg')],
    ['throat (effective)', said(s.throat_mm, 2), pm('throat')],
    ['throat (actual)', said(s.actualThroat_mm, 2), pm('throat')],
    ['width of face', said(s.faceWidth_mm, 2), pm('leg')],
    ['convexity', said(s.convexity_mm, 2), pm('convexity')],
    ['concavity', said(s.concavity_mm, 2), pm('convexity')],
    [`toe angle, ${a}`, `${said(s.toeAngleA_deg, 0)}°`, `${pm('toe angle')}°`],
    [`toe angle, ${b}`, `${said(s.toeAngleB_deg, 0)}°`, `${pm('toe angle')}°`],
    [`undercut, ${a}`, said(s.undercutA_mm, 2), pm('undercut')],
    [`undercut, ${b}`, said(s.undercutB_mm, 2), pm('undercut')],
    [`overlap, ${a}`, said(s.overlapA_mm, 2), pm('overlap')],
    [`overlap, ${b}`, said(s.overlapB_mm, 2), pm('overlap')],
    [`fused depth, ${a}`, said(s.fusionDepthA_mm, 2), pm('fusion')],
    [`fused depth, ${b}`, said(s.fusionDepthB_mm, 2), pm('fusion')],
    ['root', rootSaid(s.rootFusion_mm), pm('root fusion')],
    ...(s.edgeMeltedBack_mm === null ? [] : [['edge melted back', said(s.edgeMeltedBack_mm, 2), pm('overlap')]]),
    [`heat-affected zone, ${a}`, said(s.hazA_mm, 2), pm('fusion')],
    [`heat-affected zone, ${b}`, said(s.hazB_mm, 2), pm('fusion')],
  ];
  const width = Math.max(...rows.map((r) => r[0]!.length));
  return [
    `Cut at ${said(y_mm)} mm, readings in mm:`,
    ...rows.map((r) => `  ${r[0]!.padEnd(width)}  ${r[1]!} ${r[2]!}`),
  ];
}
