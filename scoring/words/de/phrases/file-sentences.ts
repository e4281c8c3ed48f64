import type { fileSentences } from '../../phrases/file-sentences.ts';

/** Reasons and notes that speak of a file, in German. */
export const fileSentencesSaid: Record<(typeof fileSentences)[number], string> = {
  'How the attempt ended, or its check number, was changed in the file after welding.':
    'Das Ende des Versuchs oder seine Prüfzahl wurde nach dem Schweißen in der Datei geändert.',
  'Poses were changed in the file after welding, from second {#1} on.':
    'Die Handbewegung wurde nach dem Schweißen in der Datei geändert, ab Sekunde {1}.',
  'Settings, exercise or something else above the poses was changed in the file after welding; which of them cannot be told.':
    'Einstellungen, Übung oder etwas anderes im Kopf der Datei wurde nach dem Schweißen geändert; was davon, lässt sich nicht sagen.',
  'Poses and settings are as they were saved, yet welded again here the attempt parts from the saved one in second {#1}. That should not happen with one engine: please report the file.':
    'Bewegung und Einstellungen sind wie gespeichert, doch neu geschweißt weicht der Versuch in Sekunde {1} vom gespeicherten ab. Mit derselben Rechenversion darf das nicht vorkommen: bitte die Datei melden.',
  'Welded again, this recording ends in another state (check number {=1}) than it was saved with ({=2}); without a chain of check numbers it cannot be told why.':
    'Neu geschweißt endet diese Aufzeichnung in einem anderen Zustand (Prüfzahl {1}) als gespeichert ({2}); ohne Kette von Prüfzahlen lässt sich nicht sagen, warum.',
  'The file carries an exercise called {=1} that is not the ready one of that name.':
    'Die Datei trägt eine Übung namens {1}, die nicht die mitgelieferte dieses Namens ist.',
  'Gap, start temperature or cuts are not those that the seed of plate {#1} deals: they were changed.':
    'Stegabstand, Anfangstemperatur oder Schnitte sind nicht die, die Blech {1} zugeteilt sind: sie wurden geändert.',
  "The joint is not the exercise's: {1}.": 'Die Fuge ist nicht die der Übung: {1}.',
  "The settings are not the exercise's: {1}.": 'Die Einstellungen sind nicht die der Übung: {1}.',
  '{1} is {2} instead of {3}': '{1}: {2} statt {3}',
  'The exercise fixes no cut inside its judged length, so nothing is looked at where it was said beforehand.':
    'Die Übung legt in ihrer bewerteten Länge keinen Schnitt fest; nichts wird also dort angesehen, wo es vorher gesagt war.',
  "The exercise's judged length is {#1} mm; under {#2} mm nothing is shown by it.":
    'Die bewertete Länge der Übung ist {1} mm; unter {2} mm zeigt sie nichts.',
  "The exercise's size is {#1} mm; under {#2} mm nothing is shown by it.":
    'Die Nahtgröße der Übung ist {1} mm; unter {2} mm zeigt sie nichts.',
  "Says it is a hand's and carries the robot's {=1}: kept, not counted.":
    'Gibt sich als Werk einer Hand aus und trägt {1} der Roboterhand: aufbewahrt, nicht gezählt.',
  'A {1} does not measure {2}, yet it varies by {3} in the file: kept, not counted.':
    'Gerät „{1}“ misst eines nicht ({2}), das doch in der Datei um {3} schwankt: aufbewahrt, nicht gezählt.',
  'The file carries no check number: whether it is what was welded cannot be told; practice until it is welded again.':
    'Die Datei trägt keine Prüfzahl: ob sie ist, was geschweißt wurde, lässt sich nicht sagen; Übungsversuch, bis sie neu geschweißt ist.',
  'Welded in cells of {#1} mm where the bench has {#2}: a study, not an attempt at the bench.':
    'In Zellen von {1} mm geschweißt, wo die Werkbank {2} hat: eine Untersuchung, kein Versuch an der Werkbank.',
  "The aim keeps to the exercise's own demonstration within {#1} mm for {#2} s; hands wander farther. Kept, not counted.":
    'Die Führung hält sich {2} s lang auf {1} mm an die Vorführung der Übung; Hände schweifen weiter ab. Aufbewahrt, nicht gezählt.',
  "The aim keeps to the exercise's own demonstration, mirrored, within {#1} mm for {#2} s; hands wander farther. Kept, not counted.":
    'Die Führung hält sich {2} s lang auf {1} mm an die gespiegelte Vorführung der Übung; Hände schweifen weiter ab. Aufbewahrt, nicht gezählt.',
  '{#1} cycles even to {#2} % of their length; hands spread by some per cent. Kept, not counted.':
    '{1} Pendelungen sind auf {2} % ihrer Dauer gleich; Hände streuen um einige Prozent. Aufbewahrt, nicht gezählt.',
  'Welded with engine {=1} and welded again here with {=2}: the bead may differ from the one seen then.':
    'Mit Rechenversion {1} geschweißt und hier mit {2} neu geschweißt: die Naht kann von der damals gesehenen abweichen.',
  'Aids on that this exercise does not allow: {1}.': 'Hilfen an, die diese Übung nicht zulässt: {1}.',
  pacer: 'Schrittmacher',
  'pacer, {1}': 'Schrittmacher, {1}',
  'beat, {1}': 'Takt, {1}',
  'toe marks': 'Marken an den Übergängen',
  'toe marks, {1}': 'Marken an den Übergängen, {1}',
  'hand rig': 'Handgeschirr',
  yes: 'ja',
  no: 'nein',
  '{#1} mm': '{1} mm',
  '{#1} °C': '{1} °C',
  '{#1}°': '{1}°',
  '{#1} V': '{1} V',
  '{#1} m/min': '{1} m/min',
  '{#1} W/(mm K)': '{1} W/(mm K)',
  'its kind': 'Art',
  'the right (back) plate': 'rechtes (hinteres) Blech',
  'the left (edge) plate': 'linkes (Kanten-) Blech',
  'the width of the plates': 'Breite der Bleche',
  'its length': 'Länge',
  'the gap': 'Stegabstand',
  'the temperature of the plates at the start': 'Anfangstemperatur der Bleche',
  'the temperature of the room': 'Raumtemperatur',
  'the heat drawn off by clamps': 'Wärmeabfuhr durch Spannmittel',
  'having run-on and run-off tabs': 'An- und Auslaufbleche',
  'the wire': 'Draht',
  'the wire feed': 'Drahtvorschub',
  'the voltage': 'Spannung',
  'the gas': 'Schutzgas',
  'the place of the contact tip in the nozzle': 'Lage des Kontaktrohrs in der Düse',
  'the nozzle': 'Gasdüse',
  'the work angle': 'Arbeitswinkel',
  'the travel angle': 'Neigungswinkel',
};
