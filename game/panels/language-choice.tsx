import { type Language, languages } from '../../scoring/index.ts';
import { words } from '../locale/index.ts';
import { languageNames } from '../locale/language.ts';
import { setPreference, wantedLanguage } from '../page.ts';

/** Every language by its own name, so that whoever cannot read the page finds theirs. */
export function LanguageChoice() {
  return (
    <label class="switch language">
      {words.aids.language}
      <select
        value={wantedLanguage.value}
        data-testid="language"
        onChange={(event) => setPreference('language', event.currentTarget.value as Language)}
      >
        {languages.map((tag) => (
          <option key={tag} value={tag} lang={tag}>
            {languageNames[tag]}
          </option>
        ))}
      </select>
    </label>
  );
}
