/** An attack of one class: what is tried under a number, and everything that went wrong. */
export interface Attack {
  /** The class, as it stands in the table. */
  name: string;
  /** What is tried and what has to hold, in a sentence. */
  says: string;
  /** How many numbers `npm test` takes, and how many the whole run takes. */
  share: number;
  whole: number;
  /** Tries number n; every entry of `faults` is something that did not hold. */
  tries: (n: number) => Try | Promise<Try>;
}

export interface Try {
  /** Inputs tried under this number. */
  inputs: number;
  faults: string[];
}

/** What a run of an attack came to. */
export interface Outcome {
  name: string;
  inputs: number;
  faults: string[];
}

/** Numbers 0 to count - 1, each naming its faults by its number so that it can be tried alone. */
export async function carriedOut(attack: Attack, count: number): Promise<Outcome> {
  const outcome: Outcome = { name: attack.name, inputs: 0, faults: [] };
  for (let n = 0; n < count; n++) {
    let tried: Try;
    try {
      tried = await attack.tries(n);
    } catch (error) {
      tried = {
        inputs: 1,
        faults: [`ended in ${error instanceof Error ? `${error.name}: ${error.message}` : String(error)}`],
      };
    }
    outcome.inputs += tried.inputs;
    outcome.faults.push(...tried.faults.map((fault) => `${attack.name}, number ${n}: ${fault}`));
  }
  return outcome;
}
