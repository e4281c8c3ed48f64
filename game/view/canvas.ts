// The page's policy forbids code made from text, which pixi would otherwise write for its uniforms.
import 'pixi.js/unsafe-eval';
import { Container, type EventSystem, WebGLRenderer } from 'pixi.js';

/** Device pixels per CSS pixel, capped: beyond two the eye gains nothing and the shader pays. */
export function sharpest(): number {
  return Math.min(window.devicePixelRatio, 2);
}

/** A canvas with what is drawn on it. It renders when told to and listens to nothing. */
export class Canvas {
  readonly scene = new Container();

  private constructor(readonly renderer: WebGLRenderer<HTMLCanvasElement>) {
    deaf(renderer.events);
    this.element.setAttribute('aria-hidden', 'true');
  }

  /**
   * As large as its host. Throws if the browser has no WebGL 2. The renderer is made outright: pixi's own choice among renderers brings the code of all
   * of them, 47 kB packed, and falls back to one that knows no shaders.
   */
  static async open(host: HTMLElement): Promise<Canvas> {
    const renderer = new WebGLRenderer<HTMLCanvasElement>();
    await renderer.init({
      antialias: false,
      autoDensity: true,
      resolution: sharpest(),
      width: Math.max(1, host.clientWidth),
      height: Math.max(1, host.clientHeight),
      backgroundAlpha: 1,
      eventMode: 'none',
    });
    return new Canvas(renderer);
  }

  get element(): HTMLCanvasElement {
    return this.renderer.canvas;
  }

  get gl(): WebGL2RenderingContext | null {
    return this.element.getContext('webgl2');
  }

  /**
   * False while the system has taken the picture's graphics away (a driver started anew, a machine woken up): until it gives them back nothing can be
   * compiled or drawn.
   */
  get drawable(): boolean {
    return this.gl?.isContextLost() === false;
  }

  /** In CSS pixels. */
  resize(width_px: number, height_px: number): void {
    this.renderer.resize(Math.max(1, width_px), Math.max(1, height_px), sharpest());
  }

  render(): void {
    this.renderer.render({ container: this.scene });
  }

  destroy(): void {
    this.scene.destroy({ children: true });
    this.renderer.destroy({ removeView: true });
  }
}

/** pixi would look up what lies under the pointer at its every move; nothing drawn here is picked. Its types leave out the null it asks for. */
function deaf(events: { setTargetElement(element: HTMLElement | null): void } & Omit<EventSystem, 'setTargetElement'>) {
  events.setTargetElement(null);
}
