import type { lensWords as english } from '../lens.ts';
import { oneDecimal, whole } from '../numbers.ts';

/** Words of the close view. */
export const lensWords: typeof english = {
  label: 'Nahansicht der Naht. Sie folgt dem Lichtbogen; die Hand führt auf der ganzen Fuge daneben.',
  asked: 'Die geforderte Pendelung, in ihrem Takt',
  straight: 'Die geforderte Strichraupe, in ihrem Tempo',
  larger: (times) => `${oneDecimal(times)}-mal so groß wie die Fuge, auf der geführt wird`,
  hand: (joint_mm) => `10 mm auf dem Bildschirm bewegen den Lichtbogen um ${whole(joint_mm * 10)} mm`,
  slow: 'schlicht: dieser Rechner zeichnet zu langsam für die Nahansicht',
};
