/** Scoring: reads attempts, measures bead and hand, judges against acceptance profiles, and says what to change first. */

export * from './bead/index.ts';
export * from './draw/index.ts';
export * from './exercises/index.ts';
export * from './hand/index.ts';
export * from './profiles/index.ts';
export * from './prove/index.ts';
export * from './range/index.ts';
export * from './real/index.ts';
export * from './report/index.ts';
export * from './schema/index.ts';
export * from './score/index.ts';
