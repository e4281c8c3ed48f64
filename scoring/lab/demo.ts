import { setImmediate as breathe } from 'node:timers/promises';
import { createRecorder, createSimulation, handOfAmount, type RecordingMeta, weaveHand } from '../../engine/index.ts';
import { type Exercise, exerciseNamed, InputError } from '../index.ts';
import { ClassDesk } from './class-desk.ts';
import { digestOf } from './digests.ts';
import { judgeOf } from './judge.ts';
import type { Parts } from './parts.ts';
import { hashSecret, newCode } from './passwords.ts';
import { submit } from './submit.ts';
import { classes, instructors, teaches } from './tables.ts';

/** Who looks round, and how they come in. */
export interface Demo {
  instructor: string;
  password: string;
  /** Ends when all attempts are handed in; they are scored as they come. */
  filled: Promise<void>;
}

const DAY_MS = 86_400_000;
const INSTRUCTOR = 'Maud Tarrant';
/** Invented people: how unsteady their hands are at the beginning of term and at its end, 1 a beginner's. */
const PEOPLE = [
  { name: 'Ines Calder', from: 0.9, to: 0.1 },
  { name: 'Tomás Okafor', from: 1.6, to: 0.9 },
  { name: 'Wren Hollis', from: 0.5, to: 0.2 },
  { name: 'Pia Lindqvist', from: 1.2, to: 0.15 },
  { name: 'Osric Penhale', from: 0.6, to: 1.2 },
] as const;
/** What the term brings, one exercise after the other. */
const TERM = [
  { exercise: 'lap-5', title: 'Short lap, 5 mm', daysAgo: 63 },
  { exercise: 'tee-inverted-v', title: 'Short tee, inverted V', daysAgo: 28 },
] as const;
const ATTEMPTS_EACH = 2;
/** Poses welded before requests get their turn. */
const POSES_AT_ONCE = 40;

/**
 * Fills an empty lab with an invented class. Its attempts are welded here by the robot hand with a trainee's unsteadiness and filed as a
 * mouse's, so that marks and tables have something to show; everything after that is the lab's own work.
 * @throws InputError when somebody is there already
 */
export async function fillDemo(parts: Parts, now: Date): Promise<Demo> {
  const { db } = parts.store;
  if ((await db.select().from(instructors)).length > 0) {
    throw new InputError('--demo', [
      { path: '', found: 'a lab that has instructors', allowed: 'an empty one: name another folder with --data' },
    ]);
  }
  const password = newCode(12);
  const began = new Date(now.getTime() - 70 * DAY_MS);
  const instructor = { id: crypto.randomUUID(), name: INSTRUCTOR, made: began };
  await db
    .insert(instructors)
    .values({ ...instructor, keeper: true, password: await hashSecret(password, 'password') });
  const row = {
    id: crypto.randomUUID(),
    name: 'Tern Dock (invented)',
    code: newCode(),
    marks: { rule: 'median of last', attempts: 3 } as const,
    pins: false,
    made: began,
  };
  await db.insert(classes).values(row);
  await db.insert(teaches).values({ classId: row.id, instructorId: instructor.id });
  const desk = new ClassDesk(db, row, parts.versions);
  await desk.addTrainees(PEOPLE.map(({ name }) => ({ name, sourcedId: null })));
  return { instructor: INSTRUCTOR, password, filled: term(parts, desk, now) };
}

/** Hands in everybody's attempts, the oldest first. */
async function term(parts: Parts, desk: ClassDesk, now: Date): Promise<void> {
  const people = await desk.trainees();
  for (const [week, work] of TERM.entries()) {
    const exercise = shortPiece(work);
    const judge = judgeOf(exercise);
    await parts.files.keepJudge(judge.content);
    const opens = new Date(now.getTime() - work.daysAgo * DAY_MS);
    const assignment = await desk.assign({ title: work.title, judge, opens, closes: null, mostAttempts: null });
    for (let n = 0; n < ATTEMPTS_EACH; n++) {
      for (const [i, person] of PEOPLE.entries()) {
        const who = people.find((t) => t.name === person.name);
        if (who === undefined) continue;
        const share = (week * ATTEMPTS_EACH + n) / (TERM.length * ATTEMPTS_EACH - 1);
        const unsteady = person.from + share * (person.to - person.from);
        const bytes = await attempt(exercise, 100 * week + 10 * n + i + 1, unsteady);
        const digest = digestOf(bytes);
        const at = new Date(opens.getTime() + (7 * n + 1) * DAY_MS + i * 600_000);
        await submit(parts.store.db, parts.files, {
          who: { role: 'trainee', id: who.id, name: who.name, classId: desk.id, className: desk.class.name, csrf: '' },
          assignmentId: assignment.id,
          digest,
          bytes,
          now: at,
        });
        await parts.queue.add([{ attempt: digest, judge: judge.digest }], true);
        parts.queued();
      }
    }
  }
}

/** A ready exercise on half its piece, so that the class is there within a minute. */
function shortPiece({ exercise, title }: (typeof TERM)[number]): Exercise {
  const ready = exerciseNamed(exercise);
  if (ready === undefined) throw new Error(`no exercise ${exercise}`);
  return {
    ...ready,
    name: `short-${exercise}`,
    title,
    joint: { ...ready.joint, length_mm: 45 },
    judged: { from_mm: 12, to_mm: 36 },
    cuts_mm: [18, 24, 30],
    demonstration: { ...ready.demonstration, start_mm: 2, length_mm: 40 },
  };
}

/** An attempt's file. */
async function attempt(exercise: Exercise, seed: number, unsteady: number): Promise<Uint8Array> {
  const meta: RecordingMeta = {
    simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 },
    origin: { kind: 'hand' },
    device: { kind: 'mouse', measures: { tipToWork: false, workAngle: false, travelAngle: false }, scale: null },
    aids: { pacer: false, beat: false, toeMarks: true, plainView: false, handRig: null },
    exercise,
  };
  const sim = createSimulation(meta.simulation);
  const recorder = createRecorder(sim, meta);
  let poses = 0;
  const { tipToWork_mm, workAngle_deg, travelAngle_deg } = exercise.demonstration;
  for (const pose of weaveHand(exercise.demonstration, handOfAmount(seed, unsteady))) {
    // A mouse measures none of these; a file of one in which they vary would not be believed.
    sim.step(recorder.add({ ...pose, tipToWork_mm, workAngle_deg, travelAngle_deg }));
    poses += 1;
    if (poses % POSES_AT_ONCE === 0) await breathe();
  }
  return new TextEncoder().encode(JSON.stringify(recorder.finish('hand-finished')));
}
