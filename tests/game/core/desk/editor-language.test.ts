import { expect, it } from 'vitest';
import { exercises, loadLanguage, wordsIn } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

it('the first draft follows the language on screen until somebody works on it', async () => {
  const bench = new TestBench();
  const { editor } = bench.session.desk;
  const english = editor.draft.value.title;
  expect(exercises.map((e) => e.title)).toContain(english);
  await loadLanguage('de');
  bench.state.spoken.value = ['en', 'de'];
  bench.state.setPreference('language', 'de');
  const german = wordsIn('de').ready(english);
  expect(german).not.toBe(english);
  expect(editor.draft.value.title).toBe(german);
  editor.set('teaches', 'Langsam.');
  bench.state.setPreference('language', 'en');
  expect([editor.draft.value.title, editor.draft.value.teaches]).toEqual([german, 'Langsam.']);
});

it('a language that has not been fetched leaves the page in English', () => {
  const bench = new TestBench();
  bench.state.setPreference('language', 'de');
  expect([bench.state.wantedLanguage.value, bench.state.language.value]).toEqual(['de', 'en']);
});
