import type { AdviceData, HandCode } from '../../advice/found.ts';
import { upper } from '../names.ts';
import { said, toeName } from './names.ts';
import { beside } from './seen.ts';

type P = AdviceData[HandCode];

/** What a hand did against what was asked, what was seen of the bead, and what to do: always in this order. */
const told = (what: (p: P) => string, todo: (p: P) => string): ((p: P) => string) => {
  return (p) => `${what(p)}. ${beside(p.seen, p.verdict)}${todo(p)}.`;
};

const over = ({ stretch }: P): string =>
  stretch === null ? '' : ` von ${said(stretch.from_mm, 0)} bis ${said(stretch.to_mm, 0)}`;
const towards = ({ side }: P): string => (side === 'A' ? 'rechts' : 'links');
const toe = ({ joint, side }: P): string => upper(toeName(joint, side ?? 'A'));
const at = (p: P): string => said(p.stretch?.from_mm ?? 0, 0);

/** Every sentence about a hand that was not as asked: what it did without a pronoun, what to do in the infinitive. */
export const handSentences: { [C in HandCode]: (p: AdviceData[C]) => string } = {
  'arc-back-on-puddle': told(
    (p) =>
      p.weave
        ? `Die Wurzel wurde${over(p)} ${said(p.asked - p.is)} mm tiefer gekreuzt als gezeigt`
        : `Der Lichtbogen stand${over(p)} ${said(-p.is)} mm zu weit hinten im Schmelzbad`,
    (p) =>
      p.weave
        ? 'Beim Kreuzen der Wurzel vorn auf das Schmelzbad gehen'
        : 'Den Lichtbogen vorn auf dem Schmelzbad halten',
  ),
  'tip-too-far': told(
    (p) => `Der Kontaktrohrabstand war${over(p)} ${said(p.is)} mm; gefordert waren ${said(p.asked)}`,
    () => 'Näher herangehen: ein großer Abstand nimmt Strom weg',
  ),
  'tip-too-close': told(
    (p) => `Der Kontaktrohrabstand war${over(p)} ${said(p.is)} mm; gefordert waren ${said(p.asked)}`,
    () => 'Weiter wegbleiben',
  ),
  'pushed-far': told(
    (p) => `Der Brenner stand${over(p)} ${said(p.is, 0)}° stechend; gefordert waren ${said(p.asked, 0)}`,
    () => 'Den Brenner näher an den rechten Winkel stellen',
  ),
  dragged: told(
    (p) =>
      p.is < -0.5
        ? `Der Brenner stand${over(p)} ${said(-p.is, 0)}° schleppend; gefordert waren ${said(p.asked, 0)} stechend`
        : `Der Brenner stand${over(p)} ${said(Math.max(0, p.is), 0)}° stechend; gefordert waren ${said(p.asked, 0)}`,
    () => 'Den Draht nach oben in die Fuge richten',
  ),
  'work-angle-off': told(
    (p) => `Der Arbeitswinkel war${over(p)} ${said(p.is, 0)}°; gefordert waren ${said(p.asked, 0)}`,
    (p) =>
      `Den Brenner ${p.is > p.asked ? 'zum' : 'weg vom'} ${p.joint === 'lap' ? 'hinteren' : 'rechten'} Blech neigen`,
  ),
  'too-narrow': told(
    (p) =>
      p.is === 0
        ? `Es ging gerade hinauf; gefordert war eine Pendelbreite von ${said(p.asked)} mm`
        : `Die Pendelbreite war${over(p)} ${said(p.is)} mm; gefordert waren ${said(p.asked)}`,
    (p) =>
      p.is === 0 ? 'Übergang, Wurzel, Übergang, an jedem Übergang warten' : 'Bis an beide Übergänge hinauspendeln',
  ),
  'too-wide': told(
    (p) =>
      `Die Pendelbreite war${over(p)} ${said(p.is)} mm; gefordert ${p.asked === 0 ? 'war eine Strichraupe' : `waren ${said(p.asked)}`}`,
    (p) => (p.asked === 0 ? 'Auf der Wurzel bleiben' : 'An den Übergängen umkehren, nicht dahinter'),
  ),
  'to-one-side': told(
    (p) => `Die Pendelmitte lag${over(p)} ${said(Math.abs(p.is))} mm zu weit ${towards(p)}`,
    () => 'Die Mitte zurück über die Wurzel bringen',
  ),
  drifted: told(
    (p) => `Das Pendeln ist auf dem Weg nach oben ${said(Math.abs(p.is))} mm nach ${towards(p)} gewandert`,
    () => 'Bei jedem Kreuzen die Wurzel neu suchen',
  ),
  'toe-skipped': told(
    (p) => `${toe(p)}: ${said(p.is, 0)}-mal davor umgekehrt${over(p)}`,
    () => 'In jeder Pendelung beide Übergänge berühren',
  ),
  'toe-left-early': told(
    (p) => `${toe(p)}: ${said(p.is, 2)} s gewartet${over(p)}; gefordert waren ${said(p.asked, 2)}`,
    () => 'Vor dem Weggehen eins weiter zählen',
  ),
  'toes-left-early': told(
    (p) => `An den Übergängen wurde${over(p)} ${said(p.is, 2)} s gewartet; gefordert waren ${said(p.asked, 2)}`,
    () => 'An jedem Übergang warten, bis er gefüllt ist',
  ),
  'waited-long': told(
    (p) =>
      p.side === null
        ? `An den Übergängen wurde${over(p)} ${said(p.is, 2)} s gewartet; gefordert waren ${said(p.asked, 2)}`
        : `${toe(p)}: ${said(p.is, 2)} s gewartet${over(p)}; gefordert waren ${said(p.asked, 2)}`,
    () => 'Weitergehen, sobald er gefüllt ist',
  ),
  'beat-slow': told(
    (p) => `Der Takt war${over(p)} ${said(p.is)} s je Pendelung; gefordert waren ${said(p.asked)}`,
    () => 'Schneller pendeln und die Pausen lassen, wie sie sind',
  ),
  'beat-fast': told(
    (p) => `Der Takt war${over(p)} ${said(p.is)} s je Pendelung; gefordert waren ${said(p.asked)}`,
    () => 'Langsamer: hinüber, warten, hinüber, warten',
  ),
  'climbed-fast': told(
    (p) => `Gestiegen wurde${over(p)} mit ${said(p.is)} mm/s; gefordert waren ${said(p.asked)}`,
    () => 'Den Schritt nach oben kleiner machen',
  ),
  'climbed-slowly': told(
    (p) => `Gestiegen wurde${over(p)} mit ${said(p.is)} mm/s; gefordert waren ${said(p.asked)}`,
    () => 'Den Schritt nach oben größer machen',
  ),
  stalled: told(
    (p) => `Bei ${at(p)} ging es ${said(p.is)} s lang nicht weiter hinauf`,
    () => 'In jeder Pendelung einen Schritt nach oben gehen',
  ),
  jumped: told(
    (p) => `Bei ${at(p)} ein Sprung von ${said(p.is)} mm nach oben`,
    () => 'Auf dem Sockel steigen, nie darüber hinaus',
  ),
  slipped: told(
    (p) => `Bei ${at(p)} ist die Hand ${said(p.is)} mm nach ${towards(p)} gerutscht`,
    () => 'Nach einem Ausrutscher zurück zur Wurzel, dann weiter hinauf',
  ),
  'fits-and-starts': told(
    (p) => `Gestiegen wurde ruckweise: ${said(100 * p.is, 0)} % der Zeit stand der Brenner still`,
    () => 'In jeder Pendelung ein gleicher Schritt',
  ),
  'uneven-rhythm': told(
    (p) => `Der Takt schwankte um ${said(100 * p.is, 0)} %`,
    () => 'Laut mitzählen; Schritte und Übergänge werden davon gleichmäßig',
  ),
  'uneven-waits': told(
    (p) => `${toe(p)}: die Pausen schwankten um ${said(p.is, 2)} s um ${said(p.asked, 2)} herum`,
    () => 'Bei jedem Halt gleich weit zählen',
  ),
  shaky: told(
    (p) => `Der Brenner hat um ${said(p.is)} mm gezittert`,
    () => 'Die Hand auflegen und lang und ruhig führen',
  ),
};
