import { MM_PER_INCH } from '../lines/limit.ts';
import type { Language } from './language.ts';
import { wordsIn } from './words.ts';

/** Units that inches stand beside, and what they become. */
const BESIDE = {
  mm: { factor: 1 / MM_PER_INCH, unit: 'in', decimals: 3 },
  'mm/s': { factor: 60 / MM_PER_INCH, unit: 'in/min', decimals: 1 },
  'm/min': { factor: 1000 / MM_PER_INCH, unit: 'in/min', decimals: 0 },
} as const;
/** A metric unit that an imperial one can stand beside. */
export type MetricUnit = keyof typeof BESIDE;

/** A length, travel or wire speed in inches, as it is said beside the metric value: 0.236 in, 4.5 in/min, 185 in/min. Files keep millimetres. */
export function inInches(x: number, unit: MetricUnit, language: Language): string {
  const { factor, unit: said, decimals } = BESIDE[unit];
  return `${wordsIn(language).said(x * factor, decimals)} ${said}`;
}
