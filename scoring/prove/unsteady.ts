import { createRandom } from '../../engine/index.ts';
import type { AttemptRecording } from '../schema/index.ts';
import { whole } from './warp.ts';

/** How differently the same hand goes the next time: rms of the aim, mm, and how fast it wanders, s. Practice, no source. */
const WANDER_MM = 0.15;
const WANDER_S = 0.15;
const SEED = 2;

/** The recorded hand as it might go another time: a little wander on top of the aim, always the same one. */
export function anotherTime(recording: AttemptRecording): AttemptRecording {
  const random = createRandom(SEED);
  const keep = 0.01 / WANDER_S;
  const kick = 100 * WANDER_MM * Math.sqrt(2 * keep);
  const wander = (column: readonly number[]): number[] => {
    let off = 0;
    return column.map((x) => {
      off += -keep * off + kick * random.normal();
      return whole(x + off);
    });
  };
  const { poses } = recording;
  return { ...recording, poses: { ...poses, u: wander(poses.u), y: wander(poses.y) }, stateHash: null, chain: null };
}
