// A thread that draws papers. The lab runs from its sources, and a thread has to be taught TypeScript first.
import { register } from 'tsx/esm/api';

register();
const { classPaperOf } = await import('./class-paper-of.ts');
export default classPaperOf;
