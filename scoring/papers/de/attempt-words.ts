import { sizeAsked } from '../../schema/exercise.ts';
import { german } from '../../words/de/words.ts';
import { upper } from '../../words/names.ts';
import type { AttemptWords } from '../attempt-words.ts';
import { FOOTNOTE } from '../sentences.ts';

const { said, measureName, toeName, tiedInSaid } = german;

const GAS = {
  'M21-ArC-18': 'Argon mit 18 % Kohlendioxid (M21)',
  'M21-ArC-25': 'Argon mit 25 % Kohlendioxid (M21)',
  C1: 'Kohlendioxid (C1)',
} as const;
const KIND = { tee: 'T-Stoß', lap: 'Überlappstoß', corner: 'Eckstoß', plate: 'Blindraupe' } as const;

/** Joint and machine as one sentence. */
const settingsSentence: AttemptWords['settingsSentence'] = (recording, r) => {
  const { joint, process } = recording.simulation;
  const plates =
    joint.plateA_mm === joint.plateB_mm
      ? said(joint.plateA_mm)
      : `${said(joint.plateA_mm)} und ${said(joint.plateB_mm)}`;
  const asked = r.exercise?.asked;
  const size =
    asked === undefined
      ? ''
      : asked.kind === 'leg'
        ? `, Schenkel ${said(asked.size_mm)}`
        : `, a-Maß ${said(asked.size_mm)} (Schenkel ${said(sizeAsked(asked).leg_mm)})`;
  const gap = joint.gap_mm > 0 ? `, Stegabstand ${said(joint.gap_mm)}` : '';
  const warm = joint.startTemp_C === joint.ambient_C ? '' : `, Bleche bei ${said(joint.startTemp_C, 0)} °C`;
  const metal =
    r.process.laid_mm2 === null
      ? ''
      : ` – eingebracht ${said(r.process.laid_mm2)} mm²${r.process.holds_mm2 === null ? '' : `, die Fuge fasst ${said(r.process.holds_mm2)}`}`;
  return (
    `${KIND[joint.kind]}, Bleche ${plates} mm, ${said(joint.plateWidth_mm)} breit, ${said(joint.length_mm)} lang${size}${gap}${warm} – ` +
    `Draht ${said(process.wire_mm)}, ${said(process.feed_mpmin)} m/min, ${said(process.volts_V)} V, ${GAS[process.gas]}${metal}.`
  );
};

/** What bead, hand and machine did, a short sentence each. */
const handSentences: AttemptWords['handSentences'] = (r, kind) => {
  const out: string[] = [];
  const m = r.motion;
  const bead = r.bead.mean;
  if (bead !== null) {
    const root = tiedInSaid(r);
    out.push(
      `Naht, Mittel: Schenkel ${said(bead.legA_mm)} rechts und ${said(bead.legB_mm)} links, a-Maß ${said(bead.throat_mm)}, Nahtbreite ${said(bead.faceWidth_mm)}, Überhöhung ${said(bead.convexity_mm)}${
        root === null ? '' : `; ${root}`
      }.`,
    );
  }
  const hand: string[] = [];
  if (m.arcOnFrontShare !== null)
    hand.push(`Lichtbogen bei ${said(100 * m.arcOnFrontShare, 0)} % der Kreuzungen vorn auf dem Schmelzbad`);
  for (const side of ['A', 'B'] as const) {
    const pause = side === 'A' ? m.pauseA_s : m.pauseB_s;
    const filled = side === 'A' ? m.toeFilledShareA : m.toeFilledShareB;
    if (pause === null) continue;
    hand.push(
      `${toeName(kind, side)} ${said(pause, 2)} s${filled === null ? '' : `, gefüllt verlassen ${said(100 * filled, 0)} %`}`,
    );
  }
  if (m.period_s !== null) hand.push(`${said(1 / m.period_s, 2)} Pendelungen je Sekunde`);
  if (m.width_mm !== null) hand.push(`${said(m.width_mm)} breit`);
  if (m.stepUp_mm !== null) hand.push(`Schritt ${said(m.stepUp_mm)}`);
  if (m.travel_mmps !== null) hand.push(`Geschwindigkeit ${said(m.travel_mmps, 2)} mm/s`);
  if (m.tipToWork_mm !== null) hand.push(`Kontaktrohrabstand ${said(m.tipToWork_mm)}`);
  if (m.workAngle_deg !== null) hand.push(`Arbeitswinkel ${said(m.workAngle_deg, 0)}°`);
  if (m.travelAngle_deg !== null) hand.push(`Neigungswinkel ${said(m.travelAngle_deg, 0)}°`);
  if (hand.length > 0) out.push(`Hand: ${hand.join('; ')}.`);
  const p = r.process;
  if (p.current_A !== null && p.voltage_V !== null) {
    const heat = p.heatInput_kJpmm === null ? '' : `, Wärmeeinbringung ${said(p.heatInput_kJpmm, 2)} kJ/mm`;
    out.push(`Gerät: ${said(p.current_A, 0)} A, ${said(p.voltage_V)} V, Brenndauer ${said(p.arcTime_s)} s${heat}.`);
  }
  return out;
};

