import type { AdviceData, HandCode, SettingsCode, Suspect } from '../../advice/found.ts';
import { upper } from '../names.ts';
import { said, toeName } from './names.ts';
import { beside } from './seen.ts';

type P = AdviceData[SettingsCode];

const AS_SHOWN = 'Die Hand war wie gezeigt';

/** Only what differs. */
function setAgainst({ set, usual }: P): string {
  if (usual === null) return '';
  const parts: [string, string][] = [];
  if (Math.abs(set.volts_V - usual.volts_V) >= 0.05) parts.push([`${said(set.volts_V)} V`, `${said(usual.volts_V)} V`]);
  if (Math.abs(set.feed_mpmin - usual.feed_mpmin) >= 0.05)
    parts.push([`${said(set.feed_mpmin)} m/min`, `${said(usual.feed_mpmin)} m/min`]);
  if (parts.length === 0) return '';
  const list = (k: 0 | 1): string => parts.map((p) => p[k]).join(' und ');
  return `Eingestellt: ${list(0)}; die Werkstatt schweißt so eine Fuge mit ${list(1)}.`;
}

/** Where nothing of it shows in the lines, the settings are named and nothing is made of them. */
const told = (todo: (p: P) => string): ((p: P) => string) => {
  return (p) => {
    const shows = beside(p.seen, p.verdict).trim();
    const against = setAgainst(p);
    const nothingShows = p.seen === null || p.verdict === 'within';
    const end = nothingShows && against !== '' ? 'Dorthin zurückstellen und den Unterschied ansehen' : todo(p);
    return [`${AS_SHOWN}.`, shows, against, `${end}.`].filter((part) => part !== '').join(' ');
  };
};

/** Every sentence about a machine that does not fit the joint: said only where the hand was as asked. */
export const machineSentences: { [C in SettingsCode]: (p: AdviceData[C]) => string } = {
  'cold-root': told(() => 'Zu kalt: erst mehr Spannung, dann mehr Draht, dieselbe Hand'),
  'cold-toe': told(
    (p) => `${upper(toeName(p.joint, p.side ?? 'A'))} ist durchgehend kalt: mehr Spannung, dieselbe Hand`,
  ),
  'too-much-metal': told(
    () => 'Mehr Metall, als so eine Fuge fasst: den Drahtvorschub zurücknehmen oder schneller steigen als gezeigt',
  ),
  'too-hot': told(() => 'Zu heiß: erst weniger Spannung, dann weniger Draht, dieselbe Hand'),
  'too-little-wire': told(
    () => 'Weniger Metall, als so eine Fuge braucht: mehr Draht oder langsamer steigen als gezeigt',
  ),
  'gap-takes-metal': told(
    (p) => `Die Fuge steht ${said(p.gap_mm)} mm offen und schluckt Metall: langsamer steigen, gleich pendeln`,
  ),
};

const suspects: Record<HandCode | SettingsCode, string> = {
  'arc-back-on-puddle': 'die Wurzel etwas zu tief gekreuzt',
  'tip-too-far': 'das Kontaktrohr etwas zu weit weg',
  'tip-too-close': 'das Kontaktrohr etwas zu nah',
  'pushed-far': 'etwas mehr stechend als gefordert',
  dragged: 'etwas weniger stechend als gefordert',
  'work-angle-off': 'der Arbeitswinkel',
  'too-narrow': 'etwas zu schmal gependelt',
  'too-wide': 'etwas zu breit gependelt',
  'to-one-side': 'etwas zu einer Seite gependelt',
  drifted: 'ein leicht wanderndes Pendeln',
  'toe-skipped': 'ein ausgelassener Übergang',
  'toe-left-early': 'ein etwas zu früh verlassener Übergang',
  'toes-left-early': 'etwas zu früh verlassene Übergänge',
  'waited-long': 'etwas zu lange Pausen',
  'beat-slow': 'ein etwas langsamer Takt',
  'beat-fast': 'ein etwas schneller Takt',
  'climbed-fast': 'etwas zu schnell gestiegen',
  'climbed-slowly': 'etwas zu langsam gestiegen',
  stalled: 'ein Halt auf dem Weg',
  jumped: 'ein Sprung auf dem Weg',
  slipped: 'ein Ausrutscher auf dem Weg',
  'fits-and-starts': 'ein ungleichmäßiges Steigen',
  'uneven-rhythm': 'ein ungleichmäßiger Takt',
  'uneven-waits': 'ungleiche Pausen an einem Übergang',
  shaky: 'eine unruhige Führung',
  'cold-root': 'zu kalte Einstellungen',
  'cold-toe': 'zu kalte Einstellungen',
  'too-much-metal': 'zu viel Draht',
  'too-hot': 'zu heiße Einstellungen',
  'too-little-wire': 'zu wenig Draht',
  'gap-takes-metal': 'der Stegabstand',
};

/** A cause that may be behind what is seen, as it is named beside another. */
export function suspectSaid(code: Suspect): string {
  return suspects[code];
}
