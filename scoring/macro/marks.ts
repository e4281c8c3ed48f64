import { z } from 'zod';
import type { Place } from '../draw/zones.ts';

/** Most points a person sets along one line. */
const MOST_POINTS = 40;

const px = z.number().min(-100_000).max(100_000);
const spotSchema = z.strictObject({ x: px, y: px });
const lineSchema = z.array(spotSchema).max(MOST_POINTS);

/** A point of a picture, pixels from its upper left corner. */
export type PictureSpot = z.infer<typeof spotSchema>;

/** What a person marks on the picture of a cut. A is the back plate of a lap or the right plate of a tee, B the other. */
export const pictureMarksSchema = z.strictObject({
  /** Where the plates' faces met as cut. */
  root: spotSchema,
  /** Any point farther out on each plate's face, for the way the plate runs. */
  plateA: spotSchema,
  plateB: spotSchema,
  toeA: spotSchema,
  toeB: spotSchema,
  /** Points of the face between the toes, in any order. */
  face: lineSchema.min(1),
  /** Points of the fusion line in each plate, in any order; empty: not marked. */
  fusionA: lineSchema,
  fusionB: lineSchema,
  /** Bottom of an undercut at each toe; null: not marked. */
  undercutA: spotSchema.nullable(),
  undercutB: spotSchema.nullable(),
});

/** Marks as they were set, in pixels of the picture. */
export type PictureMarks = z.infer<typeof pictureMarksSchema>;

/** The same marks in the joint's own frame, mm from the root: a out along plate A's face, b along plate B's. */
export interface PlacedMarks {
  toeA: Place;
  toeB: Place;
  face: Place[];
  fusionA: Place[];
  fusionB: Place[];
  undercutA: Place | null;
  undercutB: Place | null;
}
