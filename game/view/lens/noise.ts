/** Edge of the tile in texels; it repeats without a seam. */
export const NOISE_SIZE = 256;
const SLOPE_GAIN = 900;
const MIDDLE = 128;

/**
 * A tile of decoration, always the same: red fine grain, green and blue its slopes, alpha soft blobs. None of it is the model's: it
 * gives steel its grain, and breaks drawn lines so that they do not look drawn.
 */
export function noiseTile(): Uint8Array {
  const random = generator(20_731);
  const grain = octaves(random, [
    [16, 1],
    [32, 0.55],
    [64, 0.32],
    [128, 0.2],
  ]);
  const blobs = octaves(random, [
    [12, 1],
    [24, 0.35],
  ]);
  const texels = new Uint8Array(NOISE_SIZE * NOISE_SIZE * 4);
  const at = (x: number, y: number): number => grain[wrap(y) * NOISE_SIZE + wrap(x)];
  for (let y = 0; y < NOISE_SIZE; y++)
    for (let x = 0; x < NOISE_SIZE; x++) {
      const i = y * NOISE_SIZE + x;
      texels[4 * i] = byte(grain[i] * 255);
      texels[4 * i + 1] = byte(MIDDLE + (at(x + 1, y) - at(x - 1, y)) * SLOPE_GAIN);
      texels[4 * i + 2] = byte(MIDDLE + (at(x, y + 1) - at(x, y - 1)) * SLOPE_GAIN);
      texels[4 * i + 3] = byte(blobs[i] * 255);
    }
  return texels;
}

function octaves(random: () => number, layers: readonly (readonly [number, number])[]): Float32Array {
  const sum = new Float32Array(NOISE_SIZE * NOISE_SIZE);
  for (const [cells, weight] of layers) addLayer(sum, random, cells, weight);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of sum) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return sum.map((value) => (value - low) / (high - low));
}

/** Chance values on a grid of `cells`, joined by cubic B-splines. */
function addLayer(sum: Float32Array, random: () => number, cells: number, weight: number): void {
  const values = new Float32Array(cells * cells).map(random);
  for (let y = 0; y < NOISE_SIZE; y++)
    for (let x = 0; x < NOISE_SIZE; x++) {
      const gx = (x / NOISE_SIZE) * cells;
      const gy = (y / NOISE_SIZE) * cells;
      const wx = bell(gx - Math.floor(gx));
      const wy = bell(gy - Math.floor(gy));
      let value = 0;
      for (let j = 0; j < 4; j++)
        for (let i = 0; i < 4; i++) {
          const row = (Math.floor(gy) + j - 1 + cells) % cells;
          const column = (Math.floor(gx) + i - 1 + cells) % cells;
          value += wx[i] * wy[j] * values[row * cells + column];
        }
      sum[y * NOISE_SIZE + x] += weight * value;
    }
}

function bell(t: number): [number, number, number, number] {
  const s = 1 - t;
  return [s ** 3 / 6, (3 * t ** 3 - 6 * t * t + 4) / 6, (-3 * t ** 3 + 3 * t * t + 3 * t + 1) / 6, t ** 3 / 6];
}

function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

function wrap(i: number): number {
  return (i + NOISE_SIZE) % NOISE_SIZE;
}

function byte(x: number): number {
  return Math.max(0, Math.min(255, Math.round(x)));
}
