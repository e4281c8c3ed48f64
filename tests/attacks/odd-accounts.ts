import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { createRandom } from '../../engine/index.ts';
import { type AttemptRecording, jsonSchema, judgeAttempt } from '../../scoring/index.ts';
import { reportLines } from '../../scoring/words/result.ts';
import { byMouse, seen, weld } from '../scoring/welds.ts';
import type { Attack, Try } from './attack.ts';

const ODD = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e300, 0.002, 1e-12, 0, 0.5] as const;

let recordings: AttemptRecording[] | null = null;
let fits: ValidateFunction | null = null;

/** What the engine could be wrong about, made wrong: the result still fits its own format and reads nothing off open accounts. */
export const oddAccounts: Attack = {
  name: 'odd accounts',
  says: 'accounts of a weld with shares and sums that are no number, endless or too large, with and without an exercise; the result as JSON fits its own schema by another validator, and nothing is read, advised or printed where accounts are open',
  share: 60,
  whole: 2000,
  tries: (n): Try => {
    recordings ??= [8, 16].map((length_mm) =>
      weld({ joint: { length_mm: 30 }, weave: { length_mm, shelf_s: 0 }, ...byMouse(10) }),
    );
    fits ??= new Ajv2020({ strict: false }).compile(jsonSchema('result'));
    const random = createRandom(n + 1);
    const pick = (): number => ODD[Math.min(ODD.length - 1, Math.floor(random.next() * ODD.length))]!;
    const recording = recordings[n % 2]!;
    const attempt = seen(recording);
    const sound = attempt.accounts;
    const odd = Object.entries(sound).map(([key, sum]) => [
      key,
      typeof sum === 'number' && random.next() < 0.3 ? pick() : sum,
    ]);
    const accounts = Object.fromEntries(odd) as typeof sound;
    const sums = Object.values(accounts).filter((sum) => typeof sum === 'number');
    const open = !(accounts.energyError <= 1e-3 && accounts.massError <= 1e-6) || !sums.every(Number.isFinite);
    const result = judgeAttempt(n % 5 === 0 ? { ...recording, exercise: null } : recording, { ...attempt, accounts });
    const faults: string[] = [];
    if (!fits(JSON.parse(JSON.stringify(result)))) faults.push(`does not fit: ${JSON.stringify(fits.errors?.[0])}`);
    if (open) {
      if (result.lines.length + result.advice.length + result.bead.stations.length > 0)
        faults.push('something is read off open accounts');
      if (result.verdict !== 'no verdict') faults.push(result.verdict);
      if (/First:|legs|Hand:|Machine:|Metal:/.test(reportLines(result, 'tee').join('\n')))
        faults.push('something is printed of open accounts');
    }
    return { inputs: 1, faults };
  },
};
