import type { Found } from '../advice/found.ts';
import type { Gap } from '../schema/gap.ts';
import type { Result } from '../schema/result.ts';
import type { FoundNote, FoundReason } from '../verdict/found.ts';
import type { Language } from './language.ts';
import { wordsIn } from './words.ts';

type Said = 'reasons' | 'notes' | 'advice' | 'notMeasured' | 'notModelled' | 'cautions';

/** A result before it is said: codes with their numbers where a result has sentences. Its order of keys is that of a result. */
export interface Judgement extends Omit<Result, Said> {
  reasons: FoundReason[];
  notes: FoundNote[];
  advice: Found[];
  notMeasured: Gap[];
}

/** The result of a judgement: its digits, and its sentences in a language. Files carry English. */
export function resultOf(judgement: Judgement, language: Language = 'en'): Result {
  const w = wordsIn(language);
  return {
    ...judgement,
    reasons: judgement.reasons.map(w.reason),
    notes: judgement.notes.map(w.note),
    advice: judgement.advice.map(w.advice),
    notMeasured: judgement.notMeasured.map(w.gap),
    notModelled: [...w.notModelled],
    cautions: [...w.cautions],
  };
}
