/** Scoring: reads attempts, measures bead and hand, judges against acceptance profiles, and says what to change first. */

export * from './exercises/index.ts';
export * from './profiles/index.ts';
export * from './schema/index.ts';
