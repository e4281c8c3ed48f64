// The page's policy forbids code made from text, which pixi would otherwise write for its uniforms.
import 'pixi.js/unsafe-eval';
import { Application, type EventSystem } from 'pixi.js';

/** More pixels than two to a CSS pixel cost time that nobody sees. */
const MOST_RESOLUTION = 2;

/** Resolution of a canvas drawn in full. */
export function sharpest(): number {
  return Math.min(window.devicePixelRatio, MOST_RESOLUTION);
}

/** A canvas as large as its host that renders when told to and listens to nothing. Throws if the browser has no WebGL 2. */
export async function openCanvas(host: HTMLElement): Promise<Application> {
  const app = new Application();
  await app.init({
    preference: 'webgl',
    autoStart: false,
    sharedTicker: false,
    antialias: false,
    autoDensity: true,
    resolution: sharpest(),
    width: Math.max(1, host.clientWidth),
    height: Math.max(1, host.clientHeight),
    backgroundAlpha: 1,
    eventMode: 'none',
  });
  deaf(app.renderer.events);
  app.canvas.setAttribute('aria-hidden', 'true');
  return app;
}

/** pixi would look up what lies under every pointer's every move; what is drawn here is never picked. Its types leave out the null it asks for. */
function deaf(events: { setTargetElement(element: HTMLElement | null): void } & Omit<EventSystem, 'setTargetElement'>) {
  events.setTargetElement(null);
}
