import { z } from 'zod';
import { exerciseSchema } from './exercise.ts';
import { profileSchema } from './profile.ts';
import { recordingSchema } from './recording.ts';
import { resultSchema } from './result.ts';

const UNITS = 'Units stand at the end of the names: mm, s, V, mpmin (m/min), mmps (mm/s), deg, C (°C).';

const formats = {
  recording: {
    schema: recordingSchema,
    version: 2,
    about:
      'One attempt with everything needed to weld the same bead again. Pose columns are whole numbers of 0.01 mm and 0.1 degree, one entry each 1/100 s, all of one length; the reader also checks that, and that joint and settings can be welded.',
  },
  exercise: {
    schema: exerciseSchema,
    version: 2,
    about:
      'A joint, settings, the size asked for and how it is judged. The reader also checks that the judged length and the cuts lie on the joint.',
  },
  profile: {
    schema: profileSchema,
    version: 1,
    about: 'Acceptance limits with their source, in the unit the profile names.',
  },
  result: {
    schema: resultSchema,
    version: 2,
    about: 'What an attempt came to: readings, verdicts and what to change first.',
  },
} as const;

/** A file format that has a JSON Schema. */
export type JsonSchemaName = keyof typeof formats;

/** Every file format that has a JSON Schema. */
export const jsonSchemaNames = Object.keys(formats) as readonly JsonSchemaName[];

/** A file format as JSON Schema (draft 2020-12), made from the very schema the reader checks with. */
export function jsonSchema(name: JsonSchemaName): Record<string, unknown> {
  const { schema, version, about } = formats[name];
  const made = z.toJSONSchema(schema, { target: 'draft-2020-12' });
  const { $schema, ...rest } = made;
  return {
    $schema,
    $id: `urn:toehold:${name}:${version}`,
    title: `Toehold ${name}, version ${version}`,
    description: `${about} ${UNITS}`,
    ...rest,
  };
}
