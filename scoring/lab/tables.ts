import {
  bigserial,
  boolean,
  customType,
  index,
  integer,
  jsonb,
  pgTable,
  primaryKey,
  text,
  timestamp,
  uniqueIndex,
} from 'drizzle-orm/pg-core';
import type { MarksRule } from './marks-rule.ts';
import type { Carried } from './piece.ts';

/**
 * Every table of the lab. Kept to what PostgreSQL 15 knows: the embedded database is newer than the one a school has. Changing a table means
 * `npm run lab:migration`, which writes the next file under migrations/; files already there never change.
 */

const time = (name: string) => timestamp(name, { withTimezone: true, mode: 'date' });

/** Results as text and not as jsonb: what was written once is read back to the byte. */
const result = customType<{ data: unknown; driverData: string }>({
  dataType: () => 'text',
  toDriver: (value) => JSON.stringify(value),
  fromDriver: (value) => JSON.parse(value) as unknown,
});

export const instructors = pgTable('instructors', {
  id: text('id').primaryKey(),
  name: text('name').notNull().unique(),
  password: text('password').notNull(),
  /** In charge of the lab: says who comes in as an instructor. */
  keeper: boolean('keeper').notNull().default(false),
  made: time('made').notNull(),
});

/** An instructor's own exercises, to be handed out; what was handed out is judged by a copy in `judges`. */
export const exercises = pgTable(
  'exercises',
  {
    id: text('id').primaryKey(),
    instructorId: text('instructor_id')
      .notNull()
      .references(() => instructors.id, { onDelete: 'cascade' }),
    title: text('title').notNull(),
    /** As its file has it. */
    content: jsonb('content').$type<Record<string, unknown>>().notNull(),
    made: time('made').notNull(),
  },
  (t) => [index('exercises_instructor').on(t.instructorId)],
);

export const classes = pgTable('classes', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  /** What trainees type to join. */
  code: text('code').notNull().unique(),
  marks: jsonb('marks').$type<MarksRule>().notNull(),
  /** Marks count towards something: trainees need a PIN besides their name. */
  pins: boolean('pins').notNull(),
  made: time('made').notNull(),
});

export const teaches = pgTable(
  'teaches',
  {
    classId: text('class_id')
      .notNull()
      .references(() => classes.id, { onDelete: 'cascade' }),
    instructorId: text('instructor_id')
      .notNull()
      .references(() => instructors.id, { onDelete: 'cascade' }),
  },
  (t) => [primaryKey({ columns: [t.classId, t.instructorId] })],
);

export const trainees = pgTable(
  'trainees',
  {
    id: text('id').primaryKey(),
    classId: text('class_id')
      .notNull()
      .references(() => classes.id, { onDelete: 'cascade' }),
    /** As on the roster. */
    name: text('name').notNull(),
    /** As compared when joining: see `nameKey`. */
    nameKey: text('name_key').notNull(),
    /** `sourcedId` of a OneRoster file; null where the roster came without. */
    sourcedId: text('sourced_id'),
    pin: text('pin'),
    /** Number of the plate, by which an exercise that varies deals this trainee a piece of their own; nobody else of the class has it. */
    plate: integer('plate'),
    made: time('made').notNull(),
  },
  (t) => [uniqueIndex('trainees_name').on(t.classId, t.nameKey), uniqueIndex('trainees_plate').on(t.classId, t.plate)],
);

/** An exercise with its acceptance profile, as it stood when it was assigned. */
export const judges = pgTable('judges', {
  /** SHA-256 of `content`. */
  digest: text('digest').primaryKey(),
  content: text('content').notNull(),
});

export const assignments = pgTable(
  'assignments',
  {
    id: text('id').primaryKey(),
    classId: text('class_id')
      .notNull()
      .references(() => classes.id, { onDelete: 'cascade' }),
    judge: text('judge')
      .notNull()
      .references(() => judges.digest),
    title: text('title').notNull(),
    opens: time('opens').notNull(),
    closes: time('closes'),
    mostAttempts: integer('most_attempts'),
    /** What pieces are dealt by where the exercise varies; null where it does not. */
    startWord: text('start_word'),
    made: time('made').notNull(),
  },
  (t) => [index('assignments_class').on(t.classId)],
);

