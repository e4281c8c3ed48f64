import { z } from 'zod';
import { ENGINE_VERSION, POSE_RATE_HZ, type Recording } from '../../../engine/index.ts';
import { checkRecording, InputError } from '../../../scoring/index.ts';
import { noPoses, type PoseColumns } from '../bench/pose-chunk.ts';
import type { AttemptMeta } from '../bench/protocol.ts';
import { timeSchema, whyDamaged } from './shelf.ts';

/** The head of an attempt kept while it is being welded; its poses are kept beside it in chunks. */
export interface DraftHead {
  id: string;
  made_ms: number;
  /** When its last chunk was written, ms since the epoch. */
  last_ms: number;
  /** Poses kept so far. */
  poses: number;
  /** Settings and all else that is known before it ends, as a recording without poses. */
  recording: Recording;
}

/** A second or so of poses. */
export interface DraftChunk {
  id: string;
  /** Number of its first pose. */
  from: number;
  poses: PoseColumns;
}

/** An attempt that was never ended: the page was closed or the machine stopped. */
export interface Unfinished {
  id: string;
  made_ms: number;
  duration_s: number;
  title: string | null;
  /** Another engine version welded it: the same hand makes a somewhat other bead here. */
  otherEngine: boolean;
  /** What is wrong with it, or null. */
  damaged: string | null;
}

/** A draft in another tab is written each second; one that has not been for this long has been left. */
export const LEFT_MS = 3000;

const headSchema = z.object({
  id: z.string(),
  made_ms: timeSchema,
  last_ms: timeSchema,
  poses: z.int().min(0),
  recording: z.looseObject({ engine: z.string() }),
});

const column = z.array(z.int());
const chunkSchema = z.object({
  from: z.int().min(0),
  poses: z.object({ u: column, y: column, tip: column, work: column, travel: column, trigger: column }),
});

/** What stands in a recording before there is a pose. */
export function headOf(id: string, made_ms: number, meta: AttemptMeta, simulation: Recording['simulation']): DraftHead {
  const recording: Recording = {
    format: 'toehold-recording',
    version: 2,
    engine: ENGINE_VERSION,
    simulation,
    rate_Hz: POSE_RATE_HZ,
    poses: noPoses(),
    ...meta,
    seed: meta.origin.faults?.seed ?? null,
    ended: 'interrupted',
    stateHash: null,
    chain: null,
  };
  return { id, made_ms, last_ms: made_ms, poses: 0, recording };
}

/** What is to be said of a kept head; null for one that another tab is still welding. */
export function unfinishedOf(kept: unknown, now_ms: number): Unfinished | null {
  const found = headSchema.safeParse(kept);
  if (!found.success) {
    const id = (kept as { id?: unknown } | null)?.id;
    const [{ path }] = found.error.issues;
    const damaged = path.join('.');
    return { id: String(id), made_ms: 0, duration_s: 0, title: null, otherEngine: false, damaged };
  }
  const { id, made_ms, last_ms, poses, recording } = found.data;
  if (now_ms - last_ms < LEFT_MS && now_ms >= last_ms) return null;
  const duration_s = poses / POSE_RATE_HZ;
  const otherEngine = recording.engine !== ENGINE_VERSION;
  try {
    const { exercise } = checkRecording(recording, id);
    return { id, made_ms, duration_s, title: exercise?.title ?? null, otherEngine, damaged: null };
  } catch (error) {
    return { id, made_ms, duration_s, title: null, otherEngine, damaged: whyDamaged(error) };
  }
}

/**
 * Head and chunks put together: a recording up to the last pose that is there without a gap.
 * @throws InputError when the head is spoilt or there is no pose
 */
export function recordingOf(kept: unknown, chunks: readonly unknown[]): { made_ms: number; recording: Recording } {
  const found = headSchema.safeParse(kept);
  const id = String((kept as { id?: unknown } | null)?.id);
  if (!found.success)
    throw new InputError(id, [
      { path: found.error.issues[0].path.join('.'), found: 'what cannot be read', allowed: 'an attempt as kept here' },
    ]);
  const all = noPoses();
  const good = chunks.flatMap((chunk) => chunkSchema.safeParse(chunk).data ?? []).sort((a, b) => a.from - b.from);
  for (const { from, poses } of good) {
    if (from !== all.u.length) break;
    for (const name of Object.keys(all) as (keyof PoseColumns)[]) all[name].push(...poses[name]);
  }
  if (all.u.length === 0) throw new InputError(id, [{ path: 'poses', found: 'none', allowed: 'at least one pose' }]);
  const recording = checkRecording({ ...found.data.recording, poses: all }, id) as Recording;
  return { made_ms: found.data.made_ms, recording };
}
