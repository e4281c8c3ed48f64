import { exercises } from '../../exercises/ready.ts';
import { isoRowsSaid, profilesSaid } from './profiles.ts';

interface Texts {
  title: string;
  story: string;
  teaches: string;
}

/** Titles, jobs and lessons of the ready exercises, by their names. */
const TEXTS: Partial<Record<string, Texts>> = {
  'straight-run': {
    title: 'Strichraupe am T-Stoß, mit Sockel',
    story:
      'Abschnitte der Stegkonsolen von Tern Dock. Unten halten, bis das Schmelzbad einen Sockel in voller Nahtbreite gebildet hat, dann ohne Pendeln auf ihm steigen.',
    teaches: 'Den Sockel abwarten, dann den Lichtbogen vorn auf dem Schmelzbad halten und gleichmäßig steigen.',
  },
  'two-toe-pause': {
    title: 'Pause an beiden Übergängen',
    story:
      'Dieselben Abschnitte, jetzt von Übergang zu Übergang. Die Mitte schnell kreuzen und an jeder Seite warten, bis das Metall angeflossen ist; eins zählen, hinüber, eins zählen.',
    teaches: 'An den Übergängen warten, nicht in der Mitte, und weggehen, wenn der Übergang gefüllt ist.',
  },
  'settings-by-ear': {
    title: 'Einstellen nach Gehör',
    story:
      'Das Lager hat ein Gerät ausgegeben, das jemand zurückgedreht hat. Drahtvorschub und Spannung stellen, bis es wie Braten klingt, dann damit eine Konsolenecke pendeln.',
    teaches:
      'Eine flache Naht aus kalter Einstellung ist keine gute: erst die Wurzel ansehen, dann die Oberfläche loben.',
  },
  'tee-inverted-v': {
    title: 'Umgekehrtes V am T-Stoß, 6 mm',
    story:
      'Stegkonsole, Steg auf Gurt, 6 mm auf 6 mm. Übergang, über die Wurzel hinauf, Übergang; bei jedem Kreuzen trifft der Lichtbogen vorn auf das Schmelzbad.',
    teaches: 'Bei jedem Kreuzen über der Wurzel vorgreifen, dann an jedem Übergang warten.',
  },
  'tee-triangle': {
    title: 'Umlaufendes Dreieck am T-Stoß, 5 mm',
    story:
      'Eine leichtere Konsole, 5 mm auf 5 mm, mit umlaufendem Dreieck: über den Sockel von Übergang zu Übergang, hinauf in die Wurzel und hinab zum ersten Übergang, immer gleich herum.',
    teaches: 'Immer gleich herum, und die Spitze des Dreiecks bis in die Wurzel führen.',
  },
  'tee-crescent': {
    title: 'Halbmond am T-Stoß, 6 mm',
    story:
      'Eine Konsole, die man vom Steg aus sieht. Ein flacher Halbmond von Übergang zu Übergang, bewertet nach ISO 5817, Bewertungsgruppe C.',
    teaches: 'Gleiche Schritte und gleiche Pausen: die Oberfläche nimmt die Form des Taktes an.',
  },
  'tee-gap': {
    title: 'T-Stoß mit 1,5 mm Stegabstand',
    story:
      'Der Steg wurde zu kurz geschnitten und steht 1,5 mm vom Gurt ab. Der Schenkel muss um den Spalt wachsen, bevor die Naht dasselbe trägt.',
    teaches: 'Ein Spalt kostet Metall und a-Maß: langsamer werden, bis er ausgeglichen ist, und die Wurzel halten.',
  },
  'tee-thin': {
    title: 'Dünner T-Stoß, 4 mm Blech',
    story: 'Konsolen für Kabelrinnen in 4 mm. Weniger Metall, weniger Wärme und weniger Zeit, bis das Blech durchgeht.',
    teaches: 'Zurückdrehen, schmaler pendeln und in Bewegung bleiben.',
  },
  'tee-warm-narrow': {
    title: 'Warme schmale Bleche',
    story:
      'Zweites Stück gleich nach dem ersten, auf Streifen von nur 50 mm Breite und noch mit 120 °C. Das obere Ende wird heiß: schneller steigen, wenn es warm wird.',
    teaches: 'Das Schmelzbad lesen und nicht den Takt: ein heißes Blech will mehr Geschwindigkeit.',
  },
  'lap-5': {
    title: 'Überlappstoß, 5 mm Blech',
    story:
      'Verstärkungsblech an einer Schwimmerkonsole. Die Kante ist weg, ehe man es merkt: am hinteren Blech warten, die Kante nur berühren.',
    teaches: 'Lange Pause am hinteren Blech, kurze an der Kante, und die Kante scharf lassen.',
  },
  'test-piece': {
    title: 'Prüfstück ohne Hilfen',
    story:
      'Das Stück, das auf die Bank beim Büro kommt. 120 mm, Schnitte vorher angezeichnet, kein Takt, keine Marken, Einstellungen wie gegeben.',
    teaches: 'Alles auf einmal, allein.',
  },
};

let texts: Map<string, string> | null = null;

/** A text of the ready exercises or profiles in German; any other is somebody's own and stays as it is. */
export function readyText(english: string): string {
  texts ??= new Map(
    exercises.flatMap((e) => {
      const said = TEXTS[e.name];
      return said === undefined
        ? []
        : (['title', 'story', 'teaches'] as const).map((field) => [e[field], said[field]] as const);
    }),
  );
  const said = texts.get(english) ?? profilesSaid[english] ?? isoClause(english);
  if (said !== undefined) return said;
  const asked = askedSaid(english);
  if (asked !== undefined) return asked;
  const [, clause, from] = /^(.*), counted from ([\d.]+) mm$/.exec(english) ?? [];
  return clause === undefined ? english : `${readyText(clause)}, gezählt ab ${from!.replace('.', ',')} mm`;
}

/** "ISO 5817-C 503: convexity": number and level stay, the name of the imperfection is said. */
function isoClause(english: string): string | undefined {
  const [, head, row] = /^(ISO 5817-[BCD] [\d/]+: )(.+)$/.exec(english) ?? [];
  const said = row === undefined ? undefined : isoRowsSaid[row];
  return said === undefined ? undefined : head + said;
}

/** What an exercise asks beyond its profile, as a line of the result cites it. */
function askedSaid(english: string): string | undefined {
  const [, most, kind] = /^asked: at most ([\d.]+) mm (leg|throat)$/.exec(english) ?? [];
  if (kind !== undefined) return `gefordert: ${kind === 'leg' ? 'Schenkel' : 'a-Maß'} höchstens ${comma(most!)} mm`;
  const [, back] = /^asked: edge melted back at most ([\d.]+) mm$/.exec(english) ?? [];
  return back === undefined ? undefined : `gefordert: Kante höchstens ${comma(back)} mm abgeschmolzen`;
}

function comma(number: string): string {
  return number.replace('.', ',');
}
