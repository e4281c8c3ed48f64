#!/usr/bin/env node
import { whyNot } from '../files.ts';
import { run } from './run.ts';

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // A reader that has seen enough (head, less) closes the pipe; that is no fault.
  if (error.code === 'EPIPE') return;
  process.stderr.write(`standard output: found ${whyNot(error)}, allowed: a place that can be written to\n`);
  process.exit(2);
});

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  live: process.stderr.isTTY === true,
});