/** Every word on the report of an attempt, in German. */
export const attemptWords: AttemptWords = {
  said,
  measureName: (...about) => upper(measureName(...about)),
  settingsSentence,
  handSentences,
  untitled: 'Versuch ohne Übung',
  judgedBy: (profile, file) => `Bewertet nach ${profile}.${file === null ? '' : ` Datei ${file}.`}`,
  noProfile: 'keinen Grenzwerten',
  verdict: {
    within: 'innerhalb',
    outside: 'außerhalb',
    'too close to call': 'zu knapp',
    'no verdict': 'ohne Urteil',
  },
  sense: { 'at most': 'höchstens', 'at least': 'mindestens' },
  trend: (score) =>
    `Verlaufszahl ${score}: für den Verlauf der Versuche dieser einen Hand, nie eine Note gegen andere.`,
  why: {
    asked: 'wie verlangt',
    first: 'wohin das Erste weist, was zu ändern ist',
    middle: 'Mitte der bewerteten Länge',
    marked: 'vor dem Schweißen angezeichnet',
  },
  at: (mm) => `bei ${mm} mm`,
  into: (s) => `${s} s nach Beginn`,
  cycle: (n) => `Pendelung ${n}`,
  more: (places, n) => `${places} und ${n} weitere`,
  robot: 'Roboterhand',
  block: {
    trainee: 'Person',
    date: 'Datum, Platz',
    exercise: 'Übung, Versuch',
    none: 'keine',
    own: ' (eigene)',
    welded: 'Geschweißt mit; Rechenversion, Prüfzahl',
  },
  cut: (y, why) => `Der Schnitt bei ${y} mm, ${why}. Dicke Striche: nicht verschmolzen.`,
  marked: (y) => `angezeichnet, ${y} mm`,
  after: 'Danach',
  because: 'Ohne Urteil, weil',
  toKnow: 'Zu wissen',
  nothing: 'Zur Hand ist nichts zu sagen.',
  notMeasured: 'Nicht gemessen',
  allMeasured: 'nichts: dieses Gerät misst alles',
  notModelled: 'Nicht modelliert',
  provenance: `${FOOTNOTE} Wert aus dem Gedächtnis, nicht an der genannten Ausgabe geprüft: nachschlagen, bevor man sich darauf verlässt.`,
  stripSays:
    'Die Wurzel, aufgebrochen: gefüllt, wo sie erfasst ist, leer, wo nicht, gepunktet, wo nicht bewertet. Dreiecke: vor dem Schweißen angezeichnete Schnitte. Dicke Linie: bewertete Länge, mm.',
  head: ['Maß und Regel', 'Messwert', 'Grenzwert', 'innen | darüber', 'Urteil', 'wo, mm', 'echtes Prüfstück'],
  couponCells: [
    ['Echtes Prüfstück, Nummer', ''],
    ['Gesägt und geätzt am', ''],
    ['Gelesen von, Kürzel', ''],
    ['Person, Kürzel', ''],
  ],
};
