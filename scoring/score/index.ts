export { type Attempt, attemptOf } from '../attempt/attempt.ts';
export { compare, type Sense } from '../lines/compare.ts';
export { STEP_MM } from '../measures/bead/summary.ts';
export { HEAT_INPUT_RULE } from '../measures/process.ts';
export { judgeAttempt, type ScoreOptions, scoreAttempt } from '../score.ts';
export { endSentences } from '../words/ends.ts';
export { measureName, plateName, said, toeName } from '../words/names.ts';
export { CAUTIONS, NOT_MODELLED } from '../words/statements.ts';
