export { type Attempt, attemptOf } from './attempt.ts';
export { STEP_MM } from './bead-summary.ts';
export { compare, type Sense } from './compare.ts';
export { endSentences } from './ends-words.ts';
export { HEAT_INPUT_RULE } from './figures.ts';
export { measureName, plateName, said, toeName } from './names.ts';
export { judgeAttempt, type ScoreOptions, scoreAttempt } from './score-attempt.ts';
export { CAUTIONS, NOT_MODELLED } from './statements.ts';
