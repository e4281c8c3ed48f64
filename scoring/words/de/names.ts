import type { JointOptions } from '../../../engine/index.ts';
import type { LineMeasure } from '../../schema/profile.ts';
import type { DROPPED } from '../../schema/proved.ts';
import { said as saidInEnglish } from '../names.ts';

type Kind = JointOptions['kind'];

/** A number as said, with a decimal comma. */
export function said(x: number, decimals = 1): string {
  return saidInEnglish(x, decimals).replace('.', ',');
}

/** Plates in the welder's words. */
export function plateName(kind: Kind, side: 'A' | 'B'): string {
  if (kind === 'lap') return side === 'A' ? 'hinteres Blech' : 'Kantenblech';
  return side === 'A' ? 'rechtes Blech' : 'linkes Blech';
}

/** A toe (ISO 17659: Schweißnahtübergang) in the welder's words. */
export function toeName(kind: Kind, side: 'A' | 'B'): string {
  if (kind === 'lap') return side === 'A' ? 'rechter Übergang (hinteres Blech)' : 'linker Übergang (Kante)';
  return side === 'A' ? 'rechter Übergang' : 'linker Übergang';
}

/** A toe after "am". */
export function toeAfter(kind: Kind, side: 'A' | 'B'): string {
  return toeName(kind, side).replace('rechter', 'rechten').replace('linker', 'linken');
}

const MEASURES: Record<LineMeasure | typeof DROPPED, string> = {
  'root fusion': 'Wurzel, über die Ecke hinaus',
  'fusion to plate': 'Einbrand ins Blech',
  convexity: 'Nahtüberhöhung',
  leg: 'Schenkellänge',
  throat: 'a-Maß',
  'size over': 'Nahtgröße',
  'unequal legs': 'ungleiche Schenkel',
  undercut: 'Einbrandkerbe',
  overlap: 'Schweißgutüberlauf',
  'toe angle': 'Nahtübergangswinkel',
  'edge melted back': 'Kante abgeschmolzen',
  gap: 'Stegabstand',
  'crater depth': 'Endkrater unter der Nahtoberfläche',
  'leg at the crater': 'Schenkellänge am Endkrater',
  'undercut, length': 'Länge mit Einbrandkerbe',
  'convexity, length': 'Länge mit zu großer Überhöhung',
  'toe angle, length': 'Länge mit zu steilem Übergang',
  'overlap, length': 'Länge mit Überlauf',
  'unequal legs, length': 'Länge mit ungleichen Schenkeln',
  'leg short, length': 'Länge mit zu kleiner Schenkellänge',
  'throat short, length': 'Länge mit zu kleinem a-Maß',
  'throat over, length': 'Länge mit zu großem a-Maß',
  'fusion to plate, length': 'Länge ohne Einbrand ins Blech',
  'root fusion, length': 'Länge mit nicht erfasster Wurzel',
  'gap, length': 'Länge mit zu großem Stegabstand',
  'metal dropped out': 'herausgetropftes Metall',
};

/** Measures as said on screen and paper, in the terms of DIN EN ISO 6520-1 and 17659 (from memory). */
export function measureName(measure: LineMeasure | typeof DROPPED, side: 'A' | 'B' | null, kind: Kind): string {
  const on =
    side === null
      ? ''
      : `, ${measure === 'fusion to plate' ? plateName(kind, side) : side === 'A' ? 'rechter Übergang' : 'linker Übergang'}`;
  return MEASURES[measure] + on;
}
