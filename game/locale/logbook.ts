import { counted as many, twoDecimals, whole } from './numbers.ts';

/** Words of the logbook: every attempt of one hand, measure by measure. */
export const logbookWords = {
  list: 'Attempts',
  title: 'Logbook',
  none: 'Nothing to draw yet: the logbook shows attempts of your own hand that were judged.',
  exercise: 'Exercise',
  sum: (attempts: number, within: number) => `${many(attempts, 'attempt', 'attempts')}, ${whole(within)} within.`,
  best: (when: string) => `Best so far: ${when}.`,
  noBest: 'None within yet.',
  bestIs: 'Best is the attempt within its limits with the highest trend number.',
  trend: 'trend number',
  trendIs: 'Of 100, for your own line over attempts at this exercise, nothing else.',
  last: (reading: number, plusMinus: number, unit: string) =>
    `${twoDecimals(reading)} ± ${twoDecimals(plusMinus)} ${unit}`,
  limit: {
    'at most': (x: number, unit: string) => `at most ${x} ${unit}`,
    'at least': (x: number, unit: string) => `at least ${x} ${unit}`,
  },
  openIt: (name: string, reading: number) => `${name} ${twoDecimals(reading)}: open this attempt`,
  chart: (name: string, readings: string) => `${name}, oldest first: ${readings}`,
  key: 'Oldest left, newest right. A bar is the reading with its plus-minus, the worst of the attempt; the line is the limit. Click a bar to open its attempt.',
  save: 'Save the logbook as a file',
  take: 'Take in a logbook file',
  taken: (added: number, known: number) =>
    `${many(added, 'attempt', 'attempts')} taken in${known > 0 ? `, ${whole(known)} here already and left as they were` : ''}.`,
  bad: (n: number) => `${many(n, 'record', 'records')} could not be read and ${n === 1 ? 'was' : 'were'} left out:`,
  leftOut: (n: number) =>
    `${many(n, 'record is', 'records are')} damaged and not in the saved logbook; the list names them, and each can be saved as it is.`,
};
