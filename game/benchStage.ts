import { computed, signal } from '@preact/signals';
import { busy, finished, robotWelding, shownTime, torchState } from './state.ts';

/**
 * What the screen is for just now: a bare piece waits (rest), the arc burns or may be struck again (weld), the finished piece is read
 * (read), or a moment of it is looked at again (replay).
 */
export type BenchStage = 'rest' | 'weld' | 'read' | 'replay';

export const benchStage = computed<BenchStage>(() => {
  const torch = torchState.value;
  if (torch === 'welding' || torch === 'out' || robotWelding.value) return 'weld';
  if (finished.value && shownTime.value !== null) return 'replay';
  return torch === 'idle' && !finished.value && !busy.value ? 'rest' : 'read';
});

/** CSS pixels per millimetre the hand steers at: the whole joint's scale. */
export const steeredScale = signal(1);
