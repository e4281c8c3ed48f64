/** What of scoring needs Node: folders on worker threads, class sheets, reports as PDF and PNG. The rest is in index.ts and runs anywhere. */

export * from '../class/index.ts';
export * from '../papers/node.ts';
export * from './batch-index.ts';
