import { computed, signal } from '@preact/signals';
import { dark, finished } from './state.ts';

const asked = typeof matchMedia === 'function' ? matchMedia('(prefers-color-scheme: dark)') : null;

/** The user's system asks for dark pages; the room then stays dark when the arc goes out, and only the metal is lit. */
export const prefersDark = signal(asked?.matches ?? false);
asked?.addEventListener('change', (event) => {
  prefersDark.value = event.matches;
});

/** The page is dark: under the lens, or because the user wants it so. In a replay only the joint goes dark: the rest is being read. */
export const darkPage = computed(() => prefersDark.value || (dark.value && finished.value === null));
/** The joint's own pane is dark. */
export const darkPane = computed(() => prefersDark.value || dark.value);
