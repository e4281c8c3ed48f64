/**
 * Boltzmann's similarity (Ann. Phys. 53, 1894): with properties that depend on temperature alone, a half space whose face jumps to T_w
 * keeps one profile in η = x/√t. In the potential Θ = ∫λ dT it is Θ'' = -(η/2) (ρc/λ) Θ', solved here by shooting.
 */
import { bisect } from './special.ts';
import { conductivity, potential, specificHeat } from './steel.ts';

const DENSITY_GPMM3 = 7.85e-3;

/** T at a potential, by Newton's steps on the closed form. */
function temperatureOf(theta: number, guess: number): number {
  let t = guess;
  for (let i = 0; i < 4; i++) t -= (potential(t) - theta) / (conductivity(t) * 1e-3);
  return t;
}

/** Temperature over η (mm/√s) for a steel half space at 20 °C whose face is at `wall_C` from time 0. */
export function steelHalfSpace(wall_C: number): (eta: number) => number {
  const step = 0.002;
  const far = 30;
  const shoot = (flux: number, keep: number[] | null): number => {
    let theta = potential(wall_C);
    let slope = -flux;
    let temp = wall_C;
    for (let eta = 0; eta < far; eta += step) {
      keep?.push(temp);
      // Midpoint rule; ρc/λ from the temperature half a step on.
      const k = (t: number): number => (DENSITY_GPMM3 * specificHeat(Math.max(20, t))) / conductivity(Math.max(20, t));
      const half = slope * (1 - (eta / 2) * k(temp) * (step / 2));
      const middle = temperatureOf(theta + (slope * step) / 2, temp);
      slope += -((eta + step / 2) / 2) * k(middle) * half * step;
      theta += half * step;
      temp = temperatureOf(theta, temp);
      if (theta < -1) break;
    }
    return theta;
  };
  // Too much flux from the face takes Θ below 0 (colder than 20 °C) far away, too little leaves it above.
  const flux = bisect((f) => shoot(f, null), 0.1, 100);
  const profile: number[] = [];
  shoot(flux, profile);
  return (eta) => {
    const at = eta / step;
    const i = Math.min(profile.length - 2, Math.floor(at));
    return profile[i]! + (at - i) * (profile[i + 1]! - profile[i]!);
  };
}
