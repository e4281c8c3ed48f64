import { BAD_IN_A_ROW, GOOD_IN_A_ROW } from '../../core/session/level.ts';
import { oneDecimal, whole } from '../numbers.ts';
import type { sheets as english } from '../sheets.ts';

const helped: (typeof english)['level']['helped'] = {
  robot: 'Roboterhand',
  test: 'Test, ohne Hilfen',
  'with guides': 'mit Hilfen',
  'without guides': 'ohne Hilfen',
};

/** Words of the sheets laid over the bench and of the level an exercise is welded at. */
export const sheets: typeof english = {
  level: {
    short: (level, own) => {
      if (level.kind === 'test') return 'Test: ohne Hilfen';
      if (level.kind === 'free' || own) return 'Hilfen wie eingestellt';
      if (level.kind === 'with guides') return `Mit Hilfen, ${level.good} von ${GOOD_IN_A_ROW} guten in Folge`;
      return level.bad === 0 ? 'Ohne Hilfen' : `Ohne Hilfen, ${level.bad} von ${BAD_IN_A_ROW} außerhalb in Folge`;
    },
    long: (level) => {
      if (level.kind === 'test')
        return 'Das ist ein Test: Schrittmacher, Takt und Marken sind darin aus, was immer hier eingestellt ist.';
      if (level.kind === 'free') return 'Eigene Fuge und Einstellungen: Hilfen, wie sie hier eingestellt sind.';
      if (level.kind === 'with guides')
        return `Diese Übung wird mit Hilfen geschweißt, wie hier eingestellt. Nach drei guten Versuchen hintereinander gehen sie; bisher ${['keiner', 'einer', 'zwei'][level.good]}.`;
      return `Drei gute Versuche hintereinander: Schrittmacher, Takt und Marken sind in dieser Übung aus. Zwei außerhalb hintereinander bringen sie zurück${level.bad > 0 ? '; bisher einer' : ''}.`;
    },
    used: (used, allowed) =>
      used >= allowed
        ? `alle ${whole(allowed)} Versuche gemacht, weitere zählen nicht`
        : `Versuch ${whole(used + 1)} von ${whole(allowed)}`,
    own: 'Hilfen wie hier eingestellt, was immer die Stufe sagt',
    helped,
    welded: (how) =>
      how === 'robot'
        ? 'Von der Roboterhand geschweißt'
        : how === 'test'
          ? 'Test, ohne Hilfen geschweißt'
          : `${how === 'with guides' ? 'Mit' : 'Ohne'} Hilfen geschweißt`,
  },

  aids: {
    title: 'Hilfen und Gerät',
    note: 'Benutzte Hilfen werden in den Versuch geschrieben.',
    pacer: 'Schrittmacher: zeigt das Pendeln vor dem Zünden',
    beatSeen: 'Takt, sichtbar',
    beatHeard: 'Takt, hörbar',
    toeMarks: 'Marken der Übergänge auf der Fuge',
    plainView: 'Schlichte Ansicht, für schwache Rechner',
    handRig: 'Handgeschirr: Brennergewicht und Schlauchzug zwischen Hand und Brenner',
    gun: 'Brennergewicht',
    grams: (g) => `${whole(g)} g`,
    hose: 'Schlauchzug',
    latch: 'Leertaste hält den Brennertaster, bis sie wieder gedrückt wird',
    sound: 'Geräusch',
    language: 'Sprache',
    inches: 'Zoll neben Millimetern',
    leftHanded: 'Für die linke Hand angeordnet',
    captions: 'Untertitel für das Geräusch des Lichtbogens',
    calibrate: 'Bildschirm mit einer Bankkarte messen',
    calibrated: (scale) => `Bildschirm gemessen: ${oneDecimal(scale)} Pixel je Millimeter.`,
    oneToOne: 'Im Maßstab 1:1 schweißen, ein Millimeter Hand für einen Millimeter Fuge',
    tooLong: (fits) => `Im Maßstab 1:1 passen nur die ersten ${whole(fits)} mm dieser Fuge auf den Bildschirm.`,
    measureFirst: 'Erst messen: Schnitte öffnen sich ohne Messwerte, bis gemessen oder gefragt wurde',
    penCheck: 'Prüfen, ob der Stift seine Neigung meldet',
    penTilts: 'Die Stiftneigung wird gemessen: Arbeits- und Neigungswinkel kommen vom Stift.',
  },

  calibration: {
    title: 'Bildschirm messen',
    text: 'Eine Bankkarte auf den Bildschirm legen, linke Kante an die Linie, und die rechte Linie an die rechte Kante ziehen. Karten sind 85,6 mm breit (ISO/IEC 7810).',
    upright:
      'Eine Bankkarte hochkant auf den Bildschirm stellen, linke Kante an die Linie, und die rechte Linie an die rechte Kante ziehen. Die kurze Kante einer Karte misst 54,0 mm (ISO/IEC 7810).',
    slider: 'Breite der Karte auf dem Bildschirm',
    keep: 'Behalten',
    cancel: 'Abbrechen',
  },

  pen: {
    title: 'Stift prüfen',
    text: 'Das Feld mit dem Stift berühren und ihn deutlich nach links, nach rechts, zu sich her und von sich weg neigen. Manche Stifte melden keine Neigung; dann hält die Übung die Winkel.',
    left: 'links',
    right: 'rechts',
    towards: 'zu sich her',
    away: 'von sich weg',
    field: 'Den Stift hier neigen',
    passed: 'Dieser Stift meldet seine Neigung. Arbeits- und Neigungswinkel werden jetzt gemessen.',
    close: 'Schließen',
  },

  cautions: {
    title: 'Bevor es losgeht',
    text: [
      'Schweißen kann blenden, verbrennen, elektrisieren, vergiften und Brände auslösen; auch Schleifer, Sägen, heißes Metall, Ätzsäuren und beschichteter Stahl verletzen. Nur mit ausgebildeter Person, Lüftung, Augendusche und Handschuhen arbeiten.',
      'Der Bildschirm wird mit dem Lichtbogen dunkel und hell. Das Licht ist geglättet und blitzt nie öfter als dreimal in der Sekunde; wem Licht auf dem Bildschirm schaden kann, nimmt die schlichte Ansicht oder fängt nicht an. Das Geräusch beginnt leise.',
      'Üben ersetzt hier weder beaufsichtigtes Schweißen noch Schutzausrüstung, Lüftung, Brandwache oder ein qualifiziertes Verfahren. Gezeigte Grenzwerte sind eine Lernhilfe; es entscheiden die örtlichen Vorschriften, die schriftliche Anweisung (WPS) und die Prüfaufsicht. Eine Bewertung qualifiziert niemanden.',
    ],
    plain: 'In der schlichten Ansicht beginnen',
    go: 'Verstanden',
  },

  about: {
    title: 'Über die Werkbank',
    how: 'Wie hier geschweißt wird',
    steps: [
      'Den Satz oben lesen: eingebrachtes Metall gegen das, was die Fuge fasst. Ein Klick auf einen Wert ändert ihn.',
      'Unten auf die Fuge drücken und halten. Das Schmelzbad zu einem Sockel in voller Nahtbreite werden lassen.',
      'Von Übergang zu Übergang pendeln: warten, bis der Übergang angeflossen ist, die Wurzel mit dem Lichtbogen vorn auf dem Schmelzbad kreuzen.',
      'Loslassen beendet. Innerhalb von vier Sekunden wieder zünden, um den Endkrater zu füllen oder weiterzugehen.',
      'Die Schnittlinie ziehen, lesen, was zuerst zu ändern ist, „Zeigen“ drücken, neu schweißen.',
      'Einen Schnitt selbst messen, bevor der Werkbank zu glauben ist, und das Foto eines echten danebenlegen.',
    ],
    cannot: 'Was ein Bildschirm nicht lehren kann',
    cannotText:
      'Hitze im Handschuh, Gewicht des Schlauchs, Funken im Kragen, die Haltung des Körpers und das Sehen durch ein Schutzglas. Maus, Finger und Tastatur kennen weder Kontaktrohrabstand noch Winkel: die Übung hält sie, und sie stehen als „nicht gemessen“ da.',
    model: 'Was das Modell weglässt',
    modelText:
      'Poren, Risse, Silikatinseln, Zündstellen, Verzug. Einbrandkerben werden mit angegebenem Plus-Minus gelesen. Messwerte gelten einem Modell, nicht dem eigenen Prüfstück.',
    picture: 'Was das Bild dazugibt',
    pictureText:
      'Form, Rand des Schmelzbads, Wärme, Anlauffarben und die Linie jeder Schuppe sind die des Modells: eine Schuppe je Kreuzen der Wurzel, wo das Metall erstarrt ist. Korn, Tiefe der Schuppen, die feinen dazwischen, Wellen auf der Schmelze, Schlackeinseln, Silikat, Ruß und festsitzende Spritzer sind Zierde: nichts daraus lesen. An den Übergängen heißt ein Lichtfaden, dass das Metall voll auf dem Blech steht, eine dunkle Sichel, dass es das noch nicht tut.',
    scenario: 'Die Werkstatt Tern Dock, ihre Leute, Übungen und Geschichten sind erfunden.',
    notices: 'Lizenzen dessen, was diese Seite enthält',
    close: 'Schließen',
  },
};
