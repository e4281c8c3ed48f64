import { computed } from '@preact/signals';
import { dark, finished } from '../page.ts';
import { prefersDark } from '../view/room.ts';

/** The page is dark: under the lens, or because the user wants it so. In a replay only the joint goes dark: the rest is being read. */
export const darkPage = computed(() => prefersDark.value || (dark.value && finished.value === null));
/** The joint's own pane is dark. */
export const darkPane = computed(() => prefersDark.value || dark.value);
