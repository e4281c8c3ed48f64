export { type Span, spanBetween, Trace } from '../attempt/trace.ts';
export { type HandQuestion, type HandReading, readHand } from '../measures/hand/motion.ts';
