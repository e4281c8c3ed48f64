import type { PlusMinusName } from '../../../scoring/measures/precision.ts';

/** One line of the table of measures. */
export interface Row {
  /** Fields of the result that carry it. */
  fields: readonly string[];
  name: string;
  definition: string;
  unit: 'mm' | 's' | '°' | 'mm/s' | 'share' | 'count' | 'yes/no' | 'word';
  source: string;
  /** Named in scoring/measures/precision.ts, or said here with its reason. */
  plusMinus: PlusMinusName | { said: string };
  picture: string;
}

const PRACTICE = 'common practice, no source';

/** `bead.stations`, `bead.worst` and `bead.mean`. */
export const stationRows: readonly Row[] = [
  {
    fields: ['y_mm'],
    name: 'height of the cut',
    definition: 'Height on the joint, from its bottom; a station every millimetre of the judged length.',
    unit: 'mm',
    source: PRACTICE,
    plusMinus: { said: 'exact' },
    picture: 'legs.svg',
  },
  {
    fields: ['legA_mm', 'legB_mm'],
    name: 'leg',
    definition:
      'From the root to the toe, along each plate. The root is where the faces met as cut, also when an edge has melted off.',
    unit: 'mm',
    source: 'AWS A3.0, ISO 17659 (from memory)',
    plusMinus: 'leg',
    picture: 'legs.svg',
  },
  {
    fields: ['size_mm'],
    name: 'size',
    definition:
      'Leg of the largest right-angled isosceles triangle the weld holds, root at its corner; a gap is taken off.',
    unit: 'mm',
    source: 'AWS A3.0; gap: AWS D1.1 5.22.1 (from memory)',
    plusMinus: 'leg',
    picture: 'size.svg',
  },
  {
    fields: ['theoreticalThroat_mm'],
    name: 'theoretical throat',
    definition: 'From the root square to the line joining the toes: z₁z₂/√(z₁²+z₂²).',
    unit: 'mm',
    source: 'AWS A3.0 as restated in an open text',
    plusMinus: 'throat',
    picture: 'throat.svg',
  },
  {
    fields: ['actualThroat_mm'],
    name: 'actual throat',
    definition: 'Shortest distance from root to face.',
    unit: 'mm',
    source: 'AWS A3.0 as restated in an open text',
    plusMinus: 'throat',
    picture: 'throat.svg',
  },
  {
    fields: ['throat_mm'],
    name: 'effective throat',
    definition: 'Actual throat less convexity; a gap g takes off g/√2. Fusion past the root is not counted in.',
    unit: 'mm',
    source: 'AWS A3.0:2010 as quoted by Holdren, Inspection Trends 2010',
    plusMinus: 'throat',
    picture: 'throat.svg',
  },
  {
    fields: ['faceWidth_mm'],
    name: 'width of face',
    definition: 'Length of the line joining the toes.',
    unit: 'mm',
    source: 'AWS A3.0 (from memory)',
    plusMinus: { said: '± 0.4: two toes of ± 0.3, partly moving together' },
    picture: 'convexity.svg',
  },
  {
    fields: ['convexity_mm'],
    name: 'convexity (crowned)',
    definition: 'Greatest distance of the face outside the line joining the toes, square to that line.',
    unit: 'mm',
    source: 'AWS A3.0:2010 as quoted by Holdren, Inspection Trends 2010',
    plusMinus: 'convexity',
    picture: 'convexity.svg',
  },
  {
    fields: ['concavity_mm'],
    name: 'concavity (hollow)',
    definition: 'Greatest distance of the face inside the line joining the toes, square to that line.',
    unit: 'mm',
    source: 'ISO 17659 (from memory)',
    plusMinus: 'convexity',
    picture: 'concavity.svg',
  },
  {
    fields: ['toeAngleA_deg', 'toeAngleB_deg'],
    name: 'toe angle',
    definition: 'Between the plate outside the weld and the face at the toe, through the air; 135° for a flat mitre.',
    unit: '°',
    source: 'ISO 5817:2014, 505',
    plusMinus: 'toe angle',
    picture: 'toe-angle.svg',
  },
  {
    fields: ['undercutA_mm', 'undercutB_mm'],
    name: 'undercut',
    definition: 'Depth of the groove melted into the plate beside the toe and left unfilled, square to the plate.',
    unit: 'mm',
    source: 'ISO 5817:2014, 5011/5012; AWS D1.1 Table 6.1',
    plusMinus: 'undercut',
    picture: 'undercut.svg',
  },
  {
    fields: ['overlapA_mm', 'overlapB_mm'],
    name: 'overlap (cold lap)',
    definition:
      'Toe of the metal minus edge of the fused plate, along the plate: metal resting on plate that never melted.',
    unit: 'mm',
    source: 'ISO 5817:2014, 506; AWS D1.1 5.24',
    plusMinus: 'overlap',
    picture: 'overlap.svg',
  },
  {
    fields: ['toeRiskA_mm', 'toeRiskB_mm'],
    name: 'toe risk',
    definition:
      'Melted plate outside the metal. On steel it may have drained and left undercut, which this model carries only where a weld drops metal.',
    unit: 'mm',
    source: "the project's own, no source",
    plusMinus: 'overlap',
    picture: 'toe-risk.svg',
  },
  {
    fields: ['fusionDepthA_mm', 'fusionDepthB_mm'],
    name: 'fused depth',
    definition:
      'Deepest fusion into the plate, square to its face as cut; fused is where the peak reached the solidus.',
    unit: 'mm',
    source: 'ISO 17639 macro practice (from memory)',
    plusMinus: 'fusion',
    picture: 'fusion.svg',
  },
  {
    fields: ['leastFusionA_mm', 'leastFusionB_mm'],
    name: 'least fusion',
    definition:
      'Least fusion along the face between root and toe, the first and last millimetre left out; negative: not fused there.',
    unit: 'mm',
    source: 'AWS D1.1 Table 6.1 (2), thorough fusion to base metal',
    plusMinus: 'fusion',
    picture: 'fusion.svg',
  },
  {
    fields: ['hazA_mm', 'hazB_mm'],
    name: 'heat-affected zone',
    definition: 'Plate whose peak reached Ac1, below the deepest fusion, square to the face.',
    unit: 'mm',
    source: 'ISO 17639 macro practice (from memory); Ac1 by Andrews 1965',
    plusMinus: { said: '± 0.3: read between cells, no mesh study of its own' },
    picture: 'fusion.svg',
  },
  {
    fields: ['rootFusionA_mm', 'rootFusionB_mm', 'rootFusion_mm', 'rootFused'],
    name: 'root fusion',
    definition:
      'How far fusion reaches past the original root line into each plate; the smaller counts. Negative: width of the unfused land from the root line ([picture](../assets/measures/root-short.svg)).',
    unit: 'mm',
    source: 'ISO 17639 macro practice (from memory)',
    plusMinus: 'root fusion',
    picture: 'root-fusion.svg',
  },
  {
    fields: ['edgeMeltedBack_mm'],
    name: 'edge melted back',
    definition: "Lap: how far the edge plate's upper face is fused back from its corner as cut. Null on other joints.",
    unit: 'mm',
    source: PRACTICE,
    plusMinus: 'overlap',
    picture: 'edge-melted-back.svg',
  },
];

