import { BufferImageSource, Container, GlProgram, Mesh, MeshGeometry, Shader, UniformGroup } from 'pixi.js';
import type { FilletOptions } from '../../../engine/index.ts';
import type { SurfaceFrame } from '../../core/bench/surface-frame.ts';
import { endTriangles } from './ends.ts';
import { makeNet, meshFor, type Net } from './net.ts';
import { NOISE_SIZE, noiseTile } from './noise.ts';
import { EYE_MM, type Look, type Place, rise, see } from './pinhole.ts';
import { ARC, ARC_VERTEX } from './shade/arc.ts';
import { ON_THE_BENCH } from './shade/bench.ts';
import { ENDS, ENDS_VERTEX } from './shade/ends.ts';
import { PLAIN } from './shade/plain.ts';
import { THROUGH_THE_LENS } from './shade/through.ts';
import { SKIN_VERTEX } from './shade/vertex.ts';
import { type Wire, wireOf } from './wire.ts';

/** Through the lens while the arc burns, on the bench when the lights are up, or plain: one shader each, never a branch. */
export type Manner = 'lens' | 'bench' | 'plain';

/** What the picture shows besides the skin. */
export interface Shown {
  /** The arc's foot, or null where none has been seen yet. */
  foot: { u_mm: number; y_mm: number } | null;
  torch: Wire | null;
  /** Light of the arc, 0 to 1. */
  light: number;
  /** Darkness of the room, 0 to 1. */
  dark: number;
  /** Time of the attempt the skin belongs to, s. */
  skin_s: number;
  /** Time of the picture, for what drifts on the liquid, s. */
  clock_s: number;
}

const KIND = { tee: 0, lap: 1, corner: 2 } as const;
const FRAGMENT: Record<Manner, string> = { lens: THROUGH_THE_LENS, bench: ON_THE_BENCH, plain: PLAIN };
/** Arc foot lies on the metal's skin by this much; the arc is seen as a ball this far out along the wire. */
const FOOT_OUT_MM = 0.15;
const ARC_OUT_MM = 1.2;
/** Rows kept past the picture's edges, for the look's slant. */
const SPARE_ROWS_MM = 8;

/** The close view's meshes, textures and uniforms; knows nothing of the page. */
export class LensPicture {
  readonly scene = new Container();
  private readonly uniforms = new UniformGroup({
    uGrid: { value: new Float32Array([-10, 1, 0, 1]), type: 'vec4<f32>' },
    uCount: { value: new Float32Array([1, 1]), type: 'vec2<f32>' },
    uMetal: { value: new Float32Array(4), type: 'vec4<f32>' },
    uPlates: { value: new Float32Array(4), type: 'vec4<f32>' },
    uNet: { value: new Float32Array(4), type: 'vec4<f32>' },
    uTarget: { value: new Float32Array(4), type: 'vec4<f32>' },
    uLook: { value: new Float32Array(4), type: 'vec4<f32>' },
    uArc: { value: new Float32Array(4), type: 'vec4<f32>' },
    uFoot: { value: new Float32Array(4), type: 'vec4<f32>' },
    uPaint: { value: new Float32Array([0, 20, 0, 1]), type: 'vec4<f32>' },
    uWire: { value: new Float32Array(4), type: 'vec4<f32>' },
    uSpot: { value: new Float32Array(4), type: 'vec4<f32>' },
    uSize: { value: new Float32Array([1, 1, 0, 0]), type: 'vec4<f32>' },
  });
  private readonly noise: BufferImageSource;
  private a = skinSource(1, 1);
  private b = skinSource(1, 1);
  private fresh = false;
  private readonly shaders = new Map<Manner, Shader>();
  private readonly endsShader: Shader;
  private readonly arcShader: Shader;
  private readonly arcMesh: Mesh<MeshGeometry, Shader>;
  private skinMesh: Mesh<MeshGeometry, Shader> | null = null;
  private endsMesh: Mesh<MeshGeometry, Shader> | null = null;
  private net: Net | null = null;
  private netKey = '';
  private joint: FilletOptions | null = null;
  private half_mm = 0;

