import type { Profile } from '../schema/profile.ts';
import { awsCyclicInch, awsCyclicSi, awsStaticInch, awsStaticSi } from './aws-d11.ts';
import { isoB, isoC, isoD, isoProcedureTest, isoWelderTest } from './iso-5817.ts';
import { firstRuns } from './tern-dock.ts';

/** The acceptance profiles that come with Toehold, in the order they are offered. */
export const profiles: readonly Profile[] = [
  awsStaticSi,
  awsStaticInch,
  awsCyclicSi,
  awsCyclicInch,
  isoD,
  isoC,
  isoB,
  isoProcedureTest,
  isoWelderTest,
  firstRuns,
];

/** Finds a profile by its name; undefined when there is none. */
export function profileNamed(name: string): Profile | undefined {
  return profiles.find((p) => p.name === name);
}
