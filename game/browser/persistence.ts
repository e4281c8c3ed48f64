import type { Persistence } from '../core/ports.ts';

/** Browsers let a page ask for this only where it was served securely or locally; on a school's plain http there is no such thing. */
export const browserPersistence: Persistence = {
  granted: async () => (await navigator.storage?.persisted?.().catch(() => null)) ?? null,
  ask: async () => (await navigator.storage?.persist?.().catch(() => null)) ?? null,
};