  constructor() {
    this.noise = new BufferImageSource({
      resource: noiseTile(),
      width: NOISE_SIZE,
      height: NOISE_SIZE,
      format: 'rgba8unorm',
      alphaMode: 'no-premultiply-alpha',
      addressMode: 'repeat',
      scaleMode: 'linear',
      autoGenerateMipmaps: true,
    });
    this.endsShader = this.shader(ENDS_VERTEX, ENDS, 'ends');
    this.arcShader = this.shader(ARC_VERTEX, ARC, 'arc');
    const corners = new Float32Array([-1, -1, 1, -1, 1, 1, -1, 1]);
    this.arcMesh = new Mesh({
      geometry: new MeshGeometry({ positions: corners, uvs: corners, indices: new Uint32Array([0, 1, 2, 0, 2, 3]) }),
      shader: this.arcShader,
    });
  }

  /**
   * Puts another joint before the camera.
   * @param low_mm,high_mm ends of the metal
   * @param half_mm plates are broken off this far either side, as in a drawing; 0 draws them on to the picture's edge
   */
  setJoint(joint: FilletOptions, low_mm: number, high_mm: number, half_mm = 0): void {
    this.half_mm = half_mm;
    this.joint = joint;
    this.netKey = '';
    const values = this.uniforms.uniforms;
    const gap = joint.kind === 'corner' ? 0 : joint.gap_mm;
    values.uMetal.set([KIND[joint.kind], joint.plateB_mm + gap, low_mm, high_mm]);
    values.uPlates.set([joint.plateA_mm, joint.plateB_mm, gap, joint.plateWidth_mm]);
    const { places, triangles } = endTriangles(joint);
    this.endsMesh?.destroy();
    this.endsMesh = new Mesh({
      geometry: new MeshGeometry({ positions: places, uvs: places, indices: triangles }),
      shader: this.endsShader,
    });
    this.assemble();
  }

  /** Takes a skin over; it goes to the graphics card with the next drawing. */
  setSkin(frame: SurfaceFrame): void {
    const { nu, ny, skin } = frame;
    if (this.a.width !== ny || this.a.height !== nu) {
      const old = [this.a, this.b];
      this.a = skinSource(ny, nu);
      this.b = skinSource(ny, nu);
      for (const shader of [...this.shaders.values(), this.endsShader, this.arcShader]) this.bind(shader);
      for (const source of old) source.destroy();
    }
    const half = nu * ny * 4;
    (this.a.resource as Float32Array).set(skin.subarray(0, half));
    (this.b.resource as Float32Array).set(skin.subarray(half, 2 * half));
    this.fresh = true;
    const values = this.uniforms.uniforms;
    values.uGrid.set([frame.u0_mm, frame.du_mm, frame.y0_mm, frame.dy_mm]);
    values.uCount.set([nu, ny]);
  }

  /** Sets everything for one drawing. @param share drawn pixels per CSS pixel */
  aim(look: Look, shown: Shown, manner: Manner, share: number): void {
    this.hang(look, meshFor(look.scale * share));
    const values = this.uniforms.uniforms;
    const { sin, cos } = rise(look);
    const { target, scale, width_px, height_px } = look;
    values.uTarget.set([target.u_mm, target.y_mm, target.w_mm, look.eye_mm ?? EYE_MM]);
    values.uLook.set([sin, cos, (2 * scale) / width_px, (2 * scale) / height_px]);
    values.uPaint.set([shown.clock_s, scale * share, shown.dark, 1]);
    values.uSize.set([width_px, height_px, 0, shown.torch ? 1 : 0]);
    this.aimArc(look, shown);
    if (this.skinMesh) this.skinMesh.shader = this.skinShader(manner);
    if (this.fresh) {
      this.a.update();
      this.b.update();
      this.fresh = false;
    }
    this.uniforms.update();
  }

  /** Height of the skin last shown, nearest column, mm; the bare plate where there is none. */
  heightAt(u_mm: number, y_mm: number): number {
    const { uGrid, uCount } = this.uniforms.uniforms;
    const k = Math.round((u_mm - uGrid[0]) / uGrid[1]);
    const j = Math.round((y_mm - uGrid[2]) / uGrid[3]);
    if (k < 0 || k >= uCount[0] || j < 0 || j >= uCount[1] || uCount[0] < 2) return Math.abs(u_mm);
    return (this.a.resource as Float32Array)[(k * uCount[1] + j) * 4];
  }

