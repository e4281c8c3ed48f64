/** Made once: a formatter costs more to make than to use, and a shelf may hold hundreds of dates. */
const DAY_AND_TIME = new Intl.DateTimeFormat([], { dateStyle: 'medium', timeStyle: 'short' });
const TIME = new Intl.DateTimeFormat([], { hour: '2-digit', minute: '2-digit' });

/** Date and time of day as the reader's language has them. */
export function dayAndTime(ms: number): string {
  return DAY_AND_TIME.format(ms);
}

export function timeOfDay(ms: number): string {
  return TIME.format(ms);
}
