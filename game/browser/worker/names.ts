/** What a Worker is named says what it is for. */
export const BENCH = 'toehold-bench';
export const HAND = 'toehold-hand';