/** `bead.consistency`. */
export const consistencyRows: readonly Row[] = [
  {
    fields: ['size_mm', 'faceWidth_mm', 'convexity_mm'],
    name: 'consistency along the length',
    definition:
      'Standard deviation of size, width of face and convexity over the stations of the judged length; the ripples of the weave are in it.',
    unit: 'mm',
    source: PRACTICE,
    plusMinus: { said: '± 0.1: what the mesh moves, it moves alike along the run' },
    picture: 'consistency.svg',
  },
];

/** `bead.start`, `bead.stops` and the flaw at a restart. */
export const endRows: readonly Row[] = [
  {
    fields: ['bottom_mm', 'settledFace_mm', 'lump_mm', 'lumpAt_mm', 'plusMinus_mm'],
    name: 'start lump',
    definition:
      'Greatest height of the face over the settled bead in the first 10 mm of metal. Face: from the root along the line that halves the corner. Settled: median over the nearest 5 to 12 mm of bead that are neither start, stop nor restart.',
    unit: 'mm',
    source: PRACTICE,
    plusMinus: 'start lump',
    picture: 'start.svg',
  },
  {
    fields: ['fullWidthFrom_mm', 'fullWidthAboveStrike_mm'],
    name: 'full width from',
    definition:
      'Lowest height from which the bead has nine tenths of its settled width (both legs together) and keeps it over 3 mm.',
    unit: 'mm',
    source: PRACTICE,
    plusMinus: { said: '± 1: a slice a millimetre, toes ± 0.3' },
    picture: 'full-width.svg',
  },
  {
    fields: ['craterDepth_mm', 'craterAt_mm', 'filled', 'y_mm'],
    name: 'crater depth',
    definition:
      'How far the face near a stop lies below the settled face at its deepest. At the end of a weld the last throat is left out, where every weld runs out. Under 1 mm it reads as filled.',
    unit: 'mm',
    source: `${PRACTICE}; effective length: EN 1993-1-8 4.5.1 (from memory); limits: ISO 5817:2014, 2025`,
    plusMinus: 'crater',
    picture: 'crater.svg',
  },
  {
    fields: ['hollow_mm'],
    name: 'hollow at a stop',
    definition: 'Deepest concavity in the crater.',
    unit: 'mm',
    source: 'ISO 17659 (from memory)',
    plusMinus: 'convexity',
    picture: 'concavity.svg',
  },
  {
    fields: ['leastSize_mm', 'leastSizeAt_mm'],
    name: 'leg at the crater',
    definition: 'Least size in the crater: craters are filled when they are full to the size asked.',
    unit: 'mm',
    source: 'AWS D1.1 Table 6.1, craters filled; to the size: from memory',
    plusMinus: 'leg',
    picture: 'size.svg',
  },
  {
    fields: [
      'flaw',
      'rootShort_mm',
      'overlap_mm',
      'faceLow_mm',
      'faceHigh_mm',
      'length_mm',
      'rootFusion_mm',
      'rootFusionAt_mm',
    ],
    name: 'flaw at a restart',
    definition:
      'Length within 10 mm of a restarted stop over which the root is surely short, metal surely rests on cold plate, or the face is surely 1.5 mm under or over the settled one.',
    unit: 'mm',
    source: PRACTICE,
    plusMinus: 'restart flaw',
    picture: 'restart.svg',
  },
];
