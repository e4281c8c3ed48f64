import { language } from './language.ts';

const separators = new Map<string, string>();
const rules = new Map<string, Intl.PluralRules>();

/** What stands between units and tenths in the language on screen. */
function decimalSeparator(): string {
  const { value } = language;
  let found = separators.get(value);
  if (found === undefined) {
    found = new Intl.NumberFormat(value).formatToParts(1.5).find((part) => part.type === 'decimal')?.value ?? '.';
    separators.set(value, found);
  }
  return found;
}

/**
 * Numbers as they stand on the page: a real minus sign, fixed decimals, no thousands. Rounded as files and papers round them, so that screen and
 * paper never part by a last digit; only the separator is the language's.
 */
export function fixed(x: number, decimals: number): string {
  const text = Math.abs(x).toFixed(decimals);
  const signed = x < 0 && Number(text) !== 0 ? `−${text}` : text;
  return signed.replace('.', decimalSeparator());
}

export function whole(x: number): string {
  return fixed(x, 0);
}

export function oneDecimal(x: number): string {
  return fixed(x, 1);
}

export function twoDecimals(x: number): string {
  return fixed(x, 2);
}

export function seconds(x: number): string {
  return `${fixed(x, 2)} s`;
}

/** At most `decimals`, trailing zeros dropped: settings read as people say them. */
export function trimmed(x: number, decimals: number): string {
  const text = fixed(x, decimals);
  return decimals > 0 ? text.replace(/[.,]?0+$/, '') : text;
}

/** "1 file", "3 files": number and noun, in the form that the language has for it. */
export function counted(n: number, one: string, other: string): string {
  return `${whole(n)} ${plural(n, one, other)}`;
}

/** One of two forms. Languages with more of them want more arguments. */
export function plural(n: number, one: string, other: string): string {
  const { value } = language;
  let rule = rules.get(value);
  if (rule === undefined) {
    rule = new Intl.PluralRules(value);
    rules.set(value, rule);
  }
  return rule.select(n) === 'one' ? one : other;
}