  destroy(): void {
    this.scene.destroy({ children: true });
    for (const source of [this.a, this.b, this.noise]) source.destroy();
  }

  private aimArc(look: Look, shown: Shown): void {
    const values = this.uniforms.uniforms;
    const at = shown.foot ?? { u_mm: 0, y_mm: look.target.y_mm };
    const foot: Place = { ...at, w_mm: this.heightAt(at.u_mm, at.y_mm) + FOOT_OUT_MM };
    const { axis, end, leaves } = wireOf(foot, shown.torch);
    const arc: Place = {
      u_mm: foot.u_mm + axis.u_mm * ARC_OUT_MM,
      y_mm: foot.y_mm + axis.y_mm * ARC_OUT_MM,
      w_mm: foot.w_mm + axis.w_mm * ARC_OUT_MM,
    };
    values.uArc.set([arc.u_mm, arc.y_mm, arc.w_mm, shown.light]);
    values.uFoot.set([foot.u_mm, foot.y_mm, foot.w_mm, shown.skin_s]);
    const spot = see(look, arc);
    const tip = see(look, end);
    const away = see(look, leaves);
    values.uWire.set([tip.x_px, tip.y_px, away.x_px, away.y_px]);
    values.uSpot.set([spot.x_px, spot.y_px, spot.scale, ((shown.torch?.wire_mm ?? 1) / 2) * tip.scale]);
    this.arcMesh.visible = shown.light > 0.002 || shown.torch !== null;
  }

  /** Hangs the net where the camera looks; it moves by whole rows, so that its points stay on the same metal. */
  private hang(look: Look, mesh_mm: number): void {
    const { joint } = this;
    if (!joint) return;
    const { cos } = rise(look);
    const across = look.width_px / look.scale / 2;
    const up = look.height_px / look.scale;
    const half = across * 1.2 + 2;
    const span = (up / cos) * 1.25 + half + SPARE_ROWS_MM;
    const key = `${joint.kind} ${joint.plateB_mm} ${joint.gap_mm} ${half.toFixed(1)} ${span.toFixed(1)} ${mesh_mm}`;
    if (key !== this.netKey) {
      this.netKey = key;
      this.net = makeNet(joint.kind, joint.plateB_mm + joint.gap_mm, half, span, mesh_mm);
      const { places, triangles } = this.net;
      this.skinMesh?.destroy();
      this.skinMesh = new Mesh({
        geometry: new MeshGeometry({ positions: places, uvs: places, indices: triangles }),
        shader: this.skinShader('plain'),
      });
      this.assemble();
    }
    if (!this.net) return;
    const step = this.net.rowStep_mm;
    const top = look.target.y_mm + (up / cos) * 0.62 + SPARE_ROWS_MM / 2;
    this.uniforms.uniforms.uNet.set([Math.ceil(top / step) * step, step, this.half_mm, 0]);
  }

  private assemble(): void {
    this.scene.removeChildren();
    for (const mesh of [this.skinMesh, this.half_mm > 0 ? null : this.endsMesh, this.arcMesh])
      if (mesh) this.scene.addChild(mesh);
  }

  private skinShader(manner: Manner): Shader {
    let shader = this.shaders.get(manner);
    if (!shader) {
      shader = this.shader(SKIN_VERTEX, FRAGMENT[manner], `skin ${manner}`);
      this.shaders.set(manner, shader);
    }
    return shader;
  }

  private shader(vertex: string, fragment: string, name: string): Shader {
    return new Shader({
      glProgram: GlProgram.from({ vertex, fragment, name, preferredFragmentPrecision: 'highp' }),
      resources: { uSkinA: this.a, uSkinB: this.b, uNoise: this.noise, lens: this.uniforms },
    });
  }

  private bind(shader: Shader): void {
    shader.resources.uSkinA = this.a;
    shader.resources.uSkinB = this.b;
  }
}

function skinSource(width: number, height: number): BufferImageSource {
  return new BufferImageSource({
    resource: new Float32Array(width * height * 4),
    width,
    height,
    format: 'rgba32float',
    alphaMode: 'no-premultiply-alpha',
    scaleMode: 'nearest',
    autoGenerateMipmaps: false,
  });
}
