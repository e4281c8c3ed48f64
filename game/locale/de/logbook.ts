import type { logbookWords as english } from '../logbook.ts';
import { counted, fixed, plural, twoDecimals, whole } from '../numbers.ts';

/** Words of the logbook: every attempt of one hand, measure by measure. */
export const logbookWords: typeof english = {
  list: 'Versuche',
  title: 'Logbuch',
  none: 'Noch nichts zu zeichnen: das Logbuch zeigt bewertete Versuche der eigenen Hand.',
  exercise: 'Übung',
  sum: (attempts, within) => `${counted(attempts, 'Versuch', 'Versuche')}, ${whole(within)} innerhalb.`,
  best: (when) => `Bester bisher: ${when}.`,
  noBest: 'Noch keiner innerhalb.',
  bestIs: 'Bester ist der Versuch innerhalb seiner Grenzwerte mit der höchsten Verlaufszahl.',
  trend: 'Verlaufszahl',
  trendIs: 'Von 100, für die eigene Linie über Versuche an dieser Übung, sonst nichts.',
  last: (reading, plusMinus, unit) => `${twoDecimals(reading)} ± ${twoDecimals(plusMinus)} ${unit}`,
  limit: {
    'at most': (x, unit) => `höchstens ${plain(x)} ${unit}`,
    'at least': (x, unit) => `mindestens ${plain(x)} ${unit}`,
  },
  openIt: (name, reading) => `${name} ${twoDecimals(reading)}: diesen Versuch öffnen`,
  chart: (name, readings) => `${name}, älteste zuerst: ${readings}`,
  key: 'Links die ältesten, rechts die neuesten. Ein Balken ist der Messwert mit seinem Plus-Minus, der schlechteste des Versuchs; die Linie ist der Grenzwert. Ein Klick auf den Balken öffnet seinen Versuch.',
  save: 'Logbuch als Datei sichern',
  take: 'Logbuchdatei aufnehmen',
  taken: (added, known) =>
    `${counted(added, 'Versuch', 'Versuche')} aufgenommen${known > 0 ? `, ${whole(known)} schon hier und gelassen, wie sie waren` : ''}.`,
  bad: (n) =>
    `${counted(n, 'Eintrag war', 'Einträge waren')} nicht lesbar und ${plural(n, 'wurde', 'wurden')} weggelassen:`,
  leftOut: (n) =>
    `${counted(n, 'Eintrag ist', 'Einträge sind')} beschädigt und nicht im gesicherten Logbuch; die Liste nennt sie, und jeder lässt sich sichern, wie er ist.`,
};

/** A limit as it stands in its profile. */
function plain(x: number): string {
  return fixed(x, String(x).split('.')[1]?.length ?? 0);
}
