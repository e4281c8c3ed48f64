import type { DrawingWords } from '../drawing.ts';

const comma = (mm: string): string => mm.replace('.', ',');

/** Lettering of the drawn cut and root, in German. */
export const drawingWords: DrawingWords = {
  throat: (mm) => `a ${comma(mm)}`,
  crown: (mm) => `über ${comma(mm)}`,
  hollow: (mm) => `hohl ${comma(mm)}`,
  deep: (mm) => `${comma(mm)} tief`,
  past: (mm) => `Wurzel +${comma(mm)}`,
  short: (mm) => `Wurzel −${comma(mm)}`,
  where: (y) => `Schnitt bei ${comma(y)} mm`,
  noWeld: 'hier keine Naht',
  asInTable: 'Messwerte in mm, ± wie in der Tabelle',
  bare: (y) => `Schnitt bei ${comma(y)} mm, keine Naht`,
  label: (y, legA, legB, convexity, root) =>
    `Schnitt bei ${comma(y)} mm: Schenkel ${comma(legA)} und ${comma(legB)} mm, Überhöhung ${comma(convexity)} mm, Wurzel ${root}`,
  rootPast: (mm) => `${comma(mm)} mm über die Ecke hinaus`,
  rootShort: (mm) => `${comma(mm)} mm zu kurz`,
  strip: {
    none: 'keine Naht an der Wurzel',
    down: 'fallend geschweißt: nicht bewertet',
    share: (percent, of, doubt) =>
      `Wurzel auf ${percent} %${of === null ? '' : of === 'weld' ? ' der vorhandenen Naht' : ' der bewerteten Länge'} erfasst${doubt === null ? '' : `, auf ${doubt} % unklar`}`,
  },
};
