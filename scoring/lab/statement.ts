import { createHash } from 'node:crypto';
import type { Result } from '../index.ts';
import type { Versions } from './judge.ts';

/** What a statement is made from. */
export interface Said {
  submissionId: string;
  trainee: string;
  assignment: { id: string; title: string };
  number: number;
  late: boolean;
  received: Date;
  result: Result;
  versions: Versions;
}

/** Any UUID that nothing else is named under. */
const NAMESPACE = '7d1f3c52-61c3-4d0b-9a53-2f6b0a7c9e11';

/**
 * An xAPI 1.0.3 statement: a trainee was scored for an attempt. The person is an account by the lab's own id, without a name. `success` is there only where the
 * verdict is within or outside; too close to call and no verdict are neither.
 * @param home address that stands for the school's lab; names of accounts, activities and extensions are under it
 */
export function statementOf(said: Said, home: string): Record<string, unknown> & { id: string } {
  const { result, assignment, versions } = said;
  const under = (path: string): string => `${home.replace(/\/+$/, '')}/${path}`;
  const { verdict, score } = result;
  return {
    id: statementId(said),
    actor: { objectType: 'Agent', account: { homePage: home, name: said.trainee } },
    // Verb and activity type by the vocabulary of the authors of the specification; from memory.
    verb: { id: 'http://adlnet.gov/expapi/verbs/scored', display: { 'en-US': 'scored' } },
    object: {
      objectType: 'Activity',
      id: under(`assignments/${assignment.id}`),
      definition: { name: { en: assignment.title }, type: 'http://adlnet.gov/expapi/activities/assessment' },
    },
    result: {
      completion: true,
      ...(verdict === 'within' ? { success: true } : verdict === 'outside' ? { success: false } : {}),
      ...(score === null ? {} : { score: { scaled: score / 100, raw: score, min: 0, max: 100 } }),
      duration: `PT${result.process.arcTime_s.toFixed(2)}S`,
      extensions: { [under('xapi/verdict')]: verdict },
    },
    context: {
      platform: 'Toehold',
      extensions: {
        [under('xapi/attempt')]: said.submissionId,
        [under('xapi/number')]: said.number,
        [under('xapi/late')]: said.late,
        [under('xapi/engine')]: versions.engine,
        [under('xapi/scoring')]: versions.scoring,
      },
    },
    timestamp: said.received.toISOString(),
    version: '1.0.3',
  };
}

/** A UUID of version 5 (RFC 9562) from what the statement is about: written twice, it is the same statement. */
export function statementId({ submissionId, versions }: Pick<Said, 'submissionId' | 'versions'>): string {
  const hash = createHash('sha1')
    .update(Buffer.from(NAMESPACE.replaceAll('-', ''), 'hex'))
    .update(`${submissionId} ${versions.engine} ${versions.scoring}`)
    .digest();
  hash[6] = (hash[6]! & 0x0f) | 0x50;
  hash[8] = (hash[8]! & 0x3f) | 0x80;
  const hex = hash.toString('hex').slice(0, 32);
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
