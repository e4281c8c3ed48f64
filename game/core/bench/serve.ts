import { ENGINE_VERSION } from '../../../engine/index.ts';
import type { Clock } from '../ports.ts';
import { messageOf } from '../session/problem.ts';
import { Bench, type Post } from './bench.ts';
import type { BenchRequest } from './protocol.ts';

/**
 * Sets up a bench behind a line of messages: what it throws goes back as an answer like any other. Whoever carries the messages (a Worker,
 * a test) hands requests to the function returned.
 */
export function serveBench(post: Post, clock: Clock): (request: BenchRequest) => void {
  const bench = new Bench(post, clock);
  post({ type: 'ready', engine: ENGINE_VERSION });
  return (request) => {
    try {
      bench.handle(request);
    } catch (error) {
      const job = 'job' in request ? request.job : -1;
      post({ type: 'failed', job, doing: request.type, message: messageOf(error) });
    }
  };
}
