import '@fontsource/barlow/latin-400.css';
import '@fontsource/barlow/latin-500.css';
import '../../style/tokens.css';
import '../../style/cut.css';
import '../../style/findings.css';
import '../../style/beat.css';
import '../../style/dialogs.css';
import '../../style/lab.css';
// With this in, components follow the signals they read.
import '@preact/signals';
import { render } from 'preact';
import { preferenceStore } from '../../browser/stores/preferences.ts';
import { loadWords } from '../../locale/index.ts';
import { language, languageFor } from '../../locale/language.ts';
import { Line } from '../line.ts';
import type { Now } from './answers.ts';
import { Desk, type Listen, type Progress } from './desk.ts';
import { DeskPage } from './desk-page.tsx';

/** The browser's own event stream: asks again by itself when the lab was away. */
function listen(path: string, heard: Parameters<Listen>[1], open: (is: boolean) => void): () => void {
  const source = new EventSource(path);
  source.addEventListener('open', () => open(true));
  source.addEventListener('error', () => open(false));
  source.addEventListener('progress', (event) => heard.progress(JSON.parse(event.data) as Progress));
  source.addEventListener('now', (event) => heard.now(JSON.parse(event.data) as Now));
  return () => source.close();
}

// The language of the bench on this machine; who has chosen none there gets the browser's.
const kept = preferenceStore.load();
const chosen = typeof kept === 'object' && kept !== null && 'language' in kept ? [String(kept.language)] : [];
const wanted = languageFor([...chosen, ...navigator.languages]);

const desk = new Desk(new Line('../'), listen);
const host = document.getElementById('lab');
void loadWords(wanted)
  .then(
    () => {
      language.value = wanted;
    },
    // One that cannot be fetched leaves the page in English.
    () => undefined,
  )
  .then(() => {
    document.documentElement.lang = language.value;
    if (host) render(<DeskPage desk={desk} />, host);
    return desk.look();
  });
