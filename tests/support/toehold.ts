import { run } from '../../scoring/node/cli/run.ts';

/** Runs the command line in this process: its exit code, and what it said on either channel. */
export async function toehold(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const code = await run(args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}
