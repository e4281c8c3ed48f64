/** Cooling time t8/5 of EN 1011-2 annex D (SSAB welding handbook 3.1, 3.2): Q in kJ/mm with k in it, d in mm, T0 in °C; s. */

export const t85Thin = (q: number, d: number, t0: number, f2 = 1): number =>
  (4300 - 4.3 * t0) * 1e5 * ((q * q) / (d * d)) * (1 / (500 - t0) ** 2 - 1 / (800 - t0) ** 2) * f2;

export const t85Thick = (q: number, t0: number, f3 = 1): number =>
  (6700 - 5 * t0) * q * (1 / (500 - t0) - 1 / (800 - t0)) * f3;

/**
 * The metal these formulas stand for. Rosenthal's axis gives t = q/v / (2πλ) [..] and t = (q/v)² / (4πλρc d²) [..]; at 20 °C that is
 * λ = 1 / (2π 6.6) W/(mm K) and λρc = 1e6 / (4π 4214e5).
 */
export function impliedMetal(t0: number): { conductivity_WpmK: number; volumetric_Jpm3K: number } {
  const conductivity = 1000 / (2 * Math.PI * (6700 - 5 * t0));
  const product = 1e6 / (4 * Math.PI * (4300 - 4.3 * t0) * 1e5);
  return { conductivity_WpmK: 1000 * conductivity, volumetric_Jpm3K: (product / conductivity) * 1e9 };
}
