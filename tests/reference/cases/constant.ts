import type { ConstantMaterial } from '../../../engine/index.ts';
import type { Metal } from '../formulas/heat.ts';

/** A metal of the formulas as a material of the engine; only λ and ρc matter. */
export const constantMaterial = (m: Metal): ConstantMaterial => ({
  kind: 'constant',
  conductivity_WpmK: m.conductivity_WpmK,
  specificHeat_JpkgK: m.volumetric_Jpm3K / 7850,
  density_kgpm3: 7850,
});
