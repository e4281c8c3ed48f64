import type { Attack } from './attack.ts';
import { hostileText } from './hostile-text.ts';

/** Every class of attack, in the order of the table. */
export const attacks: readonly Attack[] = [hostileText];
