export { applyChange } from './apply.ts';
export { ENOUGH, type ProveOptions, proveAdvice, RERUNS } from './prove-advice.ts';
export { changeSaid } from './sentences.ts';
export { steps } from './steps.ts';
