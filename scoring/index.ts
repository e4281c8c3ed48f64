/** Scoring: reads attempts, measures bead and hand, judges against acceptance profiles, and says what to change first. */

export * from './bead/index.ts';
export * from './draw/index.ts';
export * from './exercises/ready.ts';
export * from './hand/index.ts';
export * from './macro/index.ts';
export * from './papers/index.ts';
export * from './profiles/ready.ts';
export * from './range/index.ts';
export * from './schema/index.ts';
export * from './score/index.ts';
export * from './trials/index.ts';
