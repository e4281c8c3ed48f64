/** Form of the data sets and of the table of trends in this folder. A cell keeps the digits of the page: "3.0~3.5" is a range, "0.9, 1.0" a choice. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { GASES } from '../../../engine/index.ts';

const text = z.string().min(1);
const address = z.string().regex(/^https?:\/\/\S+$/);
const cell = z.string().regex(/^-?\d+(\.\d+)?((~|, )\d+(\.\d+)?)*$/);
const UNITS = ['mm', 'in', 'A', 'V', 'cm/min', 'm/min', 'in/min', 'in/min/A', 'l/min', '1'] as const;

const column = z.strictObject({
  key: z.string().regex(/^[a-z_]+$/),
  unit: z.enum(UNITS),
  role: z.enum(['setting', 'outcome']),
  meaning: text,
});

const outsideSet = z.strictObject({
  name: z.string().regex(/^[a-z0-9-]+$/),
  title: text,
  /** Single measurements, a curve fitted to them, or what a maker recommends: only the first two are evidence of what happened. */
  evidence: z.enum(['measured', 'fit', 'recommended']),
  joint: z.enum(['bead on plate', 'wall of stacked layers', 'tee fillet', 'lap fillet', 'square butt', 'any']),
  position: z.enum(['flat', 'horizontal', 'vertical up', 'vertical down', 'not stated', 'any']),
  source: z.strictObject({
    authors: text,
    title: text,
    year: z.number().int().min(1900).max(2100).nullable(),
    place: text,
    address,
    read: text,
    not_read: text,
  }),
  process: z.strictObject({
    wire: text,
    gas: text,
    gas_nearest: z.enum([...(Object.keys(GASES) as [string, ...string[]]), 'not stated']),
    transfer: text,
  }),
  formula: text.optional(),
  columns: z.array(column).min(2),
  rows: z.array(z.record(z.string(), cell)).min(1),
  spread: text,
  notes: text,
  can_test: text,
  /** Which of the numbers the model or its checks already knew when the set was entered; the rest can be predicted blind. */
  used_before: text,
});
export type OutsideSet = z.infer<typeof outsideSet>;

const OUTCOMES = ['amps', 'penetration', 'width', 'reinforcement', 'convexity'] as const;
const sign = z.enum(['up', 'down', 'none', 'peak', 'open']);
const trend = z.strictObject({
  expect: sign,
  size: text.nullable(),
  sources: z.union([
    z.literal('common practice, no source'),
    z.array(z.strictObject({ document: text, address, process: text, says: sign, text })).min(1),
  ]),
});
const trendTable = z.strictObject({
  about: text,
  knobs: z.array(
    z.strictObject({
      knob: z.string().regex(/^[a-z0-9_]+$/),
      change: text,
      held: text,
      note: text.optional(),
      outcomes: z.strictObject(
        Object.fromEntries(OUTCOMES.map((name) => [name, trend])) as Record<(typeof OUTCOMES)[number], typeof trend>,
      ),
    }),
  ),
});

const here = fileURLToPath(new URL('.', import.meta.url));
const read = (file: string): unknown => JSON.parse(readFileSync(here + file, 'utf8'));

export const setNames = () =>
  readdirSync(here)
    .filter((file) => file.endsWith('.json') && file !== 'trends.json')
    .map((file) => file.slice(0, -'.json'.length));
export const readSet = (name: string): OutsideSet => outsideSet.parse(read(`${name}.json`));
export const readTrends = () => trendTable.parse(read('trends.json'));

/** Ends of a cell: of a range or a choice its least and greatest, of a single number twice the same. */
export function ends(printed: string): { low: number; high: number } {
  const numbers = printed.split(/~|, /).map(Number);
  return { low: Math.min(...numbers), high: Math.max(...numbers) };
}
