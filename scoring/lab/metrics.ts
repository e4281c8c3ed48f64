import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';

/** What the lab counts, for Prometheus. */
export interface Metrics {
  registry: Registry;
  requests: Histogram<'method' | 'route' | 'status'>;
  accepted: Counter;
  repeated: Counter;
  scored: Counter<'written'>;
  scoring: Histogram;
  faults: Counter;
  waiting: Gauge;
}

export function newMetrics(): Metrics {
  const registry = new Registry();
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  return {
    registry,
    requests: new Histogram({
      name: 'lab_request_seconds',
      help: 'Time to answer a request',
      labelNames: ['method', 'route', 'status'],
      buckets: [0.005, 0.02, 0.1, 0.5, 2, 10],
      registers,
    }),
    accepted: new Counter({ name: 'lab_attempts_accepted_total', help: 'Attempts handed in and on disk', registers }),
    repeated: new Counter({
      name: 'lab_attempts_repeated_total',
      help: 'Uploads of what was there already',
      registers,
    }),
    scored: new Counter({
      name: 'lab_attempts_scored_total',
      help: 'Attempts scored by this process; written "no": another was first',
      labelNames: ['written'],
      registers,
    }),
    scoring: new Histogram({
      name: 'lab_scoring_seconds',
      help: 'Time to weld and judge an attempt',
      buckets: [0.25, 0.5, 1, 2, 5, 10, 30, 120, 600],
      registers,
    }),
    faults: new Counter({ name: 'lab_scoring_faults_total', help: 'Times scoring broke off', registers }),
    waiting: new Gauge({ name: 'lab_queue_waiting', help: 'Attempts waiting to be scored', registers }),
  };
}
