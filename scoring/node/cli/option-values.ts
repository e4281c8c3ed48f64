import { InvalidArgumentError } from 'commander';

/** A number option within bounds; commander names the option, this says what was found and what is allowed. */
export function number(low: number, high: number, unit: string): (text: string) => number {
  return (text) => {
    const value = text.trim() === '' ? Number.NaN : Number(text);
    if (!Number.isFinite(value) || value < low || value > high) {
      throw new InvalidArgumentError(
        `found ${JSON.stringify(text)}, allowed: ${low} to ${high}${unit === '' ? '' : ` ${unit}`}`,
      );
    }
    return value;
  };
}

/** A whole number within bounds. */
export function whole(low: number, high: number): (text: string) => number {
  return (text) => {
    const value = /^\d{1,9}$/.test(text.trim()) ? Number(text) : Number.NaN;
    if (!(value >= low && value <= high)) {
      throw new InvalidArgumentError(`found ${JSON.stringify(text)}, allowed: a whole number, ${low} to ${high}`);
    }
    return value;
  };
}

export interface Hand {
  seed: number;
  amount: number;
}

/** `seed:amount`, such as 7:0.4. */
export function hand(text: string): Hand {
  const parts = /^(\d{1,9}):(\d+(?:\.\d+)?|\.\d+)$/.exec(text.trim());
  const amount = parts === null ? Number.NaN : Number(parts[2]);
  if (parts === null || !(amount >= 0 && amount <= 2)) {
    throw new InvalidArgumentError(
      `found ${JSON.stringify(text)}, allowed: seed:amount, a whole number and 0 to 2, such as 7:0.4`,
    );
  }
  return { seed: Number(parts[1]), amount };
}
