export { type HandQuestion, type HandReading, readHand } from './motion.ts';
export { type Span, spanBetween, Trace } from './trace.ts';
