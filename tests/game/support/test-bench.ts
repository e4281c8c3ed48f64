import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { serveBench } from '../../../game/core/bench/serve.ts';
import type { ChosenFile } from '../../../game/core/chosen-file.ts';
import { doTask } from '../../../game/core/desk/tasks.ts';
import { InputRouter } from '../../../game/core/hand/router.ts';
import type { TorchSample } from '../../../game/core/hand/sample.ts';
import type { Clock, OpenBench, OpenHand, Ports } from '../../../game/core/ports.ts';
import type { Player } from '../../../game/core/session/player.ts';
import { Session } from '../../../game/core/session/session.ts';
import { createState, type Finished } from '../../../game/core/session/state.ts';
import type { Result } from '../../../scoring/index.ts';
import { LETTERS_FILE } from '../../../scoring/papers/letters.ts';
import { CrankClock } from './crank-clock.ts';
import { MapStores } from './map-stores.ts';

/** A frame of a slow page (each costs more than the weld it shows), and the spacing of a mouse's readings, ms. */
const FRAME_MS = 32;
const READING_MS = 8;
const ON_THE_WAY_MS = 8;
/** Longest anything here may take on the cranked clock, ms. */
const PATIENCE_MS = 60_000;

/** A file beginning with this byte breaks the hand that is at it. */
const BREAKS = 0;

/** The typefaces of the papers, as they come. */
const file = (name: string): Uint8Array => readFileSync(createRequire(import.meta.url).resolve(name));
const fontFile = (style: string): Uint8Array => file(`pdfmake/fonts/Roboto/Roboto-${style}.ttf`);

/** A file as the user chooses it. */
export function chosen(name: string, text: string, lastModified = 0): ChosenFile {
  const bytes = new TextEncoder().encode(text);
  return {
    name,
    size: bytes.length,
    lastModified,
    arrayBuffer: async () => bytes.slice().buffer,
  };
}

/** Where the hand is at a time after the beginning of the stroke, s. */
export type Path = (t_s: number) => { u_mm: number; y_mm: number };

export interface Saved {
  name: string;
  content: unknown;
}

export interface TestBenchOptions {
  stores?: MapStores;
  clock?: CrankClock;
  preferences?: unknown;
  /** A joint of one's own of this length; without it the exercise is the usual first one. */
  length_mm?: number;
  /** What looking at the clock costs the bench, ms: a slow machine. */
  slow_ms?: number;
  /** What the address the page was opened by carries. */
  carried?: string;
  /** Helping hands at the desk. */
  hands?: number;
  /** Welds an attempt again to prove its first sentence, as the page does; left out: never answered, since it takes seconds. */
  proves?: true;
  /** What the browser says when asked to keep attempts for good. */
  persistence?: { granted: boolean | null; answer: boolean | null };
}

/**
 * The whole game without a browser: the core, a bench in this thread whose messages are cloned as a Worker's are, a clock that is cranked,
 * stores in memory. Verbs are what a user does.
 */
export class TestBench {
  readonly clock: CrankClock;
  readonly stores: MapStores;
  readonly state = createState();
  readonly session: Session;
  readonly router: InputRouter;
  readonly player: Player;
  readonly saved: Saved[] = [];
  /** Preferences as last kept. */
  kept: unknown;
  /** Benches opened so far, the newest last. `mute`: it has stopped answering. */
  readonly benches: { mute: boolean; closed: boolean }[] = [];
  /** Helping hands opened so far. */
  readonly hands: { closed: boolean }[] = [];
  readonly printed: string[] = [];
  /** The browser's own key for printing. */
  printKey: () => void = () => undefined;
  /** Times this tab has told others of a change, and what it does when told. */
  told = 0;
  otherTab: () => void = () => undefined;
  asked = 0;
  /** Frames drawn so far. */
  frames = 0;
  private frame_ms = 0;
  private at = { u_mm: 0, y_mm: 0 };
  private ids = 0;

  constructor(private readonly options: TestBenchOptions = {}) {
    this.clock = options.clock ?? new CrankClock();
    this.stores = options.stores ?? new MapStores();
    this.kept = options.preferences ?? null;
    this.session = new Session(this.ports(options.persistence ?? { granted: null, answer: null }), this.state);
    const { session } = this;
    this.router = new InputRouter(
      {
        get tool() {
          return session.tool;
        },
        finish: () => this.session.finish(),
        cutAt: (y_mm) => this.session.cutAt(y_mm),
        moved: () => undefined,
      },
      this.state,
      this.clock,
    );
    this.player = this.session.player;
    if (options.length_mm) this.session.edit({ joint: { length_mm: options.length_mm } });
    else this.session.again();
    this.wait(0.1);
  }

