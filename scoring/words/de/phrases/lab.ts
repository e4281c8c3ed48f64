import type { labSentences } from '../../phrases/lab.ts';

/** What a school's lab answers, notes and writes into its trail, in German. */
export const labSaid: Record<(typeof labSentences)[number], string> = {
  'Too many tries. Wait {#1} s.': 'Zu viele Versuche. {1} s warten.',
  'Log in first.': 'Erst anmelden.',
  'This is for {1}.': 'Das ist nur für {1}.',
  instructors: 'Lehrkräfte',
  trainees: 'Lernende',
  'scoring workers': 'Rechner, die bewerten',
  'This is for whoever is in charge of the lab.': 'Das ist nur für die Leitung des Labors.',
  'This request did not come from the lab’s own page. Load the page again.':
    'Diese Anfrage kam nicht von der Seite des Labors. Die Seite neu laden.',
  'There is no such thing here, or it is not yours to see.':
    'So etwas gibt es hier nicht, oder diese Anmeldung darf es nicht sehen.',
  'There is nothing here.': 'Hier ist nichts.',
  'It is larger than {#1} bytes.': 'Es ist größer als {1} Byte.',
  'The database or the disk does not answer. Nothing is lost; try again.':
    'Datenbank oder Festplatte antworten nicht. Nichts ist verloren; noch einmal versuchen.',
  'Something went wrong in the lab. It is in its log.': 'Im Labor ging etwas schief. Es steht in seinem Protokoll.',
  'The content that arrived has the digest {=1}: it was changed on the way.':
    'Was ankam, hat die Prüfsumme {1}: es wurde unterwegs verändert.',
  'This exercise opens at {=1}.': 'Diese Übung öffnet am {1}.',
  'It closes before it opens.': 'Sie schließt, bevor sie öffnet.',
  'There is no ready exercise called {=1}.': 'Es gibt keine fertige Übung namens {1}.',
  'There are {#1} already: take one away first.': 'Es sind schon {1}: erst eine wegnehmen.',
  'A class takes at most {#1} trainees.': 'Eine Klasse fasst höchstens {1} Lernende.',
  'There is an instructor of this name.': 'Es gibt schon eine Lehrkraft dieses Namens.',
  'There is no instructor of this name.': 'Es gibt keine Lehrkraft dieses Namens.',
  'There is an instructor already, who can add others.': 'Es gibt schon eine Lehrkraft; sie kann andere hinzufügen.',
  'Somebody has to be in charge of the lab.': 'Jemand muss das Labor leiten.',
  'Nobody removes themselves: another who is in charge can.':
    'Niemand entfernt sich selbst: jemand anders aus der Leitung kann es.',
  'This is not the password until now.': 'Das ist nicht das bisherige Passwort.',
  'This is not the code printed where the lab was started.':
    'Das ist nicht der Code, der dort steht, wo das Labor gestartet wurde.',
  'Name and password do not belong together.': 'Name und Passwort gehören nicht zusammen.',
  'No class of this code has this name on its roster. Ask your instructor how it is spelt.':
    'Keine Klasse mit diesem Code hat diesen Namen auf ihrer Liste. Die Lehrkraft fragen, wie er dort geschrieben ist.',
  'Marks count in this class: join with the six digits your instructor gave you.':
    'In dieser Klasse zählen Noten: mit den sechs Ziffern beitreten, die die Lehrkraft ausgegeben hat.',
  'has control characters or line breaks': 'enthält Steuerzeichen oder Zeilenumbrüche',
  'is not a SHA-256 in lower-case hex': 'ist keine SHA-256-Prüfsumme in kleinen Hexadezimalziffern',
  'is not between 1900 and 2199': 'liegt nicht zwischen 1900 und 2199',
  'changes nothing': 'ändert nichts',

  'no file of that name': 'keine Datei dieses Namens',
  'a recording in the data folder': 'eine Aufzeichnung im Datenordner',
  'the sourcedId of a user in users.csv': 'die sourcedId einer Person in users.csv',
  'columns {=1}': 'Spalten {1}',
  'also {=1}': 'dazu {1}',
  'a column called name, or one name a line and nothing else':
    'eine Spalte namens name oder ein Name je Zeile und sonst nichts',
  'no CSV': 'kein CSV',
  'CSV text, quotes closed': 'CSV-Text mit geschlossenen Anführungszeichen',
  'a name of 1 to 120 characters on one line': 'ein Name von 1 bis 120 Zeichen in einer Zeile',
  '{=1} twice': 'zweimal {1}',
  'names that differ: add a second name or a number to one of them':
    'unterscheidbare Namen: einem einen zweiten Namen oder eine Nummer anfügen',

  'It arrived after the exercise had closed.': 'Er kam an, als die Übung schon geschlossen war.',
  'It is attempt {#1}, and {#2} counts.': 'Es ist Versuch {1}, und {2} zählt.',
  'It is attempt {#1}, and {#2} count.': 'Es ist Versuch {1}, und {2} zählen.',
  'The same hand, pose for pose, as {=1}.': 'Dieselbe Hand, Lage für Lage, wie {1}.',
  'Nearly the same motion as {=1}.': 'Fast dieselbe Bewegung wie {1}.',
  "It was welded on no plate of one's own, though the exercise deals everybody one: plate {#1} to this trainee.":
    'Er wurde auf keinem eigenen Blech geschweißt, obwohl die Übung jedem eines austeilt: dieser Person Blech {1}.',
  'It was welded on plate {#1}; the lab deals plate {#2} to this trainee.':
    'Er wurde auf Blech {1} geschweißt; das Labor teilt dieser Person Blech {2} aus.',
  "It was welded on plate {#1}, which is {=2}'s; the lab deals plate {#3} to this trainee.":
    'Er wurde auf Blech {1} geschweißt, das {2} gehört; das Labor teilt dieser Person Blech {3} aus.',
  'It was welded on plate {#1}, as another start word or nobody deals it; the lab deals plate {#2} to this trainee.':
    'Er wurde auf Blech {1} geschweißt, wie ein anderes Startwort oder niemand es austeilt; das Labor teilt dieser Person Blech {2} aus.',
  'It has no verdict, or is not scored yet.': 'Er hat kein Urteil oder ist noch nicht bewertet.',
  'Scoring broke off ({=1}).': 'Die Bewertung brach ab ({1}).',

  'PIN given': 'PIN ausgegeben',
  'assignment changed': 'ausgegebene Übung geändert',
  'attempt fetched': 'Versuch abgeholt',
  'attempt handed in': 'Versuch abgegeben',
  'class changed': 'Klasse geändert',
  'class made': 'Klasse angelegt',
  'class taken over': 'Klasse übernommen',
  'exercise handed out': 'Übung ausgegeben',
  'first instructor made': 'erste Lehrkraft angelegt',
  'instructor added': 'Lehrkraft hinzugefügt',
  'instructor changed': 'Lehrkraft geändert',
  'instructor removed': 'Lehrkraft entfernt',
  'logged in': 'angemeldet',
  'login refused': 'Anmeldung abgelehnt',
  'mark set': 'Note gesetzt',
  'own exercise added': 'eigene Übung hinzugefügt',
  'own exercise taken away': 'eigene Übung weggenommen',
  'own password changed': 'eigenes Passwort geändert',
  'roster added to': 'Liste ergänzt',
  'teacher added': 'Lehrkraft der Klasse hinzugefügt',
  'too old: attempt erased': 'zu alt: Versuch gelöscht',
  'too old: trainee erased': 'zu alt: Person gelöscht',
  'trainee erased': 'Person gelöscht',
  'trainee exported': 'Person ausgegeben',
};
