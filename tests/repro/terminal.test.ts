import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const MAIN = fileURLToPath(new URL('../../scoring/node/cli/main.ts', import.meta.url));
const FULL = '/dev/full';

describe('bugs of the command line that were mended and stay mended', () => {
  // Linux has a device that is always full; elsewhere there is nothing to try it with.
  it.runIf(existsSync(FULL))(
    'a full disk behind the output was answered with a stack and the code of a bead outside its limits',
    () => {
      const full = openSync(FULL, 'w');
      const said = spawnSync(process.execPath, ['--import', 'tsx', MAIN, 'schema', 'profile'], {
        stdio: ['ignore', full, 'pipe'],
        encoding: 'utf8',
      });
      closeSync(full);
      expect(said.stderr).toBe(
        'standard output: found no space left on the disk, allowed: a place that can be written to\n',
      );
      expect(said.status).toBe(2);
    },
  );
});
