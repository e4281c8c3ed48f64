// A scoring thread. The lab runs from its sources, and a thread has to be taught TypeScript first.
import { register } from 'tsx/esm/api';

register();
const { scoreOne } = await import('./score-one.ts');
export default scoreOne;
