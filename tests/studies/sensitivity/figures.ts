/** The welds of the study, as tasks for two threads, and what they came to. */
import type { TendencyCase } from '../../tendencies/summary.ts';
import { KNOBS, type Knob, PIECES, type Piece, START } from './knobs.ts';
import type { Outcomes } from './outcomes.ts';

export interface Task {
  piece: Piece;
  knob: string;
  value: number;
}

export interface Figures {
  engine: string;
  welds: (Task & { outcomes: Outcomes })[];
}

export function tasks(): Task[] {
  return PIECES.flatMap((piece) =>
    KNOBS.flatMap((knob) => knob.at(START[piece]).map((value) => ({ piece, knob: knob.name, value }))),
  );
}

export function caseOf({ piece, knob, value }: Task): TendencyCase {
  return knobNamed(knob).turned(START[piece], value);
}

function knobNamed(name: string): Knob {
  const knob = KNOBS.find((k) => k.name === name);
  if (!knob) throw new Error(`no knob is called ${name}`);
  return knob;
}

/** Welds of one knob on one piece, in rising order of the knob. */
export function swept(figures: Figures, piece: Piece, knob: string): Figures['welds'] {
  return figures.welds.filter((w) => w.piece === piece && w.knob === knob).sort((a, b) => a.value - b.value);
}
