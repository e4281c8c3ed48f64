import type { Application } from 'pixi.js';

/**
 * False while the system has taken the picture's graphics away (a driver started anew, a machine woken up): until it gives them back nothing can be
 * compiled or drawn.
 */
export function drawable(app: Application): boolean {
  return app.canvas.getContext('webgl2')?.isContextLost() === false;
}
