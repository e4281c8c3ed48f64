/** Real coupons against the model: `npx tsx tests/studies/validity/coupons.ts coupons.csv`. See README.md, protocol 2. */
import { type PlusMinusName, plusMinusAt } from '../../../scoring/measures/precision.ts';
import { fail, numberIn, readRows } from './csv.ts';
import { deviation, mean } from './statistics.ts';

/** Measures of the sheet and the plus-minus each claims. */
const measures: Record<string, PlusMinusName> = {
  legA_mm: 'leg',
  legB_mm: 'leg',
  convexity_mm: 'convexity',
  rootFusion_mm: 'root fusion',
};

const rows = readRows(process.argv[2], ['coupon', 'cut_mm', 'measure', 'reader1', 'reader2', 'toehold']);
for (const [i, row] of rows.entries()) {
  if (!((row.measure ?? '') in measures)) {
    fail(`row ${i + 2}, measure: found ${JSON.stringify(row.measure)}, allowed: ${Object.keys(measures).join(', ')}`);
  }
}
for (const [measure, name] of Object.entries(measures)) {
  const of = rows.map((row, i) => ({ row, line: i + 2 })).filter(({ row }) => row.measure === measure);
  if (of.length === 0) continue;
  const read = of.map(({ row, line }) => [numberIn(row, 'reader1', line), numberIn(row, 'reader2', line)] as const);
  const off = of.map(({ row, line }, i) => numberIn(row, 'toehold', line) - (read[i]![0] + read[i]![1]) / 2);
  const apart = read.map(([a, b]) => a - b);
  // Two readers: the spread of one reading is that of their difference over root two.
  const readers = deviation(apart) / Math.SQRT2;
  const claim = plusMinusAt(name, 0.75);
  const room = Math.sqrt(claim * claim + readers * readers);
  const inside = off.filter((d) => Math.abs(d) <= room).length / off.length;
  const stands = Math.abs(mean(off)) <= claim && inside >= 0.8;
  process.stdout.write(
    `${measure}: ${of.length} cuts; readers ${readers.toFixed(2)} apart (sd); model off by ${mean(off).toFixed(2)} on the mean, ${deviation(off).toFixed(2)} spread; ` +
      `${(100 * inside).toFixed(0)} % inside ±${room.toFixed(2)}; ${stands ? 'stands' : 'does not stand'}\n`,
  );
}
