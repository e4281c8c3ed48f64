import type { ContentfulStatusCode } from 'hono/utils/http-status';

/** One thing that stands in the way of a request, by the name of its field. */
export interface FieldProblem {
  field: string;
  message: string;
}

/** A request that cannot be granted; becomes an answer with this status. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly status: ContentfulStatusCode;
  readonly problems: readonly FieldProblem[];

  constructor(status: ContentfulStatusCode, field: string, message: string) {
    super(message);
    this.status = status;
    this.problems = [{ field, message }];
  }
}

/** Not there, or not for this person: the two are never told apart. */
export function notThere(field: string): Refusal {
  return new Refusal(404, field, 'There is no such thing here, or it is not yours to see.');
}
