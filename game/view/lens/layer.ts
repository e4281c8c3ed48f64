import { type Container, GlProgram, Mesh, MeshGeometry, type Renderer, RenderTexture, Shader } from 'pixi.js';

const VERTEX = `#version 300 es
in vec2 aPosition;
out vec2 vUv;
void main() {
  vUv = vec2(aPosition.x * 0.5 + 0.5, 0.5 - aPosition.y * 0.5);
  gl_Position = vec4(aPosition, 0.0, 1.0);
}
`;

const FRAGMENT = `#version 300 es
precision mediump float;
in vec2 vUv;
out vec4 outColor;
uniform sampler2D uPicture;
void main() {
  outColor = texture(uPicture, vUv);
}
`;

type Colour = [number, number, number, number];
const PAPER: Colour = [0xf6 / 255, 0xf3 / 255, 0xec / 255, 1];
const NIGHT: Colour = [0x0f / 255, 0x10 / 255, 0x11 / 255, 1];

/** The close view in a texture of its own, as coarse as the machine needs, stretched smoothly over the canvas. */
export class LensLayer {
  readonly mesh: Mesh<MeshGeometry, Shader>;
  private readonly texture = RenderTexture.create({ width: 1, height: 1, dynamic: true, scaleMode: 'linear' });

  constructor() {
    const corners = new Float32Array([-1, -1, 1, -1, 1, 1, -1, 1]);
    this.mesh = new Mesh({
      geometry: new MeshGeometry({ positions: corners, uvs: corners, indices: new Uint32Array([0, 1, 2, 0, 2, 3]) }),
      shader: new Shader({
        glProgram: GlProgram.from({ vertex: VERTEX, fragment: FRAGMENT, name: 'close view' }),
        resources: { uPicture: this.texture.source },
      }),
    });
  }

  resize(width_px: number, height_px: number, share: number): void {
    this.texture.resize(Math.max(1, width_px), Math.max(1, height_px), share);
  }

  /** @param dark darkness of what lies behind the metal, 0 paper to 1 night */
  draw(renderer: Renderer, scene: Container, dark: number): void {
    // What is all but gone is gone: paper beside the canvas would show the difference.
    const ground = dark < 0.01 ? 0 : dark;
    const clearColor = PAPER.map((light, i) => light + (NIGHT[i] - light) * ground) as Colour;
    renderer.render({ container: scene, target: this.texture, clear: true, clearColor });
  }
}
