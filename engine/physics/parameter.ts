/** A number of the model with what has to be known of it. */
export interface Parameter {
  value: number;
  unit: string;
  /** Usual range, both ends. */
  range: readonly [number, number];
  source: string;
  moves: string;
}

/** Puts a row of a table together. */
export function parameter(
  value: number,
  unit: string,
  range: readonly [number, number],
  source: string,
  moves: string,
): Parameter {
  return { value, unit, range, source, moves };
}
