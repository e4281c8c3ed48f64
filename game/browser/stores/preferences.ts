import type { PreferenceStore } from '../../core/ports.ts';

const KEY = 'toehold-preferences-1';

/** Preferences in the browser's local storage. */
export const preferenceStore: PreferenceStore = {
  load() {
    try {
      return JSON.parse(localStorage.getItem(KEY) ?? 'null');
    } catch {
      return null;
    }
  },
  save(preferences) {
    try {
      localStorage.setItem(KEY, JSON.stringify(preferences));
    } catch {
      // A browser that keeps nothing still welds; the settings only last until the page closes.
    }
  },
};
