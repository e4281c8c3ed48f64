import '@fontsource/barlow/latin-400.css';
import '@fontsource/barlow/latin-500.css';
import './style/tokens.css';
import './style/layout.css';
import './style/sentence.css';
import './style/joint.css';
import './style/panels.css';
import './style/dialogs.css';
import './style/landscape.css';
import './style/lens.css';
import { render } from 'preact';
import { App } from './app.tsx';
import { Session } from './session/session.ts';

const host = document.getElementById('bench');
if (host) render(<App session={new Session()} />, host);
