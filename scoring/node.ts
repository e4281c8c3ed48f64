/** What of scoring needs Node: folders on worker threads, class sheets, reports as PDF and PNG. The rest is in index.ts and runs anywhere. */

export * from './batch/index.ts';
export * from './report/node.ts';
export * from './sheet/index.ts';
