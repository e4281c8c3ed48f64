import type { AdviceCode, HandMeasure } from '../../../scoring/index.ts';
import type { Drill, RetentionStep } from '../../core/practice/record.ts';
import { fixed, trimmed, twoDecimals, whole } from '../numbers.ts';
import type { practiceWords as english } from '../practice.ts';

const times = (n: number, of: number): string => `${whole(n)} von ${whole(of)}`;

const MEASURES: Record<HandMeasure, string> = {
  beat: 'Takt',
  width: 'Breite',
  'pause A': 'Pause rechts',
  'pause B': 'Pause links',
  climb: 'Steigen',
  symmetry: 'Mitte, rechts der Wurzel',
  evenness: 'Streuung der Pendelungen',
};

/** What a fault is called where it is one of several answers. */
const FAULTS: Partial<Record<AdviceCode, string>> = {
  'arc-back-on-puddle': 'Lichtbogen an der Wurzel hinten im Schmelzbad',
  'tip-too-far': 'Kontaktrohr zu weit weg gehalten',
  'too-narrow': 'Zu schmal gependelt',
  'too-wide': 'Zu breit gependelt',
  'to-one-side': 'Zu einer Seite hin gependelt',
  'toe-left-early': 'Einen Übergang zu früh verlassen',
  'climbed-fast': 'Zu schnell gestiegen',
  'climbed-slowly': 'Zu langsam gestiegen',
  'cold-root': 'Einstellung zu kalt',
};

/** What the sheet shows of each. */
const SHOWS: Partial<Record<AdviceCode, string>> = {
  'arc-back-on-puddle':
    'Kreuzungen ohne vollen Punkt auf dem Taktblatt und weniger Wurzel als gezeigt, obwohl Takt, Breite und Steigen wie gefordert sind',
  'tip-too-far':
    'den Kontaktrohrabstand jenseits seines Bandes in der Tabelle der Hand und weniger Einbrand als gezeigt, an Wurzel und Blechen',
  'too-narrow':
    'die Breite unter ihrem Band in der Tabelle der Hand und an beiden Blechen kürzere Schenkel als gezeigt',
  'too-wide': 'die Breite über ihrem Band in der Tabelle der Hand und an beiden Blechen längere Schenkel als gezeigt',
  'to-one-side':
    'einen Schenkel auf ganzer Länge länger als den anderen und ein Pendeln, das nicht über der Wurzel liegt',
  'toe-left-early': 'Balken auf einer Linie des Taktblatts, die vor dem Band enden, die auf der anderen wie gefordert',
  'climbed-fast':
    'das Steigen über seinem Band in der Tabelle der Hand, Pendelungen weit auseinander und kürzere Schenkel als gezeigt',
  'climbed-slowly':
    'das Steigen unter seinem Band in der Tabelle der Hand, Pendelungen dicht beieinander und längere Schenkel als gezeigt',
  'cold-root':
    'in jeder Zeile eine Hand wie gefordert und eine Wurzel, die auf einem großen Teil der Länge nicht erfasst oder unklar ist',
};

const WHEN: Record<RetentionStep, string> = {
  day: 'am nächsten Tag',
  week: 'nach einer Woche',
  fortnight: 'nach zwei Wochen',
};

const DRILLS: Record<Drill, { name: string; text: string }> = {
  pattern: { name: 'Pendelform', text: 'Die Form des Pendelns: Breite, Mitte auf der Wurzel, gleichmäßiges Steigen.' },
  beat: { name: 'Takt', text: 'Eine Pendelung so lang wie die nächste, im geforderten Takt.' },
  toes: { name: 'Übergänge', text: 'An jedem Übergang warten, so lange wie gefordert und nicht länger.' },
};

