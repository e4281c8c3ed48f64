import { oneDecimal, trimmed } from '../numbers.ts';
import type { real as english } from '../real.ts';

type Kind = Parameters<(typeof english)['plate']>[0];
type Side = 'A' | 'B';

const plate = (kind: Kind, name: Side): string =>
  kind === 'lap' ? (name === 'A' ? 'hinteres Blech' : 'Kantenblech') : name === 'A' ? 'rechtes Blech' : 'linkes Blech';
/** After "des" and "im": the adjective is declined. */
const of = (kind: Kind, name: Side): string =>
  plate(kind, name)
    .replace(/es Blech$/, 'en Blechs')
    .replace(/nblech$/, 'nblechs');
const inside = (kind: Kind, name: Side): string => plate(kind, name).replace(/es Blech$/, 'en Blech');
const toe = (kind: Kind, name: Side): string =>
  kind === 'lap' ? `Übergang am ${inside(kind, name)}` : name === 'A' ? 'rechter Übergang' : 'linker Übergang';
const side = (kind: Kind, name: Side): string =>
  kind === 'lap' ? plate(kind, name) : name === 'A' ? 'rechts' : 'links';
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What is measured, as own-reading rows name it. */
const ROWS: Partial<Record<string, string>> = {
  leg: 'Schenkel',
  throat: 'a-Maß',
  convexity: 'Überhöhung',
  hollow: 'hohl',
  root: 'Wurzel',
  'fused depth': 'Einbrandtiefe',
};

