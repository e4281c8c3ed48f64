/** EN 1993-1-2 3.4.1 written out again, and its integrals in closed form. */

/** Specific heat, J/(kg K). */
export function specificHeat(t: number): number {
  if (t < 600) return 425 + 0.773 * t - 0.00169 * t ** 2 + 0.00000222 * t ** 3;
  if (t < 735) return 666 + 13002 / (738 - t);
  if (t < 900) return 545 + 17820 / (t - 731);
  return 650;
}

/** Thermal conductivity, W/(m K). */
export const conductivity = (t: number): number => (t < 800 ? 54 - 0.0333 * t : 27.3);

/** Enthalpy above 20 °C, kJ/kg: antiderivatives of the four branches. */
export function enthalpy(t: number): number {
  const first = (x: number): number =>
    425 * x + (0.773 / 2) * x ** 2 - (0.00169 / 3) * x ** 3 + (0.00000222 / 4) * x ** 4;
  const second = (x: number): number => 666 * x - 13002 * Math.log(738 - x);
  const third = (x: number): number => 545 * x + 17820 * Math.log(x - 731);
  let h = first(Math.min(t, 600)) - first(20);
  if (t > 600) h += second(Math.min(t, 735)) - second(600);
  if (t > 735) h += third(Math.min(t, 900)) - third(735);
  if (t > 900) h += 650 * (t - 900);
  return h / 1000;
}

/** ∫λ dT from 20 °C, W/mm. */
export function potential(t: number): number {
  const slope = (x: number): number => 54 * x - (0.0333 / 2) * x ** 2;
  return (slope(Math.min(t, 800)) - slope(20) + (t > 800 ? 27.3 * (t - 800) : 0)) / 1000;
}