/** Words of what is practised beside attempts: judging oneself, drills, tests after a while, naming a fault. */
export const practiceWords: typeof english = {
  rootInDoubt: (percent) => `, ${whole(percent)} % zu knapp zum Entscheiden`,
  leaf: 'Üben',
  sayFirst: {
    judge: 'Gemessen. Erst sagen, was außerhalb liegt, dann wird das Urteil gezeigt.',
    name: 'Das Prüfstück ist geschweißt. Sagen, was an Hand oder Gerät falsch war.',
  },

  judge: {
    title: 'Erst selbst urteilen',
    ask: 'Naht und Schnitt ansehen. Ankreuzen, was außerhalb liegt; was frei bleibt, liegt innerhalb.',
    leg: 'Kleinster Schenkel, mm (geschätzt, wenn man mag)',
    done: 'Das ist mein Urteil',
    atOnce: 'Urteil gleich zeigen',
    switch: { lessons: 'in Lektionen', always: 'immer', never: 'nie' },
    when: 'Vor dem Urteil selbst urteilen',
    beside: 'Eigenes Urteil und Urteil',
    head: { measure: 'Maß', yours: 'Selbst', verdict: 'Urteil' },
    said: { inside: 'innerhalb', outside: 'außerhalb' },
    missed: 'übersehen',
    imagined: 'nicht vorhanden',
    agree: 'stimmt überein',
    open: 'zählt in keiner Richtung',
    sum: (right, of) =>
      of === 0
        ? 'Jede Zeile war zu knapp zum Entscheiden: nichts, woran sich das eigene Urteil messen ließe.'
        : `Übereinstimmung in ${times(right, of)} Zeilen.`,
    legSaid: (said, was, pm) =>
      `Kleinster Schenkel: geschätzt ${fixed(said, 1)}, gemessen ${twoDecimals(was)} ± ${twoDecimals(pm)} mm (${said >= was ? '+' : ''}${fixed(said - was, 1)}).`,
  },

  trend: {
    title: 'Wie gut das eigene Urteil ist',
    none: 'Noch nichts beurteilt. Wer vor dem Urteil sagt, was außerhalb liegt, sieht hier, wie gut er urteilt.',
    sum: (right, of, attempts) =>
      `Über ${whole(attempts)} ${attempts === 1 ? 'Versuch' : 'Versuche'} Übereinstimmung mit der Messung in ${times(right, of)} Zeilen.`,
    faults: (seen, there) =>
      there === 0
        ? 'Noch kein Fehler war da, der zu sehen gewesen wäre.'
        : `Von vorhandenen Fehlern gesehen: ${times(seen, there)}.`,
    held: (seen, there) => (there === 0 ? '' : `Von gehaltenen Zeilen innerhalb genannt: ${times(seen, there)}.`),
    leans: {
      passes:
        'Fehler werden öfter durchgelassen als gesehen, wo keine sind: noch einmal hinsehen, bevor es innerhalb heißt.',
      finds:
        'Fehler werden öfter gesehen, wo keine sind, als übersehen: an der Grenze prüfen, bevor es außerhalb heißt.',
      even: 'Das Urteil neigt zu keiner Seite.',
      few: 'Zu wenige, um zu sagen, wohin das Urteil neigt.',
    },
    chart: 'Anteil der Zeilen mit Übereinstimmung, die ältesten zuerst',
    legs: (bias, n) =>
      `Schenkel: über ${whole(n)} ${n === 1 ? 'Schätzung' : 'Schätzungen'} im Mittel ${fixed(Math.abs(bias), 2)} mm ${bias >= 0 ? 'mehr' : 'weniger'} als gemessen.`,
    limits: (from, to) =>
      `Neunzehn von zwanzig Schätzungen liegen zwischen ${fixed(from, 2)} und ${to >= 0 ? '+' : ''}${fixed(to, 2)} mm neben der Messung.`,
    fewLegs: (least) => `Ab ${whole(least)} Schätzungen wird gesagt, wie weit sie streuen.`,
    legChart: 'Schätzung weniger Messung, über ihrem Mittel; mm',
  },

  drill: {
    title: 'Trockenübungen',
    text: 'Die Hand pendelt auf der Fuge ohne Lichtbogen und wird gelesen wie bei einem Versuch. Getrennt von den Versuchen aufbewahrt.',
    begin: (drill) => DRILLS[drill].name,
    name: (drill) => `Trockenübung: ${DRILLS[drill].name}`,
    about: (drill) => DRILLS[drill].text,
    ready:
      'Auf die Fuge drücken und halten wie zum Schweißen: kein Lichtbogen. Etwa zehn Sekunden pendeln, dann loslassen. Mit der Tastatur: Leertaste und Pfeile.',
    short: 'Zu kurz zum Lesen: mindestens vier Sekunden.',
    running: (s) => `${whole(s)} s`,
    done: (s) => `Über ${fixed(s, 1)} s gelesen. Für eine neue Runde auf die Fuge drücken.`,
    nothing: 'Noch kein Pendeln gelesen.',
    leave: 'Trockenübung beenden',
    measure: MEASURES,
    reading: ({ is, unit, asked }) =>
      `${trimmed(is, 2)} ${unit}${asked ? ` (gefordert ${trimmed(asked.from, 2)} bis ${trimmed(asked.to, 2)})` : ''}`,
    state: { in: 'innerhalb', out: 'außerhalb', free: '' },
    kept: (n) => (n === 0 ? 'Noch keine Trockenübung aufbewahrt.' : `${whole(n)} aufbewahrt.`),
    last: (drill, inside, of, when) => `${DRILLS[drill].name}, ${when}: ${times(inside, of)} innerhalb`,
  },

  due: {
    title: 'Prüfungen nach einiger Zeit',
    text: 'Was einen Tag, eine Woche und zwei Wochen nach dem Erlernen noch geht, ohne Hilfen. Diese Versuche zählen für sich: weder die Stufe noch die Kurven werden daraus gebildet.',
    none: 'Noch nichts erlernt: eine Übung gilt als erlernt, wenn ihre Hilfen weggefallen sind, eine Prüfung, wenn sie bestanden ist.',
    now: (title, step) => `Prüfung fällig: ${title}, ${WHEN[step]}`,
    later: (title, step, when) => `${title}, ${WHEN[step]}: ab ${when}`,
    weld: 'Jetzt schweißen',
    running: (step) => `Prüfung ${WHEN[step]}, ohne Hilfen`,
    done: (title, step, when) => `${title}, ${WHEN[step]} (${when}):`,
    gone: 'Versuch entfernt',
  },

  naming: {
    title: 'Den Fehler benennen',
    text: 'Die Roboterhand schweißt ein Prüfstück mit einem einzigen Fehler. Oberfläche, Schnitt, aufgebrochene Wurzel und Taktblatt ansehen und sagen, was es war.',
    level: (level, right, of) => `Stufe ${whole(level)}${of === 0 ? '' : `: ${times(right, of)} richtig`}`,
    welding: 'Ein Prüfstück wird geschweißt.',
    ask: 'Was war falsch?',
    say: 'Das war es',
    right: (was) => `Richtig: ${was}.`,
    wrong: (said, was) => `Nicht „${said}“. Es war: ${was}.`,
    wouldShow: (said, shows) => `Bei „${said}“ zeigte das Blatt ${shows}.`,
    here: (shows) => `Hier zeigt es ${shows}.`,
    next: 'Nächstes Prüfstück',
    leave: 'Verlassen',
    fault: (code) => FAULTS[code] ?? code,
    shows: (code) => SHOWS[code] ?? '',
  },

  fade: 'Sichtbare Hilfen verschwinden, solange die Hand im Band ist',
};
