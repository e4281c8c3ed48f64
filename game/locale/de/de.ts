import { lineMeasures, wordsIn } from '../../../scoring/index.ts';
import { sayNews, sayProblem, type Words } from '../en.ts';
import { oneDecimal, seconds, trimmed, twoDecimals, whole } from '../numbers.ts';
import { desk } from './desk.ts';
import { guide } from './guide.ts';
import { lensWords } from './lens.ts';
import { lessonWords } from './lesson.ts';
import { logbookWords } from './logbook.ts';
import { practiceWords } from './practice.ts';
import { sheets } from './sheets.ts';
import { whatIfWords } from './what-if.ts';

const SIDES = {
  tee: { A: 'rechts', B: 'links' },
  corner: { A: 'rechts', B: 'links' },
  lap: { A: 'hinteres Blech', B: 'Kantenblech' },
};

const said = wordsIn('de');

/** "poses: none": the field stays as it stands in the file. */
function foundIn(why: string): string {
  const [, field, found] = /^([\w.[\]]+: )(.*)$/.exec(why) ?? [];
  return field === undefined ? said.phrase(why) : field + said.phrase(found!);
}

const VERDICTS: Words['findings']['verdict'] = {
  within: 'innerhalb',
  outside: 'außerhalb',
  'too close to call': 'zu knapp',
  'no verdict': 'ohne Urteil',
};

/**
 * Every word on screen in German. Terms as in DIN EN ISO 17659, 6520-1 and 6947 (from memory) and everyday workshop German; nobody is addressed: what
 * to do stands in the infinitive.
 */
