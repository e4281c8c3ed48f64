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

/** A length or speed as it stands in a sentence, alone or as a range: "6 mm", "10 to 16 mm", "−0,4 mm", "4,6 m/min". Not "12 mm²". */
const METRIC =
  /(?<![\d.,])([-−]?\d+(?:[.,]\d+)?)(?:( to | bis )([-−]?\d+(?:[.,]\d+)?))?[ \u00a0](mm\/s|m\/min|mm)(?![\p{L}²³/])/gu;

/** A sentence with inches beside every metric value it says with its unit; values without a unit stay as they are. */
export function withInches(text: string, language: Language): string {
  return text.replace(METRIC, (whole, from: string, to: string | undefined, last: string | undefined, unit: string) => {
    const [first, beyond] = [from, last].map((x) => (x === undefined ? null : metric(x)));
    const said = inInches(beyond ?? first!, unit as MetricUnit, language);
    if (beyond === null) return `${whole} (${said})`;
    const low = inInches(first!, unit as MetricUnit, language).replace(/ .*$/, '');
    return `${whole} (${low}${to}${said})`;
  });
}

function metric(text: string): number {
  return Number(text.replace(',', '.').replace('−', '-'));
}

/** The same in every sentence of a part of a paper; what is no text stays as it is. */
export function allWithInches<T>(part: T, language: Language): T {
  if (typeof part === 'string') return withInches(part, language) as T;
  if (Array.isArray(part)) return part.map((one: unknown) => allWithInches(one, language)) as T;
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([key, one]) => [key, allWithInches(one, language)])) as T;
}
