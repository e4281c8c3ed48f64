import type { LeftWords } from '../left-free.ts';
import { said } from './names.ts';

/** How what is left to the trainee is said, in German. */
export const leftWords: LeftWords = {
  said,
  names: {
    feed_mpmin: 'Draht',
    volts_V: 'Spannung',
    wire_mm: 'Drahtdurchmesser',
    gas: 'Gas',
    tip_mm: 'Kontaktrohr aus der Düse',
    nozzle_mm: 'Düse',
    tipToWork_mm: 'Kontaktrohrabstand',
    workAngle_deg: 'Arbeitswinkel',
    travelAngle_deg: 'Neigungswinkel',
  },
  span: (from, to) => `${from} bis ${to}`,
  or: ' oder ',
};
