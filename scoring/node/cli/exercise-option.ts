import { exerciseNamed, exercises } from '../../exercises/ready.ts';
import { profileNamed, profiles } from '../../profiles/ready.ts';
import type { Exercise } from '../../schema/exercise.ts';
import { describeFound, InputError } from '../../schema/problem.ts';
import type { Profile } from '../../schema/profile.ts';
import { readExercise, readProfile } from '../../schema/read.ts';
import { readText } from './files.ts';

/** The exercise an option names: a ready one, or a file. @throws InputError */
export function exerciseFor(name: string, command = 'score'): Exercise {
  const ready = exerciseNamed(name);
  if (ready !== undefined) return ready;
  if (name.endsWith('.json')) return readExercise(readText(name), name);
  throw new InputError(command, [
    {
      path: '--exercise',
      found: describeFound(name),
      allowed: `a .json file or one of ${exercises.map((e) => e.name).join(', ')}`,
    },
  ]);
}

/** The acceptance profile an option names: one that comes with Toehold, or a file. @throws InputError */
export function profileFor(name: string, command = 'score'): Profile {
  const ready = profileNamed(name);
  if (ready !== undefined) return ready;
  if (name.endsWith('.json')) return readProfile(readText(name), name);
  throw new InputError(command, [
    {
      path: '--profile',
      found: describeFound(name),
      allowed: `a .json file or one of ${profiles.map((p) => p.name).join(', ')}`,
    },
  ]);
}
