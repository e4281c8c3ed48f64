import type { Tabs } from '../core/ports.ts';

const NAME = 'toehold-shelf';

/** Tells other tabs that the store has changed; where there are no channels, by a mark in local storage, whose changes every other tab hears. */
export const browserTabs: Tabs = typeof BroadcastChannel === 'undefined' ? byStorage() : byChannel();

function byChannel(): Tabs {
  const channel = new BroadcastChannel(NAME);
  return {
    tell: () => channel.postMessage(null),
    hear: (changed) => channel.addEventListener('message', () => changed()),
  };
}

function byStorage(): Tabs {
  return {
    tell() {
      try {
        localStorage.setItem(NAME, String(Date.now()));
      } catch {
        // A browser that keeps nothing has nothing to tell.
      }
    },
    hear: (changed) =>
      window.addEventListener('storage', (event) => {
        if (event.key === NAME) changed();
      }),
  };
}
