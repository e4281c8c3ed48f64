import type { labWords as english } from '../lab.ts';
import { counted as some } from '../numbers.ts';

/** Words of a school's lab: on the bench's class bar, and on the instructors' pages. */
export const labWords: typeof english = {
  join: {
    title: 'Klasse',
    open: 'Einer Klasse beitreten',
    code: 'Klassencode',
    name: 'Name wie auf der Liste',
    pin: 'PIN, falls eine ausgegeben wurde',
    join: 'Beitreten',
    cancel: 'Abbrechen',
    leave: 'Verlassen',
    kept: 'Auf einem gemeinsam benutzten Rechner die Klasse beim Gehen verlassen. Was bis dahin nicht gesendet ist, wartet hier und geht beim nächsten Beitreten.',
    noAnswer: 'Das Labor antwortet nicht. Weiterschweißen geht; was abzugeben ist, wartet hier.',
    handedOut: 'Ausgegeben:',
    choose: 'Übung wählen',
    nothing: 'noch nichts',
    notHandedIn: 'Was jetzt geschweißt wird, ist nur zum Üben.',
    handsIn: (most) =>
      most === null
        ? 'Jeder beendete Versuch wird abgegeben.'
        : `Jeder beendete Versuch wird abgegeben; ${most === 1 ? 'der erste zählt' : `die ersten ${most} zählen`}.`,
    state: (sending, waiting) => {
      if (sending === 'not kept') return 'Dieser Browser konnte den Versuch nicht behalten: als Datei sichern.';
      if (waiting === 0) return '';
      const n = some(waiting, 'Versuch wartet', 'Versuche warten');
      if (sending === 'sending') return 'Wird gesendet …';
      if (sending === 'join again') return `${n}: zum Senden neu beitreten.`;
      return `${n} auf eine Antwort des Labors.`;
    },
    arrived: (all, scored) =>
      all === 0 ? '' : `${some(all, 'Versuch ist', 'Versuche sind')} angekommen, ${scored} bewertet.`,
    others: (n, names) =>
      `${some(n, 'Versuch wartet', 'Versuche warten')} hier, bis ${names.join(', ')} wieder beitreten.`,
    refused: (title, why) =>
      `${title}: ein Versuch wurde nicht angenommen. ${why} Er liegt weiter bei den eigenen Versuchen.`,
    forget: 'Weglegen',
  },

  desk: {
    title: 'Schullabor',
    setup: 'Erste Lehrkraft',
    setupSays: 'Noch ist niemand hier. Der Code stand dort, wo das Labor gestartet wurde.',
    code: 'Code',
    name: 'Name',
    password: 'Passwort, mindestens 10 Zeichen',
    make: 'Beginnen',
    login: 'Anmelden',
    leave: 'Abmelden',
    trainee:
      'Dieser Browser ist einer Klasse als lernende Person beigetreten. Abmelden, um als Lehrkraft hereinzukommen.',
    classes: 'Klassen',
    noClasses: 'Noch keine Klasse. Die erste benennen.',
    newClass: 'Neue Klasse',
    add: 'Anlegen',
    back: 'Alle Klassen',
    joinBy: (address) => `Lernende öffnen ${address} und treten bei mit dem Code`,
    tabs: {
      attempts: 'Versuche',
      roster: 'Liste',
      exercises: 'Ausgegeben',
      marks: 'Noten',
      table: 'Klassentabelle',
      records: 'Nachweise',
    },
    present: {
      welding: (names) =>
        names.length === 0 ? 'Gerade schweißt niemand.' : `Gerade beim Schweißen: ${names.join(', ')}.`,
      waiting: (names) =>
        names.length === 0 ? 'Niemand wartet auf die Bewertung.' : `Auf die Bewertung warten: ${names.join(', ')}.`,
      waits: (name, attempts) => (attempts === 1 ? name : `${name} (${attempts})`),
    },
    notCompared:
      'Bewegungen werden beim Öffnen verglichen: es sind zu viele, um in der Liste alle miteinander zu vergleichen.',
    live: { open: 'live', closed: 'nicht live: das Labor antwortet nicht' },
    progress: (handed, scored) =>
      handed === 0 ? 'Noch nichts abgegeben.' : `${some(handed, 'Versuch', 'Versuche')} abgegeben, ${scored} bewertet.`,
    projector: 'Ohne Namen',
    columns: {
      trainee: 'Person',
      exercise: 'Übung',
      number: 'Nr.',
      received: 'Eingegangen',
      verdict: 'Urteil',
      score: 'Zahl',
      first: 'Zuerst zu ändern',
      against: 'Vor dem Glauben zu wissen',
      plate: 'Blech',
      attempts: 'Versuche',
      within: 'Innerhalb',
      median: 'Median',
      fault: 'Häufiger Fehler',
      mark: 'Note nach der Regel',
      set: 'Von Hand gesetzt',
      leftOut: 'Weggelassen',
      opens: 'Öffnet',
      closes: 'Schließt',
      most: 'Versuche, die zählen',
      pin: 'PIN',
    },
    hidden: (n) => `Person ${n}`,
    waiting: 'wird bewertet',
    late: 'verspätet',
    look: 'Ansehen',
    file: 'Versuchsdatei',
    evidence: 'Zu wissen, bevor man es glaubt',
    noEvidence:
      'Nichts spricht dagegen. Eine kopierte Hand mit zugefügtem Rauschen oder eine fremde Hand wird nicht erkannt.',
    advice: 'Was zu ändern ist',
    close: 'Schließen',
    rosterSays: 'Ein Name je Zeile, oder eine CSV mit einer Spalte namens name. Niemand wird gestrichen.',
    rosterAdd: 'Zur Liste hinzufügen',
    rosterFile: 'Namen aus einer Datei',
    added: (n, known) => `${n} hinzugefügt, ${known} schon da.`,
    hasPin: 'hat eine',
    givePin: 'Neue PIN',
    pinIs: (name, pin) => `PIN für ${name}: ${pin}. Sie wird einmal gezeigt.`,
    pins: 'Noten zählen: Lernende treten mit einer PIN bei',
    handOut: 'Ausgeben',
    exercise: 'Übung',
    opens: 'Öffnet',
    now: 'jetzt',
    closes: 'Schließt (leer: bleibt offen)',
    most: 'Versuche, die zählen (leer: beliebig viele)',
    notOut: 'Noch nichts ausgegeben.',
    ever: 'bleibt offen',
    any: 'beliebig viele',
    rule: 'Regel',
    rules: { best: 'bester Versuch', last: 'letzter Versuch', median: 'Median der letzten drei' },
    setMark: 'Setzen',
    takeBack: 'Zurücknehmen',
    mark: 'Note, 0 bis 100',
    reason: 'Grund',
    reasonNeeded: 'Eine von Hand gesetzte Note steht neben der berechneten, mit ihrem Grund.',
    seeFirst: 'Diese drei zuerst ansehen',
    nobodyFirst: 'Niemand sticht heraus.',
    times: (times, of) => `${times} von ${of}`,
    out: 'Herausnehmen',
    pdf: 'Klassenblatt als PDF',
    csv: 'Ergebnisse als CSV',
    jsonl: 'Ergebnisse als JSON-Zeilen',
    noAnswer: 'Das Labor antwortet nicht.',
    bench: 'Die Werkbank',
    oneRoster: 'Aus einem OneRoster-Export',
    oneRosterClass: 'sourcedId der Klasse (leer: der Export hat nur eine)',
    oneRosterResults: 'OneRoster-Ergebnisse dieser Übung',
    exportOne: 'Exportieren',
    eraseOne: 'Löschen',
    keepOne: 'Behalten',
    eraseSays: (name) => `Löscht ${name} mit jedem Versuch, endgültig. Den Namen eintippen:`,
    erased: (name) => `${name} ist gelöscht. Früher gemachte Sicherungen enthalten die Versuche noch.`,
    records: {
      kept: 'Wie lange aufbewahrt wird',
      forEver: 'Für immer: die Schule hat keine Frist gesetzt (LAB_KEEP_DAYS, wo das Labor gestartet wird).',
      keptFor: (days) => `${some(days, 'Tag', 'Tage')}; was älter ist, wird jede Nacht gelöscht.`,
      goes: (trainees, attempts) =>
        trainees.length + attempts === 0
          ? 'In der nächsten Nacht geht nichts von dieser Klasse.'
          : `In der nächsten Nacht gehen: ${[...trainees, some(attempts, 'Versuch anderer', 'Versuche anderer')].join(', ')}.`,
      versions: 'Versionen, die sie beurteilt haben',
      current: (engine, scoring) => `Engine ${engine}, Scoring ${scoring} arbeiten.`,
      oneVersion: 'Keine andere Version hat diese Klasse bewertet.',
      older: (engine, scoring, scores) =>
        `Engine ${engine}, Scoring ${scoring}: ${some(scores, 'Versuch', 'Versuche')}.`,
      compare: 'Was sich unterscheidet',
      compared: (all, differing) =>
        `${some(all, 'Versuch', 'Versuche')} von beiden bewertet; ${differing === 0 ? 'alle gleich' : differing === 1 ? '1 anders' : `${differing} anders`}.`,
      judged: (verdict, score) => `${verdict ?? 'nichts'}${score === null ? '' : `, ${score}`}`,
      trail: 'Wer was getan hat',
      trailSays:
        'Festgehalten werden Kennungen, nie Namen; wer gelöscht wurde, ist eine Kennung, die sonst nichts kennt.',
      columns: {
        at: 'Wann',
        who: 'Wer',
        did: 'Was',
        detail: 'Woran',
        trainee: 'Person',
        exercise: 'Übung',
        number: 'Nr.',
        before: 'Vorher',
        after: 'Jetzt',
      },
      roles: { lab: 'das Labor', other: (role, id) => `${role} ${id.slice(0, 8)}` },
    },
  },
};
