/** Every language says everything: the compiler holds the catalogues to one shape; here they are read, as a page reads them. */
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { loadWords, ready, words } from '../../../game/locale/index.ts';
import { language, languageFor } from '../../../game/locale/language.ts';
import { counted, fixed, trimmed } from '../../../game/locale/numbers.ts';
import { exercises, inInches, proofSaid, wordsIn } from '../../../scoring/index.ts';
import { lineMeasures } from '../../../scoring/schema/profile.ts';
import { adviceSentences as german } from '../../../scoring/words/de/advice.ts';

beforeAll(() => loadWords('de'));

afterEach(() => {
  language.value = 'en';
});

describe('words in a language', () => {
  it('follow the language, also where a part of them was kept before', () => {
    const kept = words.top;
    expect(kept.aids).toBe('Aids');
    language.value = 'de';
    expect(kept.aids).toBe('Hilfen');
    expect(Object.keys(words.weave)).toContain('inverted-v');
    expect(words.guide.length).toBeGreaterThan(3);
  });

  it('are taken from the first language a browser asks for that there is', () => {
    expect(languageFor(['fr-CH', 'de-AT', 'en'])).toBe('de');
    expect(languageFor(['fr'])).toBe('en');
    expect(languageFor(['en-GB', 'de'])).toBe('en');
  });

  it('write numbers with the separator of the language and count by its rules', () => {
    language.value = 'de';
    expect(fixed(-1.25, 1)).toBe('−1,3');
    expect(trimmed(18.5, 2)).toBe('18,5');
    expect(trimmed(20, 2)).toBe('20');
    expect(counted(1, 'Datei', 'Dateien')).toBe('1 Datei');
    expect(counted(0, 'Datei', 'Dateien')).toBe('0 Dateien');
  });

  it('leave no sentence in the other language', () => {
    const english = flat(inLanguage('en'));
    const same = [...flat(inLanguage('de'))].filter(
      ([path, text]) => english.get(path) === text && /[a-z]{3} [a-z]{3}/.test(text),
    );
    expect(same).toEqual([]);
  });

  it('name every measure, ready exercise and piece of advice', () => {
    const w = wordsIn('de');
    for (const measure of lineMeasures) expect(w.measureName(measure, null, 'tee'), measure).not.toBe(measure);
    for (const e of exercises) {
      for (const text of [e.title, e.story, e.teaches]) expect(w.ready(text), e.name).not.toBe(text);
    }
    language.value = 'de';
    expect(ready('Our own corner')).toBe('Our own corner');
    expect(Object.keys(german).length).toBeGreaterThan(40);
  });

  it('say what was tried of a first sentence in the language asked for', () => {
    const before = {
      measure: 'convexity',
      side: null,
      unit: 'mm',
      sense: 'at most',
      limit: 2,
      plusMinus: 0.2,
      reading: 2.6,
      y_mm: 40,
    } as const;
    const told = {
      kind: 'tee',
      before,
      mends: true,
      change: { what: 'width_mm', by: 1 },
      after: { ...before, reading: 1.7 },
    } as const;
    expect(proofSaid({ ...told, stays: true }, 'Breiter pendeln.', 'de')).toEqual({
      says: 'Breiter pendeln.',
      note: 'Mit derselben Hand neu geschweißt und eines geändert: 1 mm breiter pendeln. Nahtüberhöhung geht von 2,6 mm auf 1,7 mm, und nichts anderes gerät nach außerhalb; es hält auch bei einem etwas anderen Versuch.',
    });
    expect(proofSaid({ ...told, stays: false }, 'x', 'de').says).toBe('1 mm breiter pendeln.');
    expect(proofSaid({ ...told, stays: false }, 'x', 'en').says).toBe('Weave 1 mm wider.');
  });

  it('say inches by the exact inch of 25.4 mm (ISO 31-1)', () => {
    expect(inInches(6.35, 'mm', 'en')).toBe('0.25 in');
    expect(inInches(2, 'mm/s', 'en')).toBe('4.7 in/min');
    expect(inInches(5.08, 'm/min', 'de')).toBe('200 in/min');
    expect(inInches(3, 'mm', 'de')).toBe('0,118 in');
  });
});

function inLanguage(name: 'en' | 'de'): object {
  language.value = name;
  return words;
}

/** Every plain text of a catalogue by its path. */
function flat(part: object, path = '', out = new Map<string, string>()): Map<string, string> {
  for (const [name, value] of Object.entries(part)) {
    if (typeof value === 'string') out.set(`${path}.${name}`, value);
    else if (typeof value === 'object' && value !== null) flat(value, `${path}.${name}`, out);
  }
  return out;
}