  private ports(persistence: { granted: boolean | null; answer: boolean | null }): Ports {
    return {
      clock: this.clock,
      openBench: this.openBench,
      openHand: this.openHand,
      hands: this.options.hands ?? 2,
      links: {
        to: async (text) => `bench#exercise=${encodeURIComponent(text)}`,
        carried: async () => this.options.carried ?? null,
        hear: () => undefined,
      },
      papers: {
        print: (html) => this.printed.push(html),
        fonts: async () => ({
          regular: fontFile('Regular'),
          medium: fontFile('Medium'),
          letters: async (writing) => file(LETTERS_FILE[writing]),
        }),
        onPrint: (paper) => {
          this.printKey = () => this.printed.push(paper() ?? 'the page as it stands');
        },
      },
      attempts: this.stores.attempts,
      coupons: this.stores.coupons,
      practice: this.stores.practice,
      scores: this.stores.scores,
      preferences: {
        load: () => this.kept,
        save: (preferences) => {
          this.kept = structuredClone(preferences);
        },
      },
      files: {
        save: (content, name) => this.saved.push({ name, content: JSON.parse(JSON.stringify(content)) }),
        saveAs: (content, name) => this.saved.push({ name, content }),
        openPicture: async (blob, name) => ({ name, blob, address: name, width_px: 1, height_px: 1 }),
        closePicture: () => undefined,
      },
      tabs: {
        tell: () => {
          this.told += 1;
        },
        hear: (changed) => {
          this.otherTab = changed;
        },
      },
      persistence: {
        granted: async () => persistence.granted,
        ask: async () => {
          this.asked += 1;
          return persistence.answer;
        },
      },
      newId: () => `attempt-${++this.ids}-${this.clock.now_ms()}`,
    };
  }

  private readonly openBench: OpenBench = (hear) => {
    const bench = { mute: false, closed: false };
    this.benches.push(bench);
    const alive = (): boolean => !bench.closed && !bench.mute;
    const own: Clock = {
      now_ms: () => {
        this.clock.spend(this.options.slow_ms ?? 0);
        return this.clock.now_ms();
      },
      date_ms: () => this.clock.date_ms(),
      written: (date_ms) => this.clock.written(date_ms),
      after: (ms, run) => this.clock.after(ms, () => alive() && run()),
    };
    const handle = serveBench((answer, transfer = []) => {
      const copy = structuredClone(answer, { transfer });
      own.after(0, () => hear(copy));
    }, own);
    return {
      ask: (request, transfer = []) => {
        const copy = structuredClone(request, { transfer });
        own.after(0, () => handle(copy));
      },
      close: () => {
        bench.closed = true;
      },
    };
  };

  /** A hand that does its task in this thread at once; a task whose bytes begin with the mark of a breaking hand breaks it. */
  private readonly openHand: OpenHand = (hear, broken) => {
    const hand = { closed: false };
    this.hands.push(hand);
    return {
      ask: (task) => {
        const copy = structuredClone(task);
        setImmediate(() => {
          if (hand.closed || (copy.type === 'prove first' && !this.options.proves)) return;
          if ('bytes' in copy && copy.bytes[0] === BREAKS) broken('out of memory');
          else hear(structuredClone(doTask(copy)));
        });
      },
      close: () => {
        hand.closed = true;
      },
    };
  };

  /** Presses the mouse at a place of the joint. */
  press(u_mm: number, y_mm: number): this {
    this.at = { u_mm, y_mm };
    this.router.press('mouse', this.reading(true));
    return this;
  }

  /** Follows a path for a while with the mouse, frames going by. */
  follow(path: Path, seconds: number): this {
    const steps = Math.round((seconds * 1000) / READING_MS);
    for (let n = 1; n <= steps; n++) {
      this.pass(READING_MS);
      this.at = path((n * READING_MS) / 1000);
      this.router.near('mouse', [this.reading(this.session.tool.triggerDown)]);
    }
    return this;
  }

  /** Lets time go by, frames and all, the hand at rest. */
  wait(seconds: number): this {
    for (let left = seconds * 1000; left > 0; left -= FRAME_MS) this.pass(Math.min(FRAME_MS, left));
    return this;
  }

  release(): this {
    this.router.release(this.reading(false));
    return this;
  }

  /** Lets pending promises come to their end: stores answer at once, but not before the next turn. */
  async settle(): Promise<this> {
    for (let n = 0; n < 10; n++) await new Promise((resolve) => setImmediate(resolve));
    return this;
  }

  /** Waits until the attempt on the bench is judged. */
  async result(): Promise<Result> {
    await this.until(() => this.state.result.value !== null, 'a result');
    return this.state.result.value!;
  }

  async finished(): Promise<Finished> {
    await this.until(() => this.state.finished.value !== null, 'the end of the attempt');
    return this.state.finished.value!;
  }

  async until(done: () => boolean, what: string): Promise<void> {
    for (let passed = 0; !done(); passed += 100) {
      if (passed > PATIENCE_MS)
        throw new Error(`Waited in vain for ${what}; problem: ${JSON.stringify(this.state.problem.value)}`);
      this.wait(0.1);
      await this.settle();
    }
    await this.settle();
  }

  file(content: unknown, name = 'attempt.json'): ChosenFile {
    const text = JSON.stringify(content);
    return chosen(name, text);
  }

  private reading(trigger: boolean): TorchSample {
    return { at_ms: this.clock.now_ms(), ...this.at, ...this.router.hold(), trigger };
  }

  private pass(ms: number): void {
    this.clock.crank(ms);
    this.frame_ms += ms;
    if (this.frame_ms < FRAME_MS) return;
    this.router.settle();
    this.session.tick(this.clock.now_ms() - ON_THE_WAY_MS);
    this.player.advance(this.frame_ms / 1000);
    this.frame_ms = 0;
    this.frames += 1;
  }
}
