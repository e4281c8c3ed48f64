import { createHash } from 'node:crypto';

/** SHA-256 in hex. */
export function digestOf(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex');
}

/** A submission's id: the same attempt handed in twice by one trainee for one assignment is one submission. */
export function submissionId(attempt: string, assignmentId: string, traineeId: string): string {
  return digestOf(JSON.stringify([attempt, assignmentId, traineeId]));
}
