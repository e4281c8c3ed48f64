import type { Ports } from '../core/ports.ts';
import { browserClock } from './clock.ts';
import { browserFiles } from './files.ts';
import { newId } from './new-id.ts';
import { browserPapers } from './papers.ts';
import { browserPersistence } from './persistence.ts';
import { indexedDbStores } from './stores/indexed-db.ts';
import { preferenceStore } from './stores/preferences.ts';
import { browserTabs } from './tabs.ts';
import { openBench } from './worker/open-bench.ts';
import { hands, openHand } from './worker/open-hand.ts';

/** The browser, as the core sees it. */
export const browserPorts: Ports = {
  clock: browserClock,
  openBench,
  openHand,
  hands,
  papers: browserPapers,
  ...indexedDbStores(),
  preferences: preferenceStore,
  files: browserFiles,
  tabs: browserTabs,
  persistence: browserPersistence,
  newId,
};