export const de: Words = {
  product: 'Toehold',

  ...sheets,
  lens: lensWords,
  lesson: lessonWords,
  logbook: logbookWords,
  practice: practiceWords,
  whatIf: whatIfWords,
  desk,
  guide,

  top: {
    exercise: 'Übung',
    ownJoint: 'Eigene Fuge und Einstellungen',
    made: 'Hier gemacht oder geöffnet',
    attempts: 'Versuche',
    open: 'Öffnen',
    save: 'Sichern',
    print: 'Drucken',
    aids: 'Hilfen',
    help: 'Über',
    weldAgain: 'Neu schweißen',
    robot: 'Roboterhand',
    stopRobot: 'Roboterhand anhalten',
    done: 'Fertig',
  },

  setting: {
    kind: { tee: 'T-Stoß', lap: 'Überlappstoß', corner: 'Eckstoß' },
    gas: { 'M21-ArC-18': 'Argon mit 18 % CO₂', 'M21-ArC-25': 'Argon mit 25 % CO₂', C1: 'CO₂' },
    asks: { leg: 'Schenkel', throat: 'a-Maß' },
    fields: {
      kind: 'Stoßart',
      plateA: { tee: 'durchgehendes Blech, rechts', corner: 'rechtes Blech', lap: 'hinteres Blech' },
      plateB: { tee: 'stehendes Blech, links', corner: 'linkes Blech', lap: 'Kantenblech' },
      plateWidth: 'Blechbreite',
      length: 'Länge der Fuge',
      gap: 'Stegabstand',
      startTemp: 'Anfangstemperatur',
      size: 'geforderte Nahtgröße',
      wire: 'Draht',
      feed: 'Drahtvorschub',
      volts: 'Spannung',
      gas: 'Schutzgas',
      tip: 'Kontaktrohr: + aus der Düse heraus, − in ihr',
      nozzle: 'Durchmesser der Gasdüse',
      tipToWork: 'Kontaktrohrabstand, gehalten',
      travel: 'Schweißgeschwindigkeit',
      workAngle: 'Arbeitswinkel vom rechten (hinteren) Blech, gehalten',
      travelAngle: 'Neigungswinkel, stechend, gehalten',
      tabs: 'An- und Auslaufbleche',
    },
    tabs: { yes: 'mit Auslaufblechen', no: 'ohne Auslaufbleche' },
    noGap: 'ohne Spalt',
    gap: (mm) => `Spalt ${mm}`,
    flush: 'bündig',
    out: (mm) => `${mm} vor`,
    in: (mm) => `${mm} zurück`,
    joins: {
      on: ' auf ',
      plate: ' Blech, ',
      wide: ' breit, ',
      long: ' lang, ',
      at: ', bei ',
      held: ' Kontaktrohrabstand, gehalten bei ',
      and: ' und ',
      climbing: ' stechend, steigend mit ',
      wire: ' Draht, ',
      tip: ', Kontaktrohr ',
      inA: ' in ',
      nozzle: ' Gasdüse',
      laying: ', eingebracht ',
      holds: '; die Fuge fasst ',
      comma: ', ',
      stop: '. ',
      colon: ': ',
    },
    all: 'Alle Einstellungen',
    fewer: 'Einstellungen einklappen',
    range: (from, to) => `${from} bis ${to}`,
    within: (most_mm2) =>
      `mehr, als der geforderte Schenkel braucht, und innerhalb der ${oneDecimal(most_mm2)} des größten zulässigen`,
    over: (mm2, most_mm2) =>
      `${oneDecimal(mm2)} zu viel${most_mm2 === null ? '' : `, selbst für die ${oneDecimal(most_mm2)} des größten zulässigen Schenkels`}; das wird Überhöhung oder zu großer Schenkel, was immer die Hand tut`,
    under: (mm2) => `${oneDecimal(mm2)} zu wenig; die Naht wird zu klein, was immer die Hand tut`,
    transfer: {
      stubbing: (low, high) =>
        ` Zu wenig Spannung für diesen Draht: er stößt auf. Bei diesem Strom schließt er etwa zwischen ${oneDecimal(low)} und ${oneDecimal(high)} V kurz.`,
      globular: (low, high) =>
        ` Zu viel Spannung für diesen Draht und dieses Gas: er geht grobtropfig über. Bei diesem Strom schließt er etwa zwischen ${oneDecimal(low)} und ${oneDecimal(high)} V kurz.`,
    },
    left: (what) => ` Freigestellt: ${what}. `,
    even: 'ungefähr, was sie fasst',
    piece: (plate) => ` Eigenes Stück: Blech ${whole(plate)}, zugeteilt aus dem Startwort. `,
    noPiece:
      ' In dieser Übung hat jeder ein eigenes Stück: Blechnummer und Startwort am Pult unter „Personen“ angeben. Bis dahin zählt der Versuch nicht. ',
    thick:
      'Über 6 mm braucht eine einzelne Lage im Kurzlichtbogen ein qualifiziertes Verfahren und birgt die Gefahr von Bindefehlern.',
  },

  weave: {
    straight: 'Strichraupe',
    'inverted-v': 'umgekehrtes V',
    triangle: 'umlaufendes Dreieck',
    zigzag: 'Zickzack',
    crescent: 'Halbmond',
  },

  asked: {
    straight: (travel) => `Strichraupe, steigend mit ${travel} mm/s.`,
    weave: (name, tempo, width) => `${name}, ${tempo} Pendelungen je Sekunde, ${width} mm breit`,
    pauses: (left, right) =>
      left === right ? `${left} s an jedem Übergang.` : `${left} s am linken Übergang, ${right} s am rechten.`,
  },

  joint: {
    label:
      'Fuge, wie man sie beim Schweißen sieht. Pfeiltasten führen den Brenner, Leertaste halten ist der Brennertaster, Enter beendet den Versuch. Oder drücken und die Fuge hinaufziehen.',
    empty: 'Noch kein Versuch. Unten auf die Fuge drücken und halten; hinaufziehen, wie das Schmelzbad es zulässt.',
    emptyTouch: 'Noch kein Versuch. Unter der Fuge drücken und halten: der Draht zeigt über den Finger hinaus.',
    out: (s) => `Lichtbogen aus. Innerhalb von ${whole(s)} s wieder zünden, um weiterzuschweißen, oder`,
    finish: 'hier beenden',
    robot: 'Roboterhand',
    left: { tee: 'linkes Blech', corner: 'linkes Blech', lap: 'Kantenblech' },
    right: { tee: 'rechtes Blech', corner: 'rechtes Blech', lap: 'hinteres Blech' },
    fixedCut: (y) => `Vorher festgelegter Schnitt bei ${oneDecimal(y)} mm`,
    handle: 'Schnitt durch die Fuge; Pfeiltasten bewegen ihn',
    flag: (n, text) => `Stelle ${n}: ${text}`,
    slow: (lag) =>
      `Beendet: dieser Rechner blieb ${twoDecimals(lag)} s hinter der Echtzeit zurück, und die Zeit an der Werkbank wird nie verlangsamt. Andere Programme schließen, die schlichte Ansicht einschalten oder eine kürzere Fuge nehmen.`,
  },

  live: {
    time: 's',
    height: 'mm hoch',
    current: 'A',
    held: 'gehalten',
    tipToWork: (held) => `Kontaktrohrabstand ${held}`,
    touching: 'Düse stößt an',
    sound: {
      'short-circuiting': (rate_Hz) => `brutzelt gleichmäßig, ${whole(rate_Hz)}-mal je Sekunde`,
      stubbing: (rate_Hz) => `stottert und knallt, ${whole(rate_Hz)}-mal je Sekunde`,
      globular: (rate_Hz) => `spotzt, grob und laut, ${whole(rate_Hz)}-mal je Sekunde`,
      off: () => 'still',
    },
  },

  strip: {
    title: 'Wurzel, aufgebrochen',
    share: (percent, covered) => `${whole(percent)} % der ${covered ? 'bewerteten Länge' : 'vorhandenen Naht'} erfasst`,
    weldedDown: 'fallend geschweißt: nicht bewertet',
    empty: 'Nach einem Versuch liegt hier die Wurzel, der Länge nach aufgebrochen.',
  },

  cut: {
    letter: 'A',
    title: (y) => `Schnitt A–A, ${oneDecimal(y)} mm`,
    empty: 'Die Schnittlinie die Fuge entlangziehen; der Schnitt wird hier gezeichnet.',
    compare: 'Daneben',
    nothing: 'nichts',
    coupon: (y) => `echtes Prüfstück bei ${oneDecimal(y)} mm`,
    measure: 'Selbst messen',
    save: 'Zeichnung sichern',
    saveLong: 'Diesen Schnitt als Zeichnung sichern (SVG)',
    real: 'ein echtes Prüfstück …',
    hidden: 'Diesen Schnitt zuerst selbst messen, oder',
    show: 'die Messwerte ansehen',
    readings: {
      leg: 'Schenkel',
      throat: 'a-Maß',
      convexity: 'Überhöhung',
      undercut: 'Kerbe',
      fused: 'Einbrand',
      root: 'Wurzel',
      past: (mm) => `erfasst, ${mm} über die Ecke hinaus`,
      short: (mm) => `${mm} vor der Ecke zu Ende`,
      doubt: (mm) => `an der Ecke (${mm}), zu knapp`,
      down: 'nicht bewertet: fallend geschweißt',
    },
    thisOne: 'auf der Werkbank',
    difference: 'schraffiert, wo die Oberflächen abweichen',
  },

  beat: {
    title: 'Taktblatt',
    left: { tee: 'linker Übergang', corner: 'linker Übergang', lap: 'Übergang an der Kante' },
    right: { tee: 'rechter Übergang', corner: 'rechter Übergang', lap: 'hinterer Übergang' },
    empty:
      'Jede Pause an einem Übergang wird ein Balken so lang, wie sie dauerte, jedes Kreuzen ein Strich dazwischen.',
    pause: (toe, s, filled) =>
      `${toe}: ${seconds(s)}${filled === null ? '' : filled ? ', gefüllt verlassen' : ', verlassen, bevor er gefüllt war'}`,
    crossing: (lead, onFront) =>
      onFront === null || lead === null
        ? 'Wurzel gekreuzt; kein Schmelzbad zum Vergleichen'
        : onFront
          ? 'Wurzel mit dem Lichtbogen vorn auf dem Schmelzbad gekreuzt'
          : `Wurzel ${oneDecimal(Math.abs(lead))} ${lead < 0 ? 'hinter' : 'vor'} der Vorderkante des Schmelzbads gekreuzt`,
  },

  replay: {
    title: 'Wiedergabe',
    play: 'Abspielen',
    pause: 'Anhalten',
    finished: 'Fertiges Stück',
    whole: 'fertiges Stück',
    at: (t, end) => `${oneDecimal(t)} von ${oneDecimal(end)} s`,
    slider: 'Zeit im Versuch',
    back: 'Eine Pendelung zurück',
    on: 'Eine Pendelung weiter',
    pace: 'Wie schnell es läuft',
    times: (times) =>
      times === 1
        ? 'wie geschweißt'
        : times < 1
          ? `${trimmed(1 / times, 1)}-mal langsamer`
          : `${trimmed(times, 1)}-mal schneller`,
    show: 'Dem Raum zeigen',
    showEnd: 'Vorführung beenden',
    chalk: {
      draw: 'Darauf zeichnen',
      stop: 'Stift weglegen',
      back: 'Letzten Strich zurücknehmen',
      wipe: 'Wischen',
      board: 'Über die Vorführung gezeichnet',
    },
  },

  findings: {
    verdict: VERDICTS,
    first: 'Das zuerst ändern',
    show: 'Zeigen',
    lines: 'Befunde',
    hand: 'Hand',
    head: {
      measure: 'Maß',
      reading: 'Messwert',
      limit: 'Grenzwert',
      rule: 'Regel',
      verdict: 'Urteil',
      place: 'bei',
    },
    proof: {
      trying: 'Wird ausprobiert: der Versuch wird neu geschweißt, immer eines geändert …',
      proved: 'Bewiesen',
      replaced: 'Ausprobiert, und dies behebt es',
      'not mended': 'Ausprobiert',
    },
    measuring: 'Die Naht wird gemessen …',
    weldingAgain: 'Die Aufzeichnung wird neu geschweißt …',
    notMeasured: 'Nicht gemessen',
    notModelled: 'Nicht modelliert',
    cautions: 'Hinweise',
    sameHash: 'Hier mit derselben Prüfzahl neu geschweißt.',
    otherHash:
      'Hier mit einer anderen Prüfzahl neu geschweißt, als die Datei trägt: eine andere Rechenversion hat sie gemacht, oder sie wurde geändert.',
    details: 'Einzelheiten',
    check: 'Prüfzahl',
    engine: 'Rechenversion',
    saveResult: 'Ergebnis als JSON sichern',
    measure: (measure) => {
      const known = lineMeasures.find((name) => name === measure);
      return known === undefined ? measure : said.measureName(known, null, 'tee');
    },
    side: (kind, side) => (side === null ? '' : SIDES[kind][side]),
    place: (line) => `bei ${oneDecimal(line.y_mm)}`,
  },

  hand: {
    notMeasured: 'nicht gemessen',
    rows: {
      arcOnFrontShare: 'Lichtbogen vorn an der Wurzel',
      lead: 'Lichtbogen zur Vorderkante des Bads',
      pause: 'Pause am Übergang',
      reach: 'Abstand zum Übergang',
      filled: 'Übergang gefüllt verlassen',
      period: 'eine Pendelung',
      width: 'Pendelbreite',
      stepUp: 'Schritt je Pendelung',
      travel: 'Geschwindigkeit',
      tipToWork: 'Kontaktrohrabstand',
      workAngle: 'Arbeitswinkel',
      travelAngle: 'Neigungswinkel',
    },
    asked: 'gefordert',
    evenness: (cv) => `Streuung ${whole(cv * 100)} %`,
  },

  toes: {
    title: 'Übergänge, an der schlechtesten Stelle',
    undercut: 'Einbrandkerbe',
    risk: 'Kerbgefahr',
    riskSays: 'außerhalb des Metalls aufgeschmolzenes Blech; auf Stahl kann es als Einbrandkerbe erscheinen',
  },

  process: {
    title: 'Gerät und Metall',
    current: 'Strom',
    heat: 'Wärmeeinbringung',
    laid: 'eingebracht',
    holds: 'Fuge fasst',
    deposited: 'abgeschmolzen',
    spatter: 'Spritzer',
    dripped: 'herausgetropft',
    arcTime: 'Brenndauer',
  },

  shelf: {
    title: 'In diesem Browser aufbewahrte Versuche',
    empty: 'Noch keine. Jeder Versuch wird hier aufbewahrt, wenn er endet.',
    untitled: 'Versuch ohne Übung',
    fileName: 'versuch',
    open: 'Öffnen',
    remove: 'Entfernen',
    removed: (title, when) => `${title}, ${when}, ist entfernt.`,
    putBack: 'Zurücklegen',
    trend: (score) => `Verlauf ${whole(score)}`,
    trendTitle: 'Von 100. Für die eigene Linie über Versuche an einer Übung, sonst nichts.',
    drop: 'Oder eine Aufzeichnung irgendwo auf der Seite ablegen.',
    damaged: (why) => `Beschädigt (${foundIn(why)}). Bleibt, wie es ist, bis es entfernt wird.`,
    saveRaw: 'Sichern, wie es ist',
    persistent: 'Dieser Browser behält sie, bis sie entfernt werden.',
    clearable:
      'Dieser Browser kann sie löschen, wenn der Platz knapp wird: Wichtiges als Datei sichern. Er wurde gebeten, sie zu behalten, und hat es nicht zugesagt.',
    unasked:
      'Unter dieser Adresse lässt sich der Browser nicht bitten, sie dauerhaft zu behalten: Wichtiges als Datei sichern.',
  },

  unfinished: {
    title: 'Ein Versuch wurde nicht beendet',
    heading: 'Nicht beendet',
    said: (title, when, s) =>
      `${title}, ${when}: ${oneDecimal(s)} s davon sind aufbewahrt, bis dahin, wo die Seite geschlossen oder angehalten wurde.`,
    otherEngine:
      'Eine andere Version der Werkbank hat ihn geschweißt: dieselbe Hand macht jetzt eine etwas andere Naht.',
    damaged: (why) => `Er lässt sich nicht neu schweißen (${foundIn(why)}).`,
    take: 'Neu schweißen und bewerten',
    later: 'Später',
    remove: 'Wegwerfen',
  },

  notice: {
    'asks-to-keep':
      'Diese Seite bittet den Browser, die Versuche dauerhaft zu behalten: sonst kann er sie löschen, wenn der Platz knapp wird.',
    'may-be-cleared':
      'Der Browser hat nicht zugesagt, die Versuche zu behalten: er kann sie löschen, wenn der Platz knapp wird. Wichtiges als Datei sichern.',
    close: 'Ausblenden',
  },

  problems: {
    title: 'Das hat nicht geklappt',
    close: 'Schließen',
    goOn: 'Trotzdem öffnen',
    muchWork: (file, work, most) =>
      `${file ?? 'Der aufbewahrte Versuch'}: gefunden ${work}; ohne Rückfrage geöffnet werden solche von höchstens ${most}. Es wurde nichts geschweißt. Trotzdem geöffnet, ist diese Seite etwa so lange damit beschäftigt.`,
    couponNotKept:
      'Dieser Browser wollte das Prüfstück nicht behalten (privates Fenster, oder kein Platz mehr). Die Marken als Datei sichern.',
    notKept:
      'Dieser Browser wollte den Versuch nicht behalten (privates Fenster, oder kein Platz mehr). Als Datei sichern.',
    storageFull:
      'In diesem Browser ist kein Platz mehr für Versuche. Nichts Aufbewahrtes ist verloren; diesen Versuch als Datei sichern und aufbewahrte entfernen oder Platz schaffen.',
    noStore: 'Dieser Browser behält keine Versuche (privates Fenster?). Wichtiges als Datei sichern.',
    silent: (kept) =>
      `Das Schweißprogramm in dieser Seite ist verstummt und wurde neu gestartet. ${kept} Ein kaltes Stück liegt auf der Werkbank.`,
    silentKept: (s) => `Was geschweißt war, ${oneDecimal(s)} s, ist aufbewahrt: unter „Versuche“ aufzunehmen.`,
    silentLost: 'Es wurde gerade nichts geschweißt.',
    worker: (message) =>
      `Das Schweißprogramm in dieser Seite ist stehen geblieben: ${message}. Die Seite neu laden; aufbewahrte Versuche sind sicher.`,
    noWebGl:
      'Dieser Browser zeigt kein WebGL-2-Bild, mit dem die Fuge gezeichnet wird. Hardwarebeschleunigung einschalten oder ein aktuelles Firefox, Chrome, Edge oder Safari nehmen.',
    refused: said.refusal,
    phrase: said.phrase,
    found: ({ found, allowed }) => `gefunden: ${said.phrase(found)}; zulässig: ${said.phrase(allowed)}`,
    tooLarge: (file, bytes, most) =>
      `${file}: gefunden ${whole(bytes / 1e6)} MB, zulässig sind Aufzeichnungen bis ${whole(most / 1e6)} MB`,
    picture: {
      'cut-off': { found: 'ein abgeschnittenes Bild', allowed: 'eine vollständige PNG- oder JPEG-Datei' },
      'cannot-be-shown': {
        found: 'ein Bild, das dieser Browser nicht zeigen kann',
        allowed: 'eine vollständige PNG- oder JPEG-Datei',
      },
    },
    ...desk.problems,
    say: (problem) => sayProblem(de, problem),
  },

  announce: {
    idle: 'Bereit. Ein kaltes Stück liegt auf der Werkbank.',
    welding: 'Lichtbogen an.',
    out: 'Lichtbogen aus.',
    stopped: 'Versuch beendet.',
    ended: {
      stopped: 'Versuch beendet. Es wird gemessen.',
      'too-slow': 'Versuch angehalten: der Rechner blieb hinter der Echtzeit zurück.',
      'length-reached': 'Oberes Ende der Fuge erreicht. Es wird gemessen.',
      interrupted: 'Versuch bis dahin geschweißt, wo er verlassen wurde. Es wird gemessen.',
      'hand-finished': 'Die Pendelung ist geschweißt. Es wird gemessen.',
      'time-limit': 'Längste Zeit erreicht. Es wird gemessen.',
    },
    verdict: (result) =>
      `Urteil: ${VERDICTS[result.verdict]}. ${result.advice[0]?.text ?? result.reasons[0]?.text ?? ''}`,
    say: (news, result) => sayNews(de, news, result),
  },
};
