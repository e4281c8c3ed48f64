import { type AdviceSentences, unitSign } from '../advice.ts';
import { upper } from '../names.ts';
import { handSentences } from './hand.ts';
import { machineSentences, suspectSaid } from './machine.ts';
import { measureName, said, toeAfter, toeName } from './names.ts';
import { rootSaid, seenSaid } from './seen.ts';

/** Every sentence of advice in German. */
export const adviceSentences: AdviceSentences = {
  'weld-the-judged-length': (p) =>
    `Die ganze bewertete Länge schweißen, ${said(p.from_mm)} bis ${said(p.to_mm)} mm; ${said(p.bare_mm)} mm davon sind ohne Naht.`,

  climb: () =>
    'Geschweißt wurde fallend. So läuft das Metall dem Lichtbogen voraus und die Wurzel bleibt zu kurz, wie flach es auch aussieht; nichts davon wird bewertet. Unten anfangen und steigen.',

  'no-climb': () =>
    'Der Lichtbogen ging in der Fuge auf und ab, ohne zu steigen. Unten anfangen, den Sockel abwarten und auf ihm steigen.',

  'one-pass': (p) =>
    `${said(p.twice_mm, 0)} mm fertige Naht wurden noch einmal überfahren. Eine Lage: eine zweite verdeckt die erste und bessert nichts.`,

  'metal-dropped': (p) =>
    `${said(p.dripped_g)} g sind aus der Fuge getropft${
      p.laid_mm2 !== null && p.holds_mm2 !== null
        ? `: eingebracht werden ${said(p.laid_mm2, 0)} mm², die Fuge fasst ${said(p.holds_mm2, 0)}`
        : ''
    }. Weniger Wärme an einer Stelle: schneller steigen oder den Drahtvorschub zurücknehmen.`,

  ...handSentences,
  ...machineSentences,

  either: (p) =>
    `${seenSaid(p.seen)} Zweierlei kann dahinterstecken: ${suspectSaid(p.one)} oder ${suspectSaid(p.other)}. Das Erste ändern, neu schweißen und nachsehen.`,

  'let-go-early': (p) =>
    `Bei ${said(p.at_mm, 0)} losgelassen; die Naht geht bis ${said(p.to_mm, 0)}. Über dem Endkrater zünden, in ihn zurückgehen, füllen und bis zum Ende weiter.`,

  'arc-lost': (p) =>
    `Der Lichtbogen war bei ${said(p.stop_mm, 0)} für ${said(p.out_s)} s aus, und die Hand ging weiter, als brennte er. ${p.seen === null ? '' : `${seenSaid(p.seen)} `}Geht er aus: anhalten, darüber zünden und in den Krater zurückgehen.`,

  'root-just-short': (p) =>
    `Die Wurzel ist bei ${said(p.y_mm, 0)} nur knapp da: ${rootSaid(p.root_mm)}, plus oder minus ${said(p.plusMinus_mm, 2)}. Die Hand war wie gezeigt; dort ein echtes Stück aufsägen.`,

  'toe-melted-open': (p) =>
    `${upper(toeName(p.joint, p.side))}: aufgeschmolzen und bei ${said(p.y_mm, 0)} ${said(p.depth_mm, 2)} mm tief verlassen. Warten, bis er gefüllt ist.`,

  'crowned-straight': (p) =>
    `Eine Strichraupe mit so viel Metall steht ${said(p.convexity_mm)} hoch; ${said(p.limit_mm)} ist die Grenze. Etwas schneller steigen oder pendeln.`,

  undersize: (p) =>
    p.place === null
      ? `Die Schenkellänge ist ${said(p.size_mm)}, gefordert waren ${said(p.asked_mm)}${p.length_mm > 0 ? `, auf ${said(p.length_mm, 0)} mm` : ''}.${
          p.laid_mm2 !== null && p.holds_mm2 !== null && p.laid_mm2 < 1.1 * p.holds_mm2
            ? ` Eingebracht werden ${said(p.laid_mm2, 0)} mm², die Größe braucht ${said(p.holds_mm2, 0)}.`
            : ''
        } Die Hand war wie gezeigt: langsamer steigen oder mehr Draht geben.`
      : `Die Schenkellänge ist ${said(p.size_mm)}, gefordert waren ${said(p.asked_mm)}, ${shortAt(p.place)}; der Rest hält. ${
          p.place.little ? 'Das ist wenig: so weiterschweißen' : 'So weiterschweißen'
        } und ansehen, was die Hand dort getan hat.`,

  oversize: (p) =>
    `Die Naht misst ${said(p.size_mm)}, gefordert waren höchstens ${said(p.most_mm)}${p.length_mm > 0 ? `, auf ${said(p.length_mm, 0)} mm` : ''}. Schneller steigen.`,

  'one-sided': (p) =>
    `Ein Schenkel ist ${said(p.legLong_mm)}, der andere ${said(p.legShort_mm)}. Das Pendeln ${said(p.shift_mm)} mm zum ${toeAfter(p.joint, p.side)} verschieben.`,

  'crater-open': (p) =>
    p.reStrikes === 0
      ? `Endkrater bei ${said(p.y_mm, 0)} ${said(p.depth_mm)} tief gelassen. Einen Augenblick bleiben, dann ein- oder zweimal kurz hineinzünden, während er erstarrt.`
      : `Endkrater bei ${said(p.y_mm, 0)} noch ${said(p.depth_mm)} tief nach ${p.reStrikes === 1 ? 'einmal kurzem Nachzünden' : `${p.reStrikes}-mal kurzem Nachzünden`}. Noch einmal etwas länger, in seiner Mitte.`,

  'restart-on-crater': (p) =>
    `Bei ${said(p.stop_mm, 0)} auf dem kalten Endkrater wieder gezündet und davongestiegen. ${p.seen === null ? '' : `${seenSaid(p.seen)} `}Etwa 10 darüber zünden, in ihn zurückgehen, warten, bis er voll ist, dann weiter.`,

  'restart-not-back': (p) =>
    `${said(p.above_mm, 0)} über dem Halt bei ${said(p.stop_mm, 0)} wieder gezündet und nie in den Krater zurückgekommen. ${p.seen === null ? '' : `${seenSaid(p.seen)} `}Zurückgehen, warten, bis er voll ist, dann weiter.`,

  'restart-overfilled': (p) => {
    const what = [
      p.crown_mm === null ? '' : `${said(p.crown_mm)} überhöht`,
      p.lap_mm === null ? '' : `${said(p.lap_mm)} auf kaltem Blech an einem Übergang`,
    ].filter((x) => x !== '');
    return `Der Ansatz bei ${said(p.stop_mm, 0)} ist übergelaufen: ${what.join(', ')}. Im Krater waren es ${said(p.inCrater_s)} s; weitergehen, sobald er voll ist.`;
  },

  'edge-melted-back': (p) =>
    `Die Kante ist bei ${said(p.y_mm, 0)} um ${said(p.back_mm)} mm abgeschmolzen. Die Kante nur berühren; am hinteren Blech warten.`,

  'hot-top': (p) =>
    `Das obere Ende wurde heiß: die Nahtbreite wuchs von ${said(p.low_mm)} auf ${said(p.high_mm)} mm. Schneller steigen, wenn die Bleche warm werden, oder sie vorher abkühlen lassen.`,

  'measure-a-real-one': (p) =>
    `Zu knapp, ${measureName(p.measure, null, 'tee')}: Grenze ${said(p.limit, 2)}, gelesen ${said(p.reading, 2)}, plus oder minus ${said(p.plusMinus, 2)} ${unitSign(p.unit)}. Ein echtes Stück messen.`,

  'keep-it': (p) =>
    `Wurzel an der schlechtesten Stelle ${rootSaid(p.root_mm)}, höchstens ${said(p.convexity_mm)} überhöht. Noch einmal so.`,

  'see-the-cut': (p) =>
    `${upper(measureName(p.measure, null, 'tee'))}: bei ${said(p.y_mm, 0)} mm außerhalb, und die Hand allein erklärt es nicht. Den Schnitt dort mit jemandem ansehen, der es weiß.`,
};

function shortAt({ from_mm, to_mm }: { from_mm: number; to_mm: number }): string {
  return from_mm === to_mm ? `bei ${said(from_mm, 0)} mm` : `von ${said(from_mm, 0)} bis ${said(to_mm, 0)} mm`;
}
