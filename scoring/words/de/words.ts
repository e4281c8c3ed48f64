import { adviceSaid } from '../advice.ts';
import type { ScoringWords } from '../en.ts';
import { tiedInShares, weldedDown, wholePercent } from '../root.ts';
import { noteSaid, reasonSaid } from '../verdict.ts';
import { adviceSentences } from './advice.ts';
import { drawingWords } from './drawing.ts';
import { readyText } from './exercises.ts';
import { gapSaid } from './gaps.ts';
import { leftWords } from './left-free.ts';
import { measureName, plateName, said, toeName } from './names.ts';
import { phrase, refusal } from './phrases/book.ts';
import { rootSaid } from './seen.ts';
import { changeSaid, proofSentences } from './trials.ts';
import { noteSentences, reasonSentences } from './verdict.ts';

const tiedInSaid: ScoringWords['tiedInSaid'] = (r) => {
  const shares = tiedInShares(r);
  const { bare_mm } = r.bead;
  if (shares === null) return null;
  if (weldedDown(r)) return 'Wurzel nicht bewertet: fallend geschweißt';
  const percent = wholePercent(shares.sure);
  const doubt = shares.doubt === 0 ? '' : `, auf ${wholePercent(shares.doubt)} % unklar`;
  if (bare_mm.length === 0) return `Wurzel auf ${percent} % der bewerteten Länge erfasst${doubt}`;
  return `Wurzel auf ${percent} % der vorhandenen Naht erfasst${doubt}; ${bare_mm.length} mm der bewerteten Länge sind ohne Naht`;
};

/** What scoring says, in German: the trade's terms as in DIN EN ISO 17659 and 6520-1 (from memory); what to do in the infinitive. */
export const german: ScoringWords = {
  said,
  plateName,
  toeName,
  measureName,
  rootSaid,
  tiedInSaid,
  left: leftWords,
  changeSaid,
  proof: proofSentences,
  drawing: drawingWords,
  advice: (found) => adviceSaid(found, adviceSentences),
  reason: (found) => reasonSaid(found, reasonSentences),
  note: (found) => noteSaid(found, noteSentences),
  gap: gapSaid,
  ready: readyText,
  phrase,
  refusal,
  unset: (list) =>
    `In Klammern: Zeichen, die die Schrift dieses PDF nicht hat (${list}). Dasselbe Blatt, als Seite gesichert oder von ihr gedruckt, zeigt sie.`,
  notModelled: [
    'Poren',
    'Risse',
    'Silikatinseln',
    'Zündstellen und Spritzer auf dem Blech',
    'Verzug',
    'Einbrandkerben, aus denen Metall ausgelaufen ist (ein aufgeschmolzener Übergang steht stattdessen als Kerbgefahr)',
  ],
  cautions: [
    'Eine Lernhilfe. Es entscheiden die örtlichen Vorschriften, die schriftliche Anweisung (WPS) und die Prüfaufsicht; eine Bewertung qualifiziert niemanden.',
    'Üben ersetzt hier weder beaufsichtigtes Schweißen noch Schutzausrüstung, Lüftung, Brandwache oder ein qualifiziertes Verfahren.',
    'Schweißen kann blenden, verbrennen, elektrisieren, vergiften und Brände auslösen.',
  ],
};
