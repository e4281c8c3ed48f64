import { wordsIn } from '../../../scoring/index.ts';
import { fixed, twoDecimals, whole } from '../numbers.ts';
import type { whatIfWords as english } from '../what-if.ts';

const { changeSaid } = wordsIn('de');

const knobs: (typeof english)['knobs'] = {
  travel_mmps: 'Schweißgeschwindigkeit',
  volts_V: 'Spannung',
  feed_mpmin: 'Drahtvorschub',
  width_mm: 'Breite',
  pauseA_s: 'Pause rechts oder hinten',
  pauseB_s: 'Pause links oder an der Kante',
  lead_mm: 'Vorgriff an der Wurzel',
  centre_mm: 'Lage des Pendelns',
  tipToWork_mm: 'Kontaktrohrabstand',
  workAngle_deg: 'Arbeitswinkel',
  travelAngle_deg: 'Neigungswinkel',
  cyclesPerSecond: 'Takt',
};

/** Words of trying one change on one's own attempt. */
export const whatIfWords: typeof english = {
  label: 'Was wenn',
  none: 'nichts geändert',
  yours: (change, kind) => `der eigene, aber ${changeSaid(change, kind)}`,
  say: changeSaid,
  stretch: 'ab 13 mm unter dem Schnitt so geschweißt, der Rest wie er war; das ganze Stück folgt',
  less: 'Ein Schritt zurück',
  more: 'Ein Schritt weiter',
  knobs,
  cannot: ({ what }) =>
    `Das lässt sich an diesem Versuch nicht ausprobieren: ${knobs[what]} verließe mit dieser Änderung, was Hand oder Gerät können; möglich ist eine kleinere.`,
  besideIs: 'Daneben liegt',
  changed: 'geändert',
  other: 'der andere',
  reading: (x, unit) => (unit === 'in' ? fixed(x, 3) : unit === 'mm' ? twoDecimals(x) : whole(x)),
  note: 'Die eigene Hand, vom Modell mit dieser einen Änderung neu geschweißt; der nächste eigene Versuch weicht in mehr als dem ab.',
};
