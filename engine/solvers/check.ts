/** The door of a heat case: what is wrong, where, what was found, what is allowed. */
import { EngineError } from '../input/error.ts';
import { defaultProcess, requireOptions } from '../input/options.ts';
import type { BlockPiece, ConstantMaterial, HeatCase } from './types.ts';

/** Cells one case may have: 2 GB of fields would not be refused by the machine alone. */
const MOST_CELLS = 2e7;
const BLOCK_FACES = ['a-', 'a+', 'b-', 'b+'];
const JOINT_FACES = ['A', 'B'];

export function requireNumber(path: string, found: unknown, low: number, high: number, unit: string): void {
  if (!(typeof found === 'number' && found >= low && found <= high))
    throw new EngineError('out-of-range', path, found, `${low} to ${high} ${unit}`);
}

export function checkHeatCase(c: HeatCase): void {
  requireNumber('cell_mm', c.cell_mm, 0.02, 20, 'mm');
  if (c.piece.kind === 'block') checkBlock(c.piece, c.cell_mm);
  else
    requireOptions({
      joint: { ...c.piece, startTemp_C: 20, ambient_C: 20, sink_WpmmK: 0, tabs: false },
      process: defaultProcess(),
      cell_mm: c.cell_mm,
    });
  if (c.material.kind === 'constant') checkConstant(c.material);
  else requireNumber('material.stirring', c.material.stirring ?? 1, 1, 10, '(factor)');
  if (typeof c.start_C === 'number') requireNumber('start_C', c.start_C, -273, 5000, '°C');
  if (c.step_s !== undefined) requireNumber('step_s', c.step_s, 1e-9, 1e6, 's');
  const faces = c.piece.kind === 'block' ? BLOCK_FACES : JOINT_FACES;
  c.sources?.forEach((source, n) => {
    requireNumber(`sources[${n}].power_W`, source.power_W, -1e7, 1e7, 'W');
    requireNumber(`sources[${n}].radius_mm`, source.radius_mm, 0, 1000, 'mm');
    if (source.faces.length === 0) throw new EngineError('out-of-range', `sources[${n}].faces`, 'none', 'at least one');
    for (const face of source.faces) {
      if (!faces.includes(face))
        throw new EngineError('not-one-of', `sources[${n}].faces`, face, `one of ${faces.join(', ')} on this piece`);
    }
  });
  c.held?.forEach(({ face, temp_C }, n) => {
    if (c.piece.kind !== 'block')
      throw new EngineError('inconsistent', `held[${n}]`, face, 'held faces on a block only');
    const allowed = [...BLOCK_FACES, 'y-', 'y+'];
    if (!allowed.includes(face))
      throw new EngineError('not-one-of', `held[${n}].face`, face, `one of ${allowed.join(', ')}`);
    requireNumber(`held[${n}].temp_C`, temp_C, -273, 5000, '°C');
  });
  if (c.losses) {
    requireNumber('losses.ambient_C', c.losses.ambient_C, -273, 3000, '°C');
    requireNumber('losses.emissivity', c.losses.emissivity, 0, 1, '');
    requireNumber('losses.convection_Wpm2K', c.losses.convection_Wpm2K, 0, 1e5, 'W/(m² K)');
    requireNumber('losses.sink_WpmmK', c.losses.sink_WpmmK ?? 0, 0, 1, 'W/(mm K)');
  }
}

function checkBlock(b: BlockPiece, cell: number): void {
  requireNumber('piece.width_mm', b.width_mm, 0.01, 1e4, 'mm');
  requireNumber('piece.depth_mm', b.depth_mm, 0.01, 1e4, 'mm');
  requireNumber('piece.length_mm', b.length_mm, 0.01, 1e4, 'mm');
  const even = b.even ?? { a_mm: [0, b.width_mm], b_mm: [-b.depth_mm, 0] };
  const bands = [
    ['a_mm', even.a_mm, 0, b.width_mm],
    ['b_mm', even.b_mm, -b.depth_mm, 0],
  ] as const;
  for (const [name, [from, to], low, high] of bands) {
    if (!(from >= low && to <= high && from < to))
      throw new EngineError(
        'out-of-range',
        `piece.even.${name}`,
        `${from} to ${to}`,
        `rising, within ${low} to ${high}`,
      );
  }
  const across = (even.a_mm[1] - even.a_mm[0]) / cell;
  const down = (even.b_mm[1] - even.b_mm[0]) / cell;
  const cells = Math.max(1, across) * Math.max(1, down) * Math.max(1, b.length_mm / cell);
  if (cells > MOST_CELLS)
    throw new EngineError('out-of-range', 'cell_mm', cell, `large enough for at most ${MOST_CELLS} cells`);
}

function checkConstant(m: ConstantMaterial): void {
  requireNumber('material.conductivity_WpmK', m.conductivity_WpmK, 1e-3, 1e5, 'W/(m K)');
  requireNumber('material.specificHeat_JpkgK', m.specificHeat_JpkgK, 10, 1e5, 'J/(kg K)');
  requireNumber('material.density_kgpm3', m.density_kgpm3, 100, 30_000, 'kg/m³');
  if (!m.melting) return;
  const { solidus_C, liquidus_C, latent_Jpkg } = m.melting;
  requireNumber('material.melting.solidus_C', solidus_C, 20, 5000, '°C');
  requireNumber('material.melting.liquidus_C', liquidus_C, solidus_C + 0.1, 5000, '°C');
  requireNumber('material.melting.latent_Jpkg', latent_Jpkg, 0, 1e7, 'J/kg');
}
