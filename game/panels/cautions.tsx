import { words } from '../locale/index.ts';
import { preferences, setPreference } from '../page.ts';
import { Dialog } from './dialog.tsx';
import { LanguageChoice } from './language-choice.tsx';

/** Shown at the first start, before anything can be struck. */
export function Cautions() {
  if (preferences.value.cautionsRead) return null;
  const go = () => setPreference('cautionsRead', true);
  return (
    <Dialog title={words.cautions.title} close={null}>
      <LanguageChoice />
      {words.cautions.text.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <p class="buttons">
        <button type="button" class="strong" onClick={go}>
          {words.cautions.go}
        </button>
        <button
          type="button"
          onClick={() => {
            setPreference('plainView', true);
            go();
          }}
        >
          {words.cautions.plain}
        </button>
      </p>
    </Dialog>
  );
}
