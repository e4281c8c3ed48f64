/** `npm run attacks`: carries out every attack whole and writes the table of README.md. Faults are named and leave with 1. */
import { readFileSync, writeFileSync } from 'node:fs';
import { ENGINE_VERSION } from '../../engine/index.ts';
import { SCORING_VERSION } from '../../scoring/version.ts';
import { carriedOut, type Outcome } from './attack.ts';
import { attacks } from './attacks.ts';
import { README, withTable } from './table.ts';

const only = process.argv.slice(2);
const outcomes: Outcome[] = [];
for (const attack of attacks) {
  if (only.length > 0 && !only.includes(attack.name)) continue;
  const outcome = await carriedOut(attack, attack.whole);
  outcomes.push(outcome);
  for (const fault of outcome.faults) process.stderr.write(`${fault}\n`);
  process.stdout.write(`${attack.name}: ${outcome.inputs} inputs, ${outcome.faults.length} faults\n`);
}
if (only.length === 0)
  writeFileSync(README, withTable(readFileSync(README, 'utf8'), outcomes, ENGINE_VERSION, SCORING_VERSION));
if (outcomes.some((o) => o.faults.length > 0)) process.exitCode = 1;
