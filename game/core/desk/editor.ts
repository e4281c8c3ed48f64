import { computed, signal } from '@preact/signals-core';
import {
  checkMade,
  draftFrom,
  type Exercise,
  exerciseFileName,
  exerciseNamed,
  exercises,
  InputError,
  type Proof,
  type ProofHand,
  type ProofRow,
  proofHands,
  proofOf,
  usualLengths,
  withConsequences,
} from '../../../scoring/index.ts';
import type { Ports } from '../ports.ts';
import type { State } from '../session/state.ts';
import { Crew, type Piece } from './crew.ts';

/** What stands in a field, as typed: a number where it is one, else the text, so that the check can name what was found. */
export type Typed = string | number | boolean | null | number[];

/** Proving an exercise: which hands have welded it so far. */
export interface ProofView {
  stage: 'none' | 'welding' | 'stopped' | 'done';
  hands: ProofHand[];
  rows: (ProofRow | null)[];
  /** Hands that could not weld it, and why. */
  failed: string[];
}

const NO_PROOF: ProofView = { stage: 'none', hands: [], rows: [], failed: [] };

/** An exercise being made: a draft that is checked as it is typed, tried, proved by robot hands, saved and handed on. */
export class Editor {
  /** What has been typed; it need not be an exercise yet. */
  readonly draft = signal<Exercise>(draftFrom(exercises[3] ?? exercises[0]!, []));
  /** What is wrong with it, by field: found and allowed, as the command line says it. */
  readonly problems = computed(() => problemsOf(this.draft.value));
  readonly proof = signal<ProofView>(NO_PROOF);
  private readonly crew: Crew;

  constructor(
    private readonly ports: Pick<Ports, 'openHand' | 'hands' | 'files' | 'links'>,
    private readonly state: State,
    private readonly use: (exercise: Exercise) => void,
  ) {
    this.crew = new Crew(ports.openHand, ports.hands);
  }

  /** Begins a new draft from another exercise, under a name of its own. An exercise somebody made may be gone on with as it is. */
  begin(exercise: Exercise): void {
    const own = exerciseNamed(exercise.name) === undefined && this.made().some((e) => e.name === exercise.name);
    this.draft.value = own
      ? exercise
      : draftFrom(
          exercise,
          this.made().map((e) => e.name),
        );
    this.forgetProof();
  }

  /** Puts something typed into a field. @param path such as `joint.length_mm` */
  set(path: string, value: Typed): void {
    const before = this.draft.value;
    let draft = put(before, path.split('.'), value) as Exercise;
    const { length_mm } = draft.joint;
    const lengthChanged = length_mm !== before.joint.length_mm && Number.isFinite(length_mm);
    if (lengthChanged) draft = { ...draft, ...usualLengths(length_mm) };
    this.draft.value = numbersIn(draft) ? withConsequences(draft) : draft;
    this.forgetProof();
  }

  /** The draft as an exercise; null while something is wrong with it. */
  exercise(): Exercise | null {
    return this.problems.value.length === 0 ? this.draft.value : null;
  }

  /** Lays the exercise on the bench and keeps it among those made here. */
  tryIt(): void {
    const exercise = this.exercise();
    if (exercise === null) return;
    this.keep(exercise);
    this.use(exercise);
  }

  save(): void {
    const exercise = this.exercise();
    if (exercise === null) return;
    this.keep(exercise);
    this.ports.files.save(exercise, exerciseFileName(exercise));
  }

  /** An address that opens this exercise in any copy of the bench; null where it would be too long to be handed on. */
  link(): Promise<string | null> {
    const exercise = this.exercise();
    return exercise === null ? Promise.resolve(null) : this.ports.links.to(JSON.stringify(exercise));
  }

  /** Robot hands weld it: good ones, every named fault, hands less and less good. */
  async prove(): Promise<void> {
    const exercise = this.exercise();
    if (exercise === null) return;
    const hands = proofHands(exercise);
    this.proof.value = { stage: 'welding', hands, rows: hands.map(() => null), failed: [] };
    const pieces = hands.map(
      (hand, i): Piece => ({
        task: async () => ({ type: 'prove', exercise, hand }),
        answered: (said) => {
          if (said.type !== 'prove') return;
          if ('row' in said) this.show(i, said.row);
          else this.fail(said.reason);
        },
        brokeOff: (why) => this.fail(why),
      }),
    );
    if (await this.crew.work(pieces)) this.proof.value = { ...this.proof.value, stage: 'done' };
  }

  stop(): void {
    this.crew.stop();
    if (this.proof.value.stage === 'welding') this.proof.value = { ...this.proof.value, stage: 'stopped' };
  }

  /** What has been welded so far, summed up. */
  summary(): Proof {
    return proofOf(this.proof.value.rows.filter((row) => row !== null));
  }

  private show(i: number, row: ProofRow): void {
    const { rows } = this.proof.value;
    this.proof.value = { ...this.proof.value, rows: rows.map((before, at) => (at === i ? row : before)) };
  }

  private fail(reason: string): void {
    this.proof.value = { ...this.proof.value, failed: [...this.proof.value.failed, reason] };
  }

  /** What was proved was another exercise. */
  private forgetProof(): void {
    this.crew.stop();
    this.proof.value = NO_PROOF;
  }

  private made(): readonly Exercise[] {
    return this.state.preferences.value.exercises;
  }

  private keep(exercise: Exercise): void {
    keepMade(this.state, exercise);
  }
}

/** Most exercises kept in this browser; the one used longest ago goes first. */
const MOST_MADE = 24;

/** Keeps an exercise somebody made, so that it can be chosen again. */
export function keepMade(state: State, exercise: Exercise): void {
  const others = state.preferences.value.exercises.filter((e) => e.name !== exercise.name);
  state.setPreference('exercises', [exercise, ...others].slice(0, MOST_MADE));
}

function problemsOf(draft: Exercise): InputError['problems'] {
  try {
    checkMade(draft);
    return [];
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
}

/** Whether the numbers that others follow from are numbers. */
function numbersIn({ joint, demonstration: w }: Exercise): boolean {
  const all = [joint.length_mm, w.start_mm, w.width_mm, w.travel_mmps, w.pauseA_s, w.pauseB_s];
  return [...all, w.tipToWork_mm, w.workAngle_deg, w.travelAngle_deg].every((x) => Number.isFinite(x));
}

function put(into: unknown, [name, ...rest]: string[], value: Typed): unknown {
  if (name === undefined) return value;
  const at = into as Record<string, unknown>;
  return { ...at, [name]: put(at[name], rest, value) };
}
