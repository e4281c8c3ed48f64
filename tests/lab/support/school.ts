import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import type { AttemptRecording, Exercise } from '../../../scoring/index.ts';
import { digestOf } from '../../../scoring/lab/digests.ts';
import { type Lab, type LabOptions, openLab } from '../../../scoring/lab/lab.ts';
import { bytesOf, shortExercise } from './attempts.ts';
import { KIND, newServerDatabase } from './stores.ts';

export const SETUP_CODE = 'SETUP234';
export const WORKER_TOKEN = 'a-token-of-at-least-twenty-characters';
export const PASSWORD = 'gorse on the headland';
export const HOST = 'lab.test';
export const SETTINGS: LabOptions['settings'] = {
  setupCode: SETUP_CODE,
  workerToken: WORKER_TOKEN,
  behindProxy: false,
  https: false,
  requestsAMinute: 600,
  keepDays: null,
};

/** A lab without a port, in a folder of its own. */
export interface TestLab {
  lab: Lab;
  folder: string;
  options: LabOptions;
  /** Stops it and takes its folder away. */
  end(): Promise<void>;
}

export async function newLab(change: Partial<LabOptions> = {}): Promise<TestLab> {
  const folder = mkdtempSync(join(tmpdir(), 'toehold-lab-'));
  const options: LabOptions = {
    folder,
    databaseUrl: KIND === 'server' ? await newServerDatabase() : null,
    threads: 1,
    slowest_s: 120,
    log: pino({ level: 'silent' }),
    settings: SETTINGS,
    ...change,
  };
  const lab = await openLab(options);
  return {
    lab,
    folder,
    options,
    end: async () => {
      await lab.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export interface Answer {
  status: number;
  body: Json;
  text: string;
  headers: Headers;
}
/** An answer as a test reads it: whatever field is asked for is there, or the check after it fails. */
type Json = readonly Json[] & string & { readonly [field: string]: Json };

/** Somebody at a browser: keeps the cookie, sends back the word of the page. */
export class Person {
  readonly #lab: Lab;
  cookie = '';
  csrf = '';

  constructor(lab: Lab) {
    this.#lab = lab;
  }

  async ask(method: string, path: string, body?: unknown, headers: Record<string, string> = {}): Promise<Answer> {
    const raw = body instanceof Uint8Array;
    const answer = await this.#lab.app.request(`http://${HOST}${path}`, {
      method,
      headers: {
        host: HOST,
        origin: `http://${HOST}`,
        ...(this.cookie === '' ? {} : { cookie: this.cookie }),
        ...(this.csrf === '' ? {} : { 'x-csrf': this.csrf }),
        ...(body === undefined ? {} : { 'content-type': raw ? 'application/octet-stream' : 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: raw ? (body as Uint8Array<ArrayBuffer>) : JSON.stringify(body) }),
    });
    const set = answer.headers.get('set-cookie');
    if (set !== null) this.cookie = set.split(';')[0]!;
    const text = await textOf(answer);
    const json = /^application\/json\b/.test(answer.headers.get('content-type') ?? '');
    const parsed = json ? JSON.parse(text) : {};
    if (typeof parsed.csrf === 'string') this.csrf = parsed.csrf;
    return { status: answer.status, body: parsed, text, headers: answer.headers };
  }

  /** @throws Error with the answer unless it is 200 */
  async must(method: string, path: string, body?: unknown): Promise<Answer['body']> {
    const answer = await this.ask(method, path, body);
    if (answer.status !== 200) throw new Error(`${method} ${path}: ${answer.status} ${answer.text}`);
    return answer.body;
  }

  hand(assignmentId: string, recording: AttemptRecording | Uint8Array): Promise<Answer> {
    const bytes = recording instanceof Uint8Array ? recording : bytesOf(recording);
    return this.ask('PUT', `/api/my/assignments/${assignmentId}/attempts/${digestOf(bytes)}`, bytes);
  }
}

/** The whole of an answer; of one that goes on for ever its first piece. */
async function textOf(answer: Response): Promise<string> {
  if (answer.headers.get('content-type') !== 'text/event-stream') return answer.text();
  const reader = answer.body!.getReader();
  const { value } = await reader.read();
  await reader.cancel();
  return new TextDecoder().decode(value);
}

export interface TestClass {
  classId: string;
  code: string;
  assignmentId: string;
}

/** The first instructor of a lab, logged in. */
export async function firstInstructor(lab: Lab, name = 'Maud Tarrant'): Promise<Person> {
  const person = new Person(lab);
  await person.must('POST', '/api/setup', { code: SETUP_CODE, name, password: PASSWORD });
  return person;
}

export async function anotherInstructor(lab: Lab, by: Person, name: string): Promise<Person> {
  await by.must('POST', '/api/instructors', { name, password: PASSWORD });
  const person = new Person(lab);
  await person.must('POST', '/api/login', { name, password: PASSWORD });
  return person;
}

/** A class with a roster and the short exercise handed out. */
export async function newClass(
  instructor: Person,
  name: string,
  roster: readonly string[],
  exercise: Exercise = shortExercise(),
): Promise<TestClass> {
  const { id: classId, code } = await instructor.must('POST', '/api/classes', { name });
  if (roster.length > 0)
    await instructor.must('POST', `/api/classes/${classId}/roster`, { csv: ['name', ...roster].join('\n') });
  const { id: assignmentId } = await instructor.must('POST', `/api/classes/${classId}/assignments`, {
    exercise,
    opens: new Date(Date.now() - 60_000).toISOString(),
    closes: null,
    mostAttempts: null,
  });
  return { classId, code, assignmentId };
}

export async function joined(lab: Lab, code: string, name: string, pin?: string): Promise<Person> {
  const person = new Person(lab);
  await person.must('POST', '/api/join', { code, name, ...(pin === undefined ? {} : { pin }) });
  return person;
}
