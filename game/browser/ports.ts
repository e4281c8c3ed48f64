import type { Ports } from '../core/ports.ts';
import { browserClock } from './clock.ts';
import { browserFiles } from './files.ts';
import { attemptStore, couponStore } from './stores/attempts.ts';
import { preferenceStore } from './stores/preferences.ts';
import { openBench } from './worker/open-bench.ts';

export const browserPorts: Ports = {
  clock: browserClock,
  openBench,
  attempts: attemptStore,
  coupons: couponStore,
  preferences: preferenceStore,
  files: browserFiles,
  newId: () => crypto.randomUUID(),
};
