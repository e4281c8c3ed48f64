import { signal } from '@preact/signals-core';
import type { LensStage } from './lensStage.ts';

/** The close view on the page, or null while there is none: it may come later than the joint, and the joint does without it. */
export const lensAtHand = signal<LensStage | null>(null);
