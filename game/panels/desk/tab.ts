import { signal } from '@preact/signals';

export type DeskTab = 'class' | 'exercise' | 'coupon' | 'trainees' | 'guide';

/** Which sheet of the desk lies on top. */
export const deskTab = signal<DeskTab>('class');
