/**
 * Twenty settings that nothing was tuned on, at 0.75, 0.5 and 0.375 mm cells (the finest that options allow): how far the readings of a settled run
 * still move. Drawn from a seed before the first of them was welded; `npm run study:held-out` writes HELD-OUT.md.
 */

import { writeFileSync } from 'node:fs';
import { chanceOf } from '../../support/chance.ts';
import { type Summary, summarise, type TendencyCase } from '../../tendencies/summary.ts';

const SEED = 20261127;
const CELLS = [0.75, 0.5, 0.375];
const COUNT = 20;
/** One in four is a straight run. */
const STRAIGHT_EVERY = 4;
const WIRES = [0.8, 0.9, 1.0] as const;
const WOVEN = ['inverted-v', 'triangle', 'zigzag', 'crescent'] as const;

export const READINGS = ['legA', 'legB', 'throat', 'convexity', 'root'] as const;
type Reading = (typeof READINGS)[number];

export interface HeldOut {
  name: string;
  woven: boolean;
  case: TendencyCase;
}

export function heldOut(): HeldOut[] {
  const chance = chanceOf(SEED);
  const between = (from: number, to: number, step: number): number =>
    Math.round((from + (to - from) * chance()) / step) * step;
  const one = <T>(list: readonly T[]): T => list[Math.floor(chance() * list.length)]!;
  return Array.from({ length: COUNT }, (_, n) => {
    const woven = n % STRAIGHT_EVERY !== STRAIGHT_EVERY - 1;
    const kind = one(['tee', 'lap'] as const);
    const plate_mm = between(5, 9, 0.5);
    const wire_mm = one(WIRES);
    // The thinner the wire, the faster it runs for the same metal.
    const feed_mpmin = Math.round((between(4, 5.6, 0.1) * 0.81 * 10) / wire_mm ** 2) / 10;
    const volts_V = between(17, 20.5, 0.5);
    const travel_mmps = woven ? between(1.6, 2.4, 0.1) : between(2.4, 3.2, 0.1);
    const pattern = woven ? one(WOVEN) : 'straight';
    const pause_s = between(0.1, 0.4, 0.05);
    return {
      name: `${kind} ${plate_mm}, ${wire_mm} wire, ${volts_V} V, ${feed_mpmin} m/min, ${travel_mmps.toFixed(1)} mm/s, ${pattern}`,
      woven,
      case: {
        joint: { kind, plateA_mm: plate_mm, plateB_mm: plate_mm, length_mm: 44 },
        process: { wire_mm, feed_mpmin, volts_V },
        weave: {
          pattern,
          travel_mmps,
          width_mm: between(4, 6, 0.5),
          pauseA_s: pause_s,
          pauseB_s: pause_s,
          cyclesPerSecond: between(0.8, 1.2, 0.1),
        },
        between: [14, 32],
      },
    };
  });
}

export interface Moved {
  name: string;
  woven: boolean;
  /** By reading, at each cell. */
  values: Record<Reading, number[]>;
  faceWidth: number;
}

export function weldAll(said: (line: string) => void = () => undefined): Moved[] {
  return heldOut().map(({ name, woven, case: c }) => {
    const at = CELLS.map((cell) => summarise(c, cell));
    const values = Object.fromEntries(READINGS.map((r) => [r, at.map((s: Summary) => s[r])])) as Moved['values'];
    const moved = { name, woven, values, faceWidth: at[0]!.faceWidth };
    said(line(moved));
    return moved;
  });
}

const line = ({ name, values }: Moved): string =>
  `| ${name} | ${READINGS.map((r) => values[r].map((x) => x.toFixed(2)).join(' ')).join(' | ')} |`;

/** Worst and root-mean-square move of each reading from the working cell to the finest. */
export function moves(rows: readonly Moved[]): { reading: Reading; worst: number; rms: number }[] {
  return READINGS.map((reading) => {
    const d = rows.map(({ values }) => values[reading][0]! - values[reading].at(-1)!);
    return {
      reading,
      worst: Math.max(...d.map(Math.abs)),
      rms: Math.sqrt(d.reduce((sum, x) => sum + x * x, 0) / d.length),
    };
  });
}

function page(rows: readonly Moved[]): string {
  const summary = (title: string, of: readonly Moved[]): string[] => [
    `| ${title} (${of.length}) | ${moves(of)
      .map(({ worst, rms }) => `${worst.toFixed(2)} / ${rms.toFixed(2)}`)
      .join(' | ')} |`,
  ];
  const head = `| ${READINGS.join(' | ')} |`;
  return `${[
    '# Twenty settings kept apart',
    '',
    `Drawn from seed ${SEED}; nothing was tuned on them. Means over 14 to 32 mm of 44 mm runs, mm, at cells of ${CELLS.join(', ')} mm. Made by \`npm run study:held-out\`.`,
    '',
    `| worst / rms move from ${CELLS[0]} to ${CELLS.at(-1)} mm ${head}`,
    '|---|---|---|---|---|---|',
    ...summary(
      'woven',
      rows.filter((r) => r.woven),
    ),
    ...summary(
      'straight',
      rows.filter((r) => !r.woven),
    ),
    '',
    `| weld, at ${CELLS.join(' ')} mm ${head}`,
    '|---|---|---|---|---|---|',
    ...rows.map(line),
  ].join('\n')}\n`;
}

if (process.argv[1]?.endsWith('held-out.ts')) {
  const text = page(weldAll((said) => process.stdout.write(`${said}\n`)));
  process.stdout.write(text);
  writeFileSync(new URL('HELD-OUT.md', import.meta.url), text);
}
