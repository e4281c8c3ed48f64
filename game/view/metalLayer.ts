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
uniform sampler2D uMetal;
void main() {
  outColor = texture(uMetal, vUv);
}
`;

/**
 * The shaded metal in a texture of its own, which may be coarser than the screen. The canvas itself never changes size while welding:
 * that makes the page wait for the graphics process.
 */
export class MetalLayer {
  readonly mesh: Mesh<MeshGeometry, Shader>;
  private readonly texture = RenderTexture.create({ width: 1, height: 1, dynamic: true, scaleMode: 'linear' });

  constructor() {
    const corners = new Float32Array([-1, -1, 1, -1, 1, 1, -1, 1]);
    this.mesh = new Mesh({
      geometry: new MeshGeometry({ positions: corners, uvs: corners, indices: new Uint32Array([0, 1, 2, 0, 2, 3]) }),
      shader: new Shader({
        glProgram: GlProgram.from({ vertex: VERTEX, fragment: FRAGMENT, name: 'metal' }),
        resources: { uMetal: this.texture.source },
      }),
    });
  }

  resize(width_px: number, height_px: number, resolution: number): void {
    this.texture.resize(Math.max(1, width_px), Math.max(1, height_px), resolution);
  }

  draw(renderer: Renderer, joint: Container): void {
    renderer.render({ container: joint, target: this.texture });
  }
}
