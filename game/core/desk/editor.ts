import { computed, signal } from '@preact/signals-core';
import {
  checkMade,
  draftFrom,
  type Exercise,
  exerciseFileName,
  exerciseNamed,
  exercises,
  InputError,
  mapOf,
  ownLimits,
  type Profile,
  type Proof,
  type ProofHand,
  type ProofRow,
  pointsOf,
  profileFileName,
  profileNamed,
  profileOf,
  proofHands,
  proofOf,
  type RangeMap,
  type RangeResult,
  type Rule,
  rangeAround,
  readProfile,
  usualLengths,
  withConsequences,
  withOptions,
  wordsIn,
} from '../../../scoring/index.ts';
import type { ChosenFile } from '../chosen-file.ts';
import type { Ports } from '../ports.ts';
import { readText } from '../session/files.ts';
import { problemOf } from '../session/problem.ts';
import type { State } from '../session/state.ts';
import { Crew, type Piece } from './crew.ts';

/** What stands in a field, as typed: a number where it is one, else the text, so that the check can name what was found. */
export type Typed = string | number | boolean | null | (string | number)[] | { from: Typed; to: Typed };

/** The map beside the proof: where root and profile both hold, round the settings. */
export interface MapView {
  stage: 'none' | 'welding' | 'stopped' | 'done';
  done: number;
  total: number;
  map: RangeMap | null;
}

const NO_MAP: MapView = { stage: 'none', done: 0, total: 0, map: null };

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
  readonly map = signal<MapView>(NO_MAP);
  private readonly crew: Crew;
  private readonly mapCrew: Crew;

  constructor(
    private readonly ports: Pick<Ports, 'openHand' | 'hands' | 'files' | 'links' | 'clock'>,
    private readonly state: State,
    private readonly use: (exercise: Exercise) => void,
  ) {
    this.crew = new Crew(ports.openHand, ports.hands);
    this.mapCrew = new Crew(ports.openHand, ports.hands);
    // Until somebody works on it the first draft follows the language on screen, which may be fetched later than this is made.
    const first = this.draft.peek();
    let shown = first;
    state.language.subscribe(() => {
      if (this.draft.peek() === shown) this.draft.value = shown = this.said(first);
    });
  }

  /** An exercise with its words in the language on screen, where they are a ready exercise's: from here on they are its maker's. */
  private said(exercise: Exercise): Exercise {
    const { ready } = wordsIn(this.state.language.peek());
    const { title, story, teaches } = exercise;
    return { ...exercise, title: ready(title), story: ready(story), teaches: ready(teaches) };
  }

  /** Begins a new draft from another exercise, under a name of its own. An exercise somebody made may be gone on with as it is. */
  begin(exercise: Exercise): void {
    const own = exerciseNamed(exercise.name) === undefined && this.made().some((e) => e.name === exercise.name);
    this.draft.value = own
      ? exercise
      : this.said(
          draftFrom(
            exercise,
            this.made().map((e) => e.name),
          ),
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
    this.take(draft);
  }

  /** Judges by a ready profile; limits of the draft's own are let go. */
  chooseProfile(name: string): void {
    const { limits: _limits, ...draft } = this.draft.value;
    this.take({ ...draft, profile: name });
  }

  /** Begins limits of the school's own from those the draft is judged by. */
  ownLimits(): void {
    const from = profileOf(this.draft.value);
    const taken = this.made().flatMap((e) => (e.limits === undefined ? [] : [e.limits.name]));
    const { clock } = this.ports;
    if (from !== undefined) this.takeProfile(ownLimits(from, clock.written(clock.date_ms()).day, taken));
  }

  /** Judges by limits from a file: a ready profile is chosen by its name, any other goes into the exercise. */
  takeProfile(profile: Profile): void {
    if (profileNamed(profile.name) !== undefined) this.chooseProfile(profile.name);
    else this.take({ ...this.draft.value, profile: profile.name, limits: profile });
  }

  /** Another limit of the draft's own, like the last one; what it limits is then chosen. */
  addRule(): void {
    const { limits } = this.draft.value;
    const last = limits?.rules.at(-1);
    if (limits && last) this.rules([...limits.rules, { ...last, clause: '' }]);
  }

  dropRule(at: number): void {
    const { limits } = this.draft.value;
    if (limits) this.rules(limits.rules.filter((_, i) => i !== at));
  }

  /** Gives a limit another form, with the numbers that the new form begins with. */
  setRule(at: number, change: Partial<Pick<Rule, 'limit' | 'extent'>>): void {
    const { limits } = this.draft.value;
    if (limits) this.rules(limits.rules.map((rule, i) => (i === at ? { ...rule, ...change } : rule)));
  }

  private rules(rules: Rule[]): void {
    const { limits } = this.draft.value;
    if (limits) this.take({ ...this.draft.value, limits: { ...limits, rules } });
  }

  /** Opens limits from a file; what is wrong with it is said. */
  async profileFile(file: ChosenFile): Promise<void> {
    try {
      this.takeProfile(readProfile(await readText(file), file.name));
    } catch (error) {
      this.state.problem.value = problemOf(error);
    }
  }

  /** Saves the draft's own limits as a file that the command line judges by as well; null: nothing to save, or it is no profile yet. */
  saveProfile(): void {
    const { limits } = this.draft.value;
    if (limits === undefined || this.problems.value.some((p) => p.path.startsWith('limits'))) return;
    this.ports.files.save(limits, profileFileName(limits));
  }

  private take(typed: Exercise): void {
    const { limits } = typed;
    const named = limits === undefined ? typed : { ...typed, profile: limits.name };
    const draft = withOptions(named);
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

  /** Welds the settings round the exercise's own with a steady hand. */
  async drawMap(): Promise<void> {
    const exercise = this.exercise();
    if (exercise === null) return;
    const plan = rangeAround(exercise);
    const points = pointsOf(plan);
    const results: RangeResult[] = [];
    this.map.value = { stage: 'welding', done: 0, total: points.length, map: null };
    const fail = (why: string): void => {
      this.stopMap();
      this.state.problem.value = { code: 'unexpected', message: why };
    };
    const pieces = points.map(
      (point): Piece => ({
        task: async () => ({ type: 'range', plan, point }),
        answered: (said) => {
          if (said.type !== 'range') return;
          if ('reason' in said) return fail(said.reason);
          results.push(said.result);
          this.map.value = { ...this.map.value, done: results.length };
        },
        brokeOff: fail,
      }),
    );
    if (await this.mapCrew.work(pieces))
      this.map.value = { ...this.map.value, stage: 'done', map: mapOf(plan, results) };
  }

  stopMap(): void {
    this.mapCrew.stop();
    if (this.map.value.stage === 'welding') this.map.value = { ...this.map.value, stage: 'stopped' };
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
    this.mapCrew.stop();
    this.proof.value = NO_PROOF;
    this.map.value = NO_MAP;
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
  if (Array.isArray(into)) return into.map((one, i) => (i === Number(name) ? put(one, rest, value) : one));
  const at = (into ?? {}) as Record<string, unknown>;
  return { ...at, [name]: put(at[name], rest, value) };
}
