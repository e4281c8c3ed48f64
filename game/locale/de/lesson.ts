import type { lessonWords as english } from '../lesson.ts';

/** Words of the first lesson. */
export const lessonWords: typeof english = {
  title: 'Erste Lektion',
  offer:
    'Neu an dieser Werkbank? Eine Lektion in sechs Schritten, unter fünf Minuten: vom T-Stoß bis zum ersten Blick auf die Wurzel.',
  begin: 'Lektion beginnen',
  goOn: 'Lektion fortsetzen',
  again: 'Erste Lektion noch einmal',
  notNow: 'Nicht jetzt',
  place: (n, of) => `Schritt ${n} von ${of}`,
  next: 'Weiter',
  back: 'Zurück',
  end: 'Lektion beenden',
  leave: 'Lektion verlassen',
  show: 'Zeigen',
  steps: {
    joint: {
      title: 'Was ein T-Stoß ist',
      text: 'Ein Blech steht auf der Fläche des anderen. Die Naht kommt in die Ecke, von unten nach oben. Die Linie, in der sich die Bleche treffen, ist die Wurzel; die beiden Ränder der Naht sind ihre Übergänge. Die Aufgabe: die Wurzel aufschmelzen, beide Übergänge anfließen lassen und keinen Höcker dazwischen lassen.',
    },
    weave: {
      title: 'Das Pendeln',
      text: 'Die Linie ist der hier geforderte Weg: am Übergang warten, über die Wurzel hinauf vorn auf das Schmelzbad, am anderen Übergang warten. Ringe zeigen, wo die Hand ruht. Jede Pause lässt das Metall den Übergang füllen; eine schnell gekreuzte Mitte bleibt flach.',
    },
    robot: {
      title: 'Fünf Sekunden davon',
      text: 'Die Roboterhand pendelt fünf Sekunden lang so. Auf die Vorderkante des Schmelzbads und auf die Übergänge sehen, wie durch einen Helm, nicht in den Lichtbogen.',
    },
    straight: {
      title: 'Selbst schweißen: eine Strichraupe mit Sockel',
      text: 'Noch ohne Pendeln. Unten auf die Fuge drücken und halten. Warten, bis das Schmelzbad ein Sockel quer über die Ecke ist, etwa zwei Sekunden, dann mit etwa 3 mm je Sekunde auf ihm bis oben steigen. Loslassen und „hier beenden“ wählen. Mit der Tastatur: mit Tab zur Fuge, Leertaste halten, mit Pfeil nach oben steigen, mit Enter beenden.',
      tooShort: 'Das war kurz. Mindestens vier Sekunden halten, sonst gibt es keine Naht zum Ansehen.',
    },
    cut: {
      title: 'Der erste Schnitt',
      text: 'Das ist die eigene Naht, an der Linie A–A durchgesägt. Die Linie ziehen oder mit Tab hingehen und die Pfeile nehmen: der Schnitt folgt. Ein Schenkel reicht von der Wurzel am Blech entlang bis zum Übergang; Überhöhung ist, wie weit die Oberfläche über die gerade Linie von Übergang zu Übergang hinaussteht.',
    },
    root: {
      title: 'Der erste Blick auf die Wurzel',
      text: 'Der Streifen neben der Fuge ist die freigelegte Wurzel, als wäre die Kehlnaht aufgebrochen: schraffiert, wo beide Bleche verschmolzen sind, leer und liniert, wo sie nie zusammenkamen. Eine Naht kann von außen gut aussehen und die Wurzel leer lassen: zuerst hierher sehen. Dann lesen, was zuerst zu ändern ist, und neu schweißen.',
    },
  },
};