/** Words of the sheets on which a cut is measured by hand: one's own, and a real coupon's. */
export const real: typeof english = {
  plate,
  toe,

  steps: {
    scale: {
      name: 'Maßstab',
      hint: 'Zwei Punkte in bekanntem Abstand: auf einem Maßstab neben dem Schnitt oder quer über ein Blech bekannter Dicke.',
    },
    across: {
      name: 'Maßstab in der anderen Richtung',
      hint: 'Falls schräg gesägt wurde: die Dicke des einen Blechs als Maßstab markieren und die des anderen hier.',
    },
    root: {
      name: 'Wurzel',
      hint: 'Wo sich die Blechflächen vor dem Schweißen trafen, auch wenn eine Kante weggeschmolzen ist.',
    },
    plate: (kind, name) => ({
      name: `Richtung des ${of(kind, name)}`,
      hint: `Ein Punkt auf der Fläche des ${of(kind, name)}, deutlich neben der Naht.`,
    }),
    toe: (kind, name) => ({
      name: capital(toe(kind, name)),
      hint: `Wo die Nahtoberfläche auf das ${inside(kind, name).replace(/en Blech$/, 'e Blech')} trifft.`,
    }),
    face: {
      name: 'Nahtoberfläche',
      hint: 'Drei bis sechs Punkte auf der Oberfläche zwischen den Übergängen, der höchste darunter.',
    },
    fusion: (kind, name) => ({
      name: `Schmelzlinie, ${plate(kind, name)}`,
      hint: `Drei oder mehr Punkte auf der Schmelzlinie im ${inside(kind, name)}, von neben der Wurzel bis nahe an den Übergang.`,
    }),
    undercut: (kind, name) => ({
      name: `Einbrandkerbe, ${toe(kind, name)}`,
      hint: 'Ihr tiefster Punkt. Weglassen, was nicht da ist.',
    }),
  },

  board: {
    label:
      'Bild zum Markieren. Klicken setzt eine Marke, Ziehen verschiebt sie; Pfeiltasten bewegen die gewählte Marke, Entf nimmt sie weg.',
    zoom: 'Vergrößern',
    loupe: 'Unter der Lupe',
    set: (count) => (count === 1 ? 'gesetzt' : `${count} gesetzt`),
    optional: 'falls vorhanden',
    back: 'Letzten Punkt zurücknehmen',
    next: (name) => `Als Nächstes: ${name}`,
    still: (names) => `Noch zu markieren: ${names}.`,
  },

  measure: {
    title: (y) => `Den Schnitt bei ${y} mm selbst messen`,
    teach: 'Die Ätzung zeigt in jedem Blech zwei Linien. Marken setzen, dann mit der Werkbank vergleichen.',
    waiting: 'Wird gesägt und geätzt …',
    noBead: 'In dieser Höhe ist keine Naht.',
    compare: 'Mit der Werkbank vergleichen',
    again: 'Marken verschieben',
    close: 'Schließen',
    head: { measure: 'Maß', yours: 'eigen', bench: 'Werkbank', agrees: '' },
    agrees: 'stimmt überein',
    differs: 'weicht ab',
    notReached: 'nicht erreicht',
    tolerance:
      'Ablesungen von Hand stimmen bei Schenkeln auf ± 0,25 mm überein, bei a-Maß und Überhöhung auf 0,2, beim Einbrand auf 0,3 (übliche Praxis).',
    row: (kind, row) => {
      const name = ROWS[row.measure] ?? row.measure;
      return row.side === null ? name : `${name} ${side(kind, row.side)}`;
    },
    root: (x) => (x > 0 ? `${trimmed(x, 2)} darüber` : `${trimmed(-x, 2)} zu kurz`),
    all: 'Alles stimmt überein. So liest man einen Schnitt.',
    mark: (kind, mark) => {
      if (mark.mark === 'root')
        return `Wurzel: die Marke liegt ${oneDecimal(mark.off_mm)} daneben. Die Wurzel ist die Ecke der Blechflächen vor dem Schweißen, nicht das Ende des Einbrands.`;
      const name = capital(toe(kind, mark.mark === 'toeA' ? 'A' : 'B'));
      return mark.out_mm > 0
        ? `${name}: die Naht endet ${oneDecimal(Math.abs(mark.out_mm))} weiter innen.`
        : `${name}: die Naht geht noch ${oneDecimal(Math.abs(mark.out_mm))} weiter.`;
    },
    line: (kind, s) => {
      const name = capital(plate(kind, s.side));
      const way =
        s.nearer_mm >= 0
          ? `die Schmelzlinie liegt ${oneDecimal(s.nearer_mm)} näher an der Naht`
          : `die Schmelzlinie liegt ${oneDecimal(-s.nearer_mm)} tiefer im Blech`;
      switch (s.met) {
        case 'fusion line':
          return `${name}: auf der Schmelzlinie.`;
        case 'nothing marked':
          return `${name}: kein Punkt markiert.`;
        case 'heat-affected zone':
          return s.there === s.points
            ? `${name}: bis zum Rand der Wärmeeinflusszone gemessen; ${way}.`
            : `${name}: ${s.there} von ${s.points} Punkten liegen auf dem Rand der Wärmeeinflusszone; dort gilt: ${way}.`;
        case 'neither':
          return s.there === s.points
            ? `${name}: auf keiner der Linien; ${way}.`
            : `${name}: ${s.there} von ${s.points} Punkten liegen auf keiner der Linien; dort gilt: ${way}.`;
      }
    },
    key: { fusion: 'Schmelzlinie', zone: 'Rand der Wärmeeinflusszone' },
  },

  coupon: {
    title: 'Ein echtes Prüfstück',
    teach:
      'Das Foto eines gesägten, geschliffenen und geätzten Schnitts, gerade von vorn, PNG oder JPEG. Es bleibt in diesem Browser und wird nirgendwohin geschickt.',
    choose: 'Bild wählen',
    other: 'Anderes Bild',
    marksOnly: 'Marken ohne ihr Bild.',
    length: 'Abstand der Maßstabspunkte',
    height: 'Höhe des Schnitts',
    profile: 'Bewertet nach',
    asked: (size, kind) => `Gefordert: ${kind} ${size} mm.`,
    keep: 'Bei diesem Versuch aufbewahren',
    kept: 'Beim Versuch aufbewahrt.',
    alone: 'Erst einen Versuch schweißen oder öffnen, um es bei ihm aufzubewahren.',
    save: 'Marken als Datei sichern',
    close: 'Schließen',
    byHand: 'Von Hand, mit dem Plus-Minus einer Ablesung von Hand. Ein Schnitt spricht nur für seine eigene Höhe.',
    beside: (y) => `echtes Prüfstück bei ${y} mm`,
    model: 'Werkbank',
    coupon: 'Prüfstück',
    notMarked: 'nicht markiert',
    toeAngle: 'Übergangswinkel',
    hollow: 'hohl',
    open: 'Marken öffnen',
    take: 'Wegnehmen',
    overlay: 'die Oberfläche des Modells darübergelegt',
    across: 'Abstand der Punkte in der anderen Richtung',
    reader: 'Gelesen von, Kürzel',
    broken: 'Rest aufgebrochen: erfasst auf',
    brokenOf: 'von',
    brokenWhere: 'nicht erfasst bei',
    offSquare: (deg) => `Nach den beiden Maßstäben ist der Schnitt ${deg}° schräg; seine Dehnung ist herausgerechnet.`,
    brokenSaid: (tied, of_mm, where) =>
      `Aufgebrochen: auf ${tied} von ${of_mm} mm erfasst${where === '' ? '' : `; nicht bei ${where}`}.`,
    noPicture: 'Bild nicht aufbewahrt',
  },
};
