import { BufferImageSource, GlProgram, Mesh, MeshGeometry, Shader, UniformGroup } from 'pixi.js';
import type { JointOptions } from '../../engine/index.ts';
import { metalEnds } from '../core/bench/metal-ends.ts';
import { type SurfaceFrame, TEXEL } from '../core/bench/surface-frame.ts';
import type { Camera } from '../core/hand/camera.ts';
import { toJoint } from '../core/hand/camera.ts';
import { FRAGMENT, VERTEX } from './jointShader.ts';

const KIND = { tee: 0, lap: 1, corner: 2 } as const;

/** The shaded surface: owns its texture and uniforms, reads a SurfaceFrame, knows nothing of the page. */
export class JointView {
  readonly mesh: Mesh<MeshGeometry, Shader>;
  private source: BufferImageSource;
  private fresh = false;
  private readonly shader: Shader;
  private readonly uniforms = new UniformGroup({
    uView: { value: new Float32Array(4), type: 'vec4<f32>' },
    uGrid: { value: new Float32Array([-10, 1, 0, 1]), type: 'vec4<f32>' },
    uCount: { value: new Float32Array([1, 1]), type: 'vec2<f32>' },
    uMetal: { value: new Float32Array(4), type: 'vec4<f32>' },
    uArc: { value: new Float32Array(4), type: 'vec4<f32>' },
    uLook: { value: new Float32Array([0, 0.1, 20, 0]), type: 'vec4<f32>' },
  });

  constructor() {
    this.source = emptySource(1, 1);
    this.shader = new Shader({
      glProgram: GlProgram.from({
        vertex: VERTEX,
        fragment: FRAGMENT,
        name: 'joint',
        preferredFragmentPrecision: 'highp',
      }),
      resources: { uField: this.source, view: this.uniforms },
    });
    const corners = new Float32Array([-1, -1, 1, -1, 1, 1, -1, 1]);
    this.mesh = new Mesh({
      geometry: new MeshGeometry({ positions: corners, uvs: corners, indices: new Uint32Array([0, 1, 2, 0, 2, 3]) }),
      shader: this.shader,
    });
  }

  /** Takes a surface over; it goes to the graphics card with the next drawing. The texture is made anew only when the grid changes. */
  setSurface(frame: SurfaceFrame): void {
    if (this.source.width !== frame.ny || this.source.height !== frame.nu) {
      const old = this.source;
      this.source = emptySource(frame.ny, frame.nu);
      this.shader.resources.uField = this.source;
      old.destroy();
    }
    (this.source.resource as Float32Array).set(frame.texels);
    this.fresh = true;
    const values = this.uniforms.uniforms;
    values.uGrid.set([frame.u0_mm, frame.du_mm, frame.y0_mm, frame.dy_mm]);
    values.uCount.set([frame.nu, frame.ny]);
  }

  /** Uploads the surface if a newer one has come: several may in one slow frame, and only the last is seen. */
  upload(): void {
    if (this.fresh) this.source.update();
    this.fresh = false;
  }

  /** Height of the surface last shown, nearest column, mm. The frame's own buffer has gone back to the Worker by now. */
  heightAt(u_mm: number, y_mm: number): number {
    const { uGrid, uCount } = this.uniforms.uniforms;
    const k = Math.round((u_mm - uGrid[0]) / uGrid[1]);
    const j = Math.round((y_mm - uGrid[2]) / uGrid[3]);
    if (k < 0 || k >= uCount[0] || j < 0 || j >= uCount[1]) return Math.abs(u_mm);
    return (this.source.resource as Float32Array)[(k * uCount[1] + j) * TEXEL];
  }

  setCamera(camera: Camera, joint: JointOptions, halfWidth_mm: number): void {
    const values = this.uniforms.uniforms;
    const bottomLeft = toJoint(camera, 0, camera.height_px);
    values.uView.set([
      bottomLeft.u_mm,
      bottomLeft.y_mm,
      camera.width_px / camera.scale,
      camera.height_px / camera.scale,
    ]);
    const { low_mm, high_mm } = metalEnds(joint);
    values.uMetal.set([KIND[joint.kind], joint.plateB_mm, low_mm, high_mm]);
    values.uLook[2] = halfWidth_mm;
  }

  /** @param pixel_mm size of a drawn pixel; lines are kept at least that wide, so that they do not break up when drawn coarsely */
  setPixel(pixel_mm: number): void {
    this.uniforms.uniforms.uLook[1] = pixel_mm;
  }

  setLight(u_mm: number, y_mm: number, height_mm: number, light: number, dark: number, plain: boolean): void {
    const values = this.uniforms.uniforms;
    values.uArc.set([u_mm, y_mm, height_mm, light]);
    values.uLook[0] = dark;
    values.uLook[3] = plain ? 1 : 0;
  }
}

function emptySource(width: number, height: number): BufferImageSource {
  return new BufferImageSource({
    resource: new Float32Array(width * height * TEXEL),
    width,
    height,
    format: 'rgba32float',
    alphaMode: 'no-premultiply-alpha',
    scaleMode: 'nearest',
    autoGenerateMipmaps: false,
  });
}
