import { wordsIn } from '../../../scoring/index.ts';
import type { GuidePart } from '../guide.ts';

/** The page for instructors, in German. */
export const guide: readonly GuidePart[] = [
  {
    heading: 'Was das Modell hat',
    text: [
      'Wärme in beiden Blechen, ein Schmelzbad, das die Oberflächenspannung hält und die Schwerkraft herabzieht, Metall, wie der Draht es bringt, eine Naht, die erstarrt, wo die Wärme es zulässt. Nichts wird am Namen einer Pendelform nachgeschlagen: Strichraupe, Pendeln und Gekritzel werden nach denselben Regeln geschweißt.',
      'So ergibt sich von selbst: Spannung verbreitert und flacht ab, Draht häuft auf, eine Pause füllt den Übergang, ein zurückgehaltener Lichtbogen lässt die Wurzel kalt, ein warmes oberes Ende wird breit, ein Spalt schluckt Metall.',
    ],
  },
  {
    heading: 'Was es nicht hat',
    text: [`Nicht modelliert: ${wordsIn('de').notModelled.join('; ')}.`],
    list: [
      'Das Verhältnis von Wurzel und Überhöhung ist nach üblicher Praxis eingestellt, nicht nach Messungen an einem bestimmten Gerät und Stahl. Seine Zahlen sind die eines Unterrichts, seine Tendenzen sind die Lektion.',
      'Es fehlen das Gewicht des Brenners, die Hitze an den Händen, Geräusch und Geruch unter dem Helm, Körperhaltung, Passarbeit und Nerven. Der Bildschirm lehrt, wohin zu sehen und wann zu gehen ist; die Kabine lehrt den Rest.',
      'Maus und Finger messen weder Kontaktrohrabstand noch Winkel: sie werden gehalten und stehen als „nicht gemessen“ da.',
    ],
  },
  {
    heading: 'Wie damit zu unterrichten ist',
    text: [
      'Zehn Minuten am Bildschirm, dann in die Kabine, dann an die Säge. Nicht umgekehrt, und nie der Bildschirm allein.',
    ],
    list: [
      'Immer nur eines ändern, in Schritten, die eine Hand spürt: eine Zehntelsekunde, ein Millimeter, ein Viertelmeter Draht.',
      'Erst fragen, dann zeigen: den Schnitt messen lassen, dann vergleichen; den Fehler nennen lassen, dann die Befunde lesen.',
      'Erst den Schnitt ansehen, dann die Zahl. Die Zahl gilt dem Verlauf einer einzigen Hand und nie einer Rangliste.',
      'Zu knapp heißt: ein echtes Stück aufsägen. So sagen, und es tun.',
      'Keine glatte Oberfläche über einer nicht erfassten Wurzel loben.',
      'Hilfen gehen nach drei guten Versuchen hintereinander und kommen nach zwei schlechten wieder. Ein Test hat keine.',
    ],
  },
  {
    heading: 'Montag: machen und prüfen',
    text: [],
    list: [
      'Pult, Übung: mit „Pause an beiden Übergängen“ oder dem T-Stoß mit umgekehrtem V beginnen, Bleche, Größe und Draht wie in den Kabinen einstellen; Vorschub und Spannung in einem Bereich frei lassen, wenn es an dem Tag ums Hören geht.',
      'Roboterhände prüfen lassen. Bestehen gute Hände mit Spielraum, erkennt sie die Fehler, um die es gehen soll? Wenn nicht, Größe oder Steigen ändern und neu prüfen.',
      'Stegabstand und Schnitte wechseln lassen, wenn Nachbarn eng sitzen: dann hat jeder ein eigenes Stück, nach Startwort und Blechnummer.',
      'Auf dem Stick sichern. Das Übungsblatt, das Schliffblatt und für jedes Gerät eine Kabinenkarte drucken; an jedem sechs Sekunden Draht auslaufen lassen und aufschreiben.',
    ],
  },
  {
    heading: 'Dienstag: alle schweißen',
    text: [],
    list: [
      'Die Übung auf beiden Rechnern öffnen, die Liste einfügen, das Startwort an die Tafel schreiben. „Nächste Person“ vor jedem Wechsel.',
      'Zuerst die erste Lektion, sechs Schritte; dann je drei Versuche. Wer wartet, liest Schnitte: „Selbst messen“.',
      'Alle sichern ihre Versuche auf dem Stick. Dateinamen tragen Tag, Platz, Namen, Übung und Nummer.',
    ],
  },
  {
    heading: 'Mittwoch: das Klassenblatt',
    text: [],
    list: [
      'Pult, Klasse: alle Dateien auf dem Stick wählen. Die drei, die zuerst anzusehen sind, stehen oben, jeder mit dem Schnitt, der auf den Tisch gehört.',
      'Einen der drei dem Raum zeigen, Namen verborgen: halbes Tempo, Pendelung für Pendelung, bei jedem Kreuzen die Vorderkante des Bads. Darauf zeichnen. Dann zwei Versuche nebeneinander, im Gleichschritt.',
      'Der häufigste Fehler der Klasse ist die Lektion des Vormittags; in der Kabine absichtlich schweißen und aufbrechen.',
    ],
  },
  {
    heading: 'Donnerstag: die Kabine',
    text: [],
    list: [
      'Dieselbe Übung in Stahl, Einstellungen nach der Kabinenkarte. Die Schnitte anzeichnen, bevor gezündet wird.',
      'Ein Prüfstück in zwei Techniken schweißen, je eine Hälfte. Durch beide sägen.',
    ],
  },
  {
    heading: 'Freitag: Prüfstücke und Papier',
    text: [],
    list: [
      'Schliffe: drei lesen, jeder für sich, auf dem Schliffblatt. Fotografieren, markieren, den Schnitt des Modells darüberlegen. Wo sie auseinandergehen, hat der Stahl recht: sagen, was das Modell weggelassen hat.',
      'Die Spalten der Lesenden in eine Tabelle tippen und sehen, wie weit sie übereinstimmen, bevor über ein Zehntel gestritten wird.',
      'Das Klassenblatt mit der Änderung der Woche drucken; alle bekommen den Bericht ihres letzten Versuchs, ein Blatt, mit der Spalte des echten Prüfstücks von Hand ausgefüllt.',
    ],
  },
  {
    heading: 'Ohne Befehlszeile',
    text: ['Nichts, was eine Klasse braucht, verlangt eine Befehlszeile. Was sie hat, und wo diese Seite es hat:'],
    list: [
      'weave: „Roboterhand“ schweißt die Übung auf dem Tisch; unvollkommene Hände und benannte Fehler bei „Von Roboterhänden prüfen lassen“ am Pult unter Übung.',
      'score, advise: die Befunde eines Versuchs, jeder mit seinem Beweis, das Ergebnis als JSON darunter; viele Versuche am Pult unter Klasse, als Tabellen (CSV, JSON-Zeilen).',
      'section: der Schnitt neben der Naht, wohin man ihn zieht; „Zeichnung sichern“ darüber. report: Drucken, und „Als PDF sichern“ des Browsers.',
      'sheet: am Pult unter Klasse, mit Liste, Startwort und eigenen Übungen; PDF und CSV haben die Bytes der Befehlszeile.',
      'exercise: am Pult unter Übung; Blatt, Schliffblatt und Kabinenkarte werden gedruckt oder als PDF gesichert, mit den Bytes der Befehlszeile.',
      'range: die Karte der Einstellungen, über Vorschub und Spannung. Weitere Reihen, über Geschwindigkeit oder Kontaktrohrabstand, dauern lange und bleiben der Befehlszeile.',
      'schema, Geheimnis eines Ordners, Grenzen der Rechenarbeit: für Programme und für Ordner, in die Fremde schreiben, nicht für eine Klasse.',
      'Einen alten Versuch nach anderen Grenzen zu beurteilen bleibt der Befehlszeile (score --profile): hier wird ein Versuch nach dem beurteilt, wofür er geschweißt wurde.',
    ],
  },
];
