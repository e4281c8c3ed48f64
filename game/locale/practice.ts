import { whole } from './numbers.ts';

/** Words of what is practised beside attempts: judging oneself, drills, retention, naming a fault. */
export const practiceWords = {
  rootInDoubt: (percent: number) => `, ${whole(percent)} % too close to tell`,
};
