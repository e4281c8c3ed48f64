import type { Logger } from 'pino';
import type { AttemptFiles } from './attempt-files.ts';
import type { Versions } from './judge.ts';
import type { Metrics } from './metrics.ts';
import type { Papers } from './papers.ts';
import type { LabQueue } from './queue.ts';
import type { Sessions } from './sessions.ts';
import type { Store } from './store.ts';

/** What the routes work with. */
export interface Parts {
  store: Store;
  files: AttemptFiles;
  queue: LabQueue;
  sessions: Sessions;
  versions: Versions;
  log: Logger;
  metrics: Metrics;
  papers: Papers;
  settings: Settings;
  /** Something was just queued. */
  queued(): void;
}

export interface Settings {
  /** Asked for by the page that makes the first instructor; printed where the lab was started. */
  setupCode: string;
  /** What scoring workers on other machines show; null: there are none. */
  workerToken: string | null;
  /** Requests come through a reverse proxy of the school's, which says who asks and whether by https. */
  behindProxy: boolean;
  /** Served over https by this process. */
  https: boolean;
  /** Most requests of one person. */
  requestsAMinute: number;
  /** Days that attempts are kept; null: for ever. */
  keepDays: number | null;
}
