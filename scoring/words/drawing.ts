/** Lettering of the drawn cut and root. Numbers come as they are drawn. */
export const drawingWords = {
  throat: (mm: string): string => `throat ${mm}`,
  crown: (mm: string): string => `crown ${mm}`,
  hollow: (mm: string): string => `hollow ${mm}`,
  deep: (mm: string): string => `${mm} deep`,
  past: (mm: string): string => `root ${mm} past`,
  short: (mm: string): string => `root ${mm} short`,
  where: (y: string): string => `cut at ${y} mm`,
  noWeld: 'no weld here',
  asInTable: 'readings in mm, ± as in the table',
  bare: (y: string): string => `Section at ${y} mm, no weld`,
  label: (y: string, legA: string, legB: string, convexity: string, root: string): string =>
    `Section at ${y} mm: legs ${legA} and ${legB} mm, convexity ${convexity} mm, root ${root}`,
  rootPast: (mm: string): string => `${mm} mm past the corner`,
  rootShort: (mm: string): string => `${mm} mm short`,
  strip: {
    none: 'no weld at the root',
    down: 'welded downwards: not judged',
    /** @param of what the share is of; null: there is no judged length. @param doubt share too close to tell; null: none */
    share: (percent: number, of: 'weld' | 'judged length' | null, doubt: number | null): string =>
      `tied in at the root over ${percent} %${of === null ? '' : of === 'weld' ? ' of the weld there is' : ' of the judged length'}${doubt === null ? '' : `, in doubt over ${doubt} %`}`,
  },
};
export type DrawingWords = typeof drawingWords;
