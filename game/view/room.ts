import { signal } from '@preact/signals-core';

const asked = matchMedia('(prefers-color-scheme: dark)');

/** The user's system asks for dark pages; the room then stays dark when the arc goes out, and only the metal is lit. */
export const prefersDark = signal(asked.matches);
asked.addEventListener('change', (event) => {
  prefersDark.value = event.matches;
});
