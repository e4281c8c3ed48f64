#!/usr/bin/env node
import { run } from './run.ts';

// A reader that has seen enough (head, less) closes the pipe; that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  live: process.stderr.isTTY === true,
});
