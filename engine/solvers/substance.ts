/** Materials of a heat case as the table the kernels read. */
import { buildTable, type Curves, DENSITY_GPMM3, type MaterialTable, steelTable } from '../physics/steel.ts';
import type { ConstantMaterial, SteelMaterial } from './types.ts';

/** Stands for a melting point that is never reached. */
const NEVER_C = 1e9;

/**
 * The kernels count in grams of one density. Only c·ρ matters to heat flow, so another density goes into the specific heat: the
 * enthalpy then is per gram of that one density, and joules come out right.
 */
export function tableOf(material: SteelMaterial | ConstantMaterial): MaterialTable {
  if (material.kind === 'steel') return steelTable(material.stirring ?? 1);
  const perGram = material.density_kgpm3 / (DENSITY_GPMM3 * 1e6);
  const { melting } = material;
  const curves: Curves = {
    conductivity: () => material.conductivity_WpmK,
    specificHeat: () => material.specificHeat_JpkgK * perGram,
    latent_JPG: melting ? (melting.latent_Jpkg / 1000) * perGram : 0,
    solidus_C: melting?.solidus_C ?? NEVER_C,
    liquidus_C: melting?.liquidus_C ?? NEVER_C + 1,
  };
  const table = buildTable(curves);
  if (melting) return table;
  const never = Number.POSITIVE_INFINITY;
  return { ...table, solidus_JPG: never, liquidus_JPG: never };
}