export const submissions = pgTable(
  'submissions',
  {
    /** Digest of attempt, assignment and trainee: the same upload twice is the same row. */
    id: text('id').primaryKey(),
    classId: text('class_id')
      .notNull()
      .references(() => classes.id, { onDelete: 'cascade' }),
    assignmentId: text('assignment_id')
      .notNull()
      .references(() => assignments.id, { onDelete: 'cascade' }),
    traineeId: text('trainee_id')
      .notNull()
      .references(() => trainees.id, { onDelete: 'cascade' }),
    attempt: text('attempt').notNull(),
    /** What it is judged by: the assignment's judge, or the same with the piece dealt to this trainee. */
    judge: text('judge')
      .notNull()
      .references(() => judges.digest),
    /** The piece the file says it was welded on; null: none. */
    carried: jsonb('carried').$type<Carried>(),
    bytes: integer('bytes').notNull(),
    received: time('received').notNull(),
    /** Which attempt of this trainee at this assignment, from 1. */
    number: integer('number').notNull(),
    /** Came after the assignment had closed. */
    late: boolean('late').notNull(),
  },
  (t) => [
    index('submissions_class').on(t.classId, t.received),
    index('submissions_attempt').on(t.attempt),
    uniqueIndex('submissions_number').on(t.assignmentId, t.traineeId, t.number),
  ],
);

/** What an attempt came to, judged by one judge with one version of engine and scoring. Written once and never changed. */
export const scores = pgTable(
  'scores',
  {
    attempt: text('attempt').notNull(),
    engine: text('engine').notNull(),
    scoring: text('scoring').notNull(),
    judge: text('judge').notNull(),
    /** The result without its long lists; null where scoring could not be done. */
    result: result('result'),
    /** Digest of the pose columns; null where scoring could not be done. */
    hand: text('hand'),
    /** The motion in short, for finding hands that are nearly another's; null too where it was scored before there was one. */
    motion: text('motion'),
    fault: text('fault'),
    scored: time('scored').notNull(),
    took_ms: integer('took_ms').notNull(),
    worker: text('worker').notNull(),
  },
  (t) => [primaryKey({ columns: [t.attempt, t.engine, t.scoring, t.judge] }), index('scores_hand').on(t.hand)],
);

/** Statements about scores on their way to the school's own record store; written with the score. */
export const statements = pgTable(
  'statements',
  {
    /** Made from what the statement is about: written again it is the same statement. */
    id: text('id').primaryKey(),
    submissionId: text('submission_id')
      .notNull()
      .references(() => submissions.id, { onDelete: 'cascade' }),
    statement: text('statement').notNull(),
    made: time('made').notNull(),
    /** Null until the store has it. */
    sent: time('sent'),
    /** What the store said when it would not have it for good. */
    refused: text('refused'),
  },
  (t) => [index('statements_waiting').on(t.sent, t.refused)],
);

/** Who is welding just now, as their bench says; a row that was not renewed for a while means nothing. */
export const welding = pgTable(
  'welding',
  {
    traineeId: text('trainee_id')
      .primaryKey()
      .references(() => trainees.id, { onDelete: 'cascade' }),
    classId: text('class_id')
      .notNull()
      .references(() => classes.id, { onDelete: 'cascade' }),
    seen: time('seen').notNull(),
  },
  (t) => [index('welding_class').on(t.classId, t.seen)],
);

/** Marks set by hand beside the computed ones; the latest counts and all stay. */
export const overrides = pgTable(
  'overrides',
  {
    id: bigserial('id', { mode: 'number' }).primaryKey(),
    classId: text('class_id')
      .notNull()
      .references(() => classes.id, { onDelete: 'cascade' }),
    assignmentId: text('assignment_id')
      .notNull()
      .references(() => assignments.id, { onDelete: 'cascade' }),
    traineeId: text('trainee_id')
      .notNull()
      .references(() => trainees.id, { onDelete: 'cascade' }),
    /** Null takes the override back. */
    mark: integer('mark'),
    reason: text('reason').notNull(),
    by: text('by').notNull(),
    at: time('at').notNull(),
  },
  (t) => [index('overrides_class').on(t.classId)],
);

export const sessions = pgTable('sessions', {
  /** SHA-256 of the token in the cookie: who reads the table cannot log in with it. */
  token: text('token').primaryKey(),
  instructorId: text('instructor_id').references(() => instructors.id, { onDelete: 'cascade' }),
  traineeId: text('trainee_id').references(() => trainees.id, { onDelete: 'cascade' }),
  /** Sent back by the page with every change. */
  csrf: text('csrf').notNull(),
  ends: time('ends').notNull(),
});

/** Who did what to whose data; rows are only ever added. */
export const audit = pgTable(
  'audit',
  {
    id: bigserial('id', { mode: 'number' }).primaryKey(),
    at: time('at').notNull(),
    role: text('role').notNull(),
    who: text('who').notNull(),
    classId: text('class_id'),
    did: text('did').notNull(),
    detail: jsonb('detail').$type<Record<string, unknown>>().notNull(),
  },
  (t) => [index('audit_class').on(t.classId, t.id)],
);
