/** Titles of the acceptance profiles that come with Toehold, what they are of, and the notes and clauses that are words of ours, in German. */
export const profilesSaid: Readonly<Record<string, string>> = {
  'AWS D1.1 fillet, statically loaded, SI table': 'AWS D1.1 Kehlnaht, ruhend belastet, SI-Tabelle',
  'AWS D1.1 fillet, statically loaded, inch table': 'AWS D1.1 Kehlnaht, ruhend belastet, Zoll-Tabelle',
  'AWS D1.1 fillet, cyclically loaded, SI table': 'AWS D1.1 Kehlnaht, schwingend belastet, SI-Tabelle',
  'AWS D1.1 fillet, cyclically loaded, inch table': 'AWS D1.1 Kehlnaht, schwingend belastet, Zoll-Tabelle',
  'ISO 5817 quality level B': 'ISO 5817, Bewertungsgruppe B',
  'ISO 5817 quality level C': 'ISO 5817, Bewertungsgruppe C',
  'ISO 5817 quality level D': 'ISO 5817, Bewertungsgruppe D',
  'ISO 5817 as ISO 15614-1 level 2 mixes it': 'ISO 5817, gemischt nach ISO 15614-1 Stufe 2',
  'ISO 5817 as ISO 9606-1 mixes it for welder tests': 'ISO 5817, gemischt nach ISO 9606-1 für Schweißerprüfungen',
  'Tern Dock first runs': 'Tern Dock, erste Raupen',
  '2004 and 2010 onwards, see source': '2004 und ab 2010, siehe Quelle',
  '2017 with 2014': '2017 mit 2014',
  '2012 with 2014': '2012 mit 2014',

  'D1.1 Table 6.1 (2): thorough fusion to base metal, read at the root':
    'D1.1 Table 6.1 (2): vollständige Bindung zum Grundwerkstoff, an der Wurzel gelesen',
  'D1.1 Table 6.1 (2): thorough fusion to base metal, read along each plate':
    'D1.1 Table 6.1 (2): vollständige Bindung zum Grundwerkstoff, an jedem Blech gelesen',
  'D1.1 5.24 / Figure 5.4: no overlap': 'D1.1 5.24 / Figure 5.4: kein Schweißgutüberlauf',
  'D1.1 Table 6.1 (3): craters filled, read as filled to the size asked':
    'D1.1 Table 6.1 (3): Endkrater gefüllt, gelesen als gefüllt bis zum geforderten Maß',
  'D1.1 Table 5.10 (2020: 7.9), inch: convexity by width of face':
    'D1.1 Table 5.10 (2020: 7.9), Zoll: Nahtüberhöhung nach Nahtbreite',
  'D1.1 Table 5.10 (2020: 7.9), SI: convexity by width of face':
    'D1.1 Table 5.10 (2020: 7.9), SI: Nahtüberhöhung nach Nahtbreite',
  'D1.1 Table 6.1 (6), inch: undersize by nominal leg, over at most 10 % of the length':
    'D1.1 Table 6.1 (6), Zoll: Untermaß nach Nennschenkel, auf höchstens 10 % der Länge',
  'D1.1 Table 6.1 (6), SI: undersize by nominal leg, over at most 10 % of the length':
    'D1.1 Table 6.1 (6), SI: Untermaß nach Nennschenkel, auf höchstens 10 % der Länge',
  'D1.1 Table 6.1 (7), inch: cyclic, primary tension across the weld':
    'D1.1 Table 6.1 (7), Zoll: schwingend, Hauptzug quer zur Naht',
  'D1.1 Table 6.1 (7), SI: cyclic, primary tension across the weld':
    'D1.1 Table 6.1 (7), SI: schwingend, Hauptzug quer zur Naht',
  'D1.1 Table 6.1 (7), inch: static, plate under 1 in': 'D1.1 Table 6.1 (7), Zoll: ruhend, Blech unter 1 in',
  'D1.1 Table 6.1 (7), SI: static, plate under 25 mm': 'D1.1 Table 6.1 (7), SI: ruhend, Blech unter 25 mm',

  'Tern Dock: tied in at the root': 'Tern Dock: Wurzel erfasst',
  'Tern Dock: at most 0.5 mm under the leg asked': 'Tern Dock: höchstens 0,5 mm unter dem geforderten Schenkel',
  'Tern Dock: at most 1.5 mm of metal resting on cold plate': 'Tern Dock: höchstens 1,5 mm Metall auf kaltem Blech',
  'Tern Dock: crown of a straight run at most 3 mm': 'Tern Dock: Überhöhung einer Strichraupe höchstens 3 mm',
  'Tern Dock: undercut at most 0.5 mm': 'Tern Dock: Einbrandkerbe höchstens 0,5 mm',
};

/** Titles of the rows of ISO 5817 after their number. */
export const isoRowsSaid: Readonly<Record<string, string>> = {
  'undercut, plate up to 3 mm': 'Einbrandkerbe, Blech bis 3 mm',
  'undercut, plate over 3 mm': 'Einbrandkerbe, Blech über 3 mm',
  convexity: 'zu große Nahtüberhöhung',
  'toe angle': 'schroffer Nahtübergang',
  overlap: 'Schweißgutüberlauf',
  'unequal legs': 'Ungleichschenkligkeit',
  'throat too small, plate up to 3 mm': 'zu kleine Kehlnahtdicke, Blech bis 3 mm',
  'throat too small, plate over 3 mm': 'zu kleine Kehlnahtdicke, Blech über 3 mm',
  'throat too large': 'zu große Kehlnahtdicke',
  'lack of fusion to the plate': 'Bindefehler am Blech',
  'lack of fusion at the root': 'Bindefehler an der Wurzel',
  'end crater, depth below the face, plate up to 3 mm': 'Endkrater, Tiefe unter der Nahtoberfläche, Blech bis 3 mm',
  'end crater, depth below the face, plate over 3 mm': 'Endkrater, Tiefe unter der Nahtoberfläche, Blech über 3 mm',
  'root gap, plate over 3 mm': 'Stegabstand, Blech über 3 mm',
};
