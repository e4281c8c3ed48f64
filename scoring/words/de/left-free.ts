import type { LeftWords } from '../left-free.ts';
import { said } from './names.ts';

/** How what is left to the trainee is said, in German. */
export const leftWords: LeftWords = {
  said,
  names: {
    feed_mpmin: 'Drahtvorschub',
    volts_V: 'Spannung',
    wire_mm: 'Drahtdurchmesser',
    gas: 'Schutzgas',
    tip_mm: 'Kontaktrohr vor der Gasdüse',
    nozzle_mm: 'Gasdüse',
    tipToWork_mm: 'Kontaktrohrabstand',
    workAngle_deg: 'Arbeitswinkel',
    travelAngle_deg: 'Neigungswinkel',
  },
  span: (from, to) => `${from} bis ${to}`,
  or: ' oder ',
};
