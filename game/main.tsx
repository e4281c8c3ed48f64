import '@fontsource/barlow/latin-400.css';
import '@fontsource/barlow/latin-500.css';
import './style/tokens.css';
import './style/layout.css';
import './style/sentence.css';
import './style/joint.css';
import './style/cut.css';
import './style/findings.css';
import './style/beat.css';
import './style/dialogs.css';
import './style/landscape.css';
import './style/lens.css';
import './style/lesson.css';
import './style/logbook.css';
import './style/what-if.css';
import './style/practice.css';
import './style/desk.css';
import './style/show.css';
import './style/hands.css';
import './style/contrast.css';
import './style/print.css';
import { effect } from '@preact/signals-core';
import { render } from 'preact';
import type { Language } from '../scoring/index.ts';
import { App } from './app.tsx';
import { FrameLoop } from './browser/frame-loop.ts';
import { keepOffline } from './browser/offline.ts';
import { browserPorts } from './browser/ports.ts';
import { Lesson } from './core/session/lesson.ts';
import { Session } from './core/session/session.ts';
import { loadWords } from './locale/index.ts';
import { language, languageFor } from './locale/language.ts';
import { page } from './page.ts';

const host = document.getElementById('bench');
page.usualLanguage.value = languageFor(navigator.languages);
const session = new Session(browserPorts, page);
const lesson = new Lesson(session, page);

/** Fetches the language asked for; one that cannot be fetched leaves the page in the one it has. */
async function speak(wanted: Language): Promise<void> {
  if (page.spoken.peek().includes(wanted)) return;
  try {
    await loadWords(wanted);
    page.spoken.value = [...new Set([...page.spoken.peek(), wanted])];
  } catch {
    // Off the network, before this language was ever kept here.
  }
}

effect(() => void speak(page.wantedLanguage.value));
effect(() => {
  language.value = page.language.value;
  document.documentElement.lang = page.language.value;
  document.documentElement.dataset.hand = page.preferences.value.leftHanded ? 'left' : 'right';
});

function open(): void {
  if (host)
    render(
      <App
        session={session}
        lesson={lesson}
        drive={(stage, pane) => new FrameLoop(session, page, browserPorts.clock, stage, pane)}
      />,
      host,
    );
  keepOffline();
  // A school's lab says in the page that it serves it; anywhere else there is nobody to join.
  if (document.querySelector('meta[name="toehold-lab"]'))
    void import('./lab/join/main.tsx').then(({ joinLab }) => joinLab(session, page, browserPorts.clock));
}
// Nobody sees the page in another language first.
void speak(page.wantedLanguage.peek()).then(open);
