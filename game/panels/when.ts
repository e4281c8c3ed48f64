import { language } from '../locale/language.ts';

/** A formatter costs more to make than to use, and a shelf may hold hundreds of dates: made once a language. */
const made = new Map<string, { day: Intl.DateTimeFormat; time: Intl.DateTimeFormat }>();

function formatters() {
  const { value } = language;
  let found = made.get(value);
  if (found === undefined) {
    // Of the browser's own languages the one that is that on screen, so that an English page keeps the dates of its country.
    const tag = globalThis.navigator?.languages?.find((asked) => asked.startsWith(value)) ?? value;
    found = {
      day: new Intl.DateTimeFormat(tag, { dateStyle: 'medium', timeStyle: 'short' }),
      time: new Intl.DateTimeFormat(tag, { hour: '2-digit', minute: '2-digit' }),
    };
    made.set(value, found);
  }
  return found;
}

/** Date and time of day as the reader's language has them. */
export function dayAndTime(ms: number): string {
  return formatters().day.format(ms);
}

export function timeOfDay(ms: number): string {
  return formatters().time.format(ms);
}
