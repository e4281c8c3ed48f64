import { signal } from '@preact/signals-core';
import {
  type BadFile,
  type ClassPaper,
  type ClassSheet,
  classHtml,
  classPaperWith,
  classSheet,
  type FirstCut,
  InputError,
  isTaken,
  type Judge,
  MOST_FILES,
  refusePacked,
  rowsCsv,
  rowsJsonl,
  type Scored,
  sheetCsv,
} from '../../../scoring/index.ts';
import type { ChosenFile, ChosenFiles, Ports } from '../ports.ts';
import { MOST_FILE_BYTES } from '../session/files.ts';
import { messageOf } from '../session/problem.ts';
import { Crew, type Piece } from './crew.ts';
import type { HandTask } from './tasks.ts';

/** The sheet is laid anew at most this often while files come in. */
const LAY_MS = 400;

/** What of a class can be seen. */
export interface ClassView {
  /** `cutting`: all files are scored, the three to see first are being welded again for their cuts. */
  stage: 'empty' | 'scoring' | 'stopped' | 'cutting' | 'done';
  done: number;
  total: number;
  /** Of what has been scored so far; null before anything has. */
  sheet: ClassSheet | null;
  /** Names of files that are no recordings by their ends, left alone. */
  passedOver: string[];
  /** Cuts of the three to see first, in their order, as far as they are drawn. */
  cuts: (FirstCut | null)[];
}

const EMPTY: ClassView = { stage: 'empty', done: 0, total: 0, sheet: null, passedOver: [], cuts: [] };
const NO_JUDGE: Judge = { exercise: null, profile: null };

/** A file of the class and what it came to. Read again whenever it is wanted: a class need not fit in memory. */
interface Filed {
  file: ChosenFile;
  scored: Scored | null;
  bad: BadFile | null;
}

export type ClassExport = 'csv' | 'rows' | 'jsonl' | 'html';

/** A class's files, scored on helping hands: what came in stays, a bad file is named, and it can be stopped and gone on with. */
export class ClassRoom {
  readonly view = signal<ClassView>(EMPTY);
  private files = new Map<string, Filed>();
  private passedOver: string[] = [];
  private folders = new Set<string>();
  private readonly crew: Crew;
  private laid_ms = 0;

  constructor(private readonly ports: Pick<Ports, 'openHand' | 'hands' | 'clock' | 'files'>) {
    this.crew = new Crew(ports.openHand, ports.hands);
  }

  /** Takes in files beside those there are, and scores them. The same file again costs nothing; a changed one is scored anew. */
  async add({ files, folders }: ChosenFiles): Promise<void> {
    for (const folder of folders) this.folders.add(folder);
    const taken = files.filter((file) => isTaken(file.name));
    if (this.files.size + taken.length > MOST_FILES) {
      throw new InputError('class', [
        { path: '', found: `${this.files.size + taken.length} files`, allowed: `at most ${MOST_FILES} in one class` },
      ]);
    }
    if (taken.length === 0 && this.files.size === 0) {
      throw new InputError('class', [
        {
          path: '',
          found: files.length === 0 ? 'no files' : `${files.length} files, none of them ending in .json`,
          allowed: 'recordings saved by Toehold (.json)',
        },
      ]);
    }
    this.passedOver = files.filter((file) => !isTaken(file.name)).map((file) => file.name);
    for (const file of taken) this.take(file);
    await this.goOn();
  }

  private take(file: ChosenFile): void {
    const before = this.files.get(file.name);
    const filed: Filed = { file, scored: null, bad: null };
    if (before?.scored && sameFile(before.file, file)) filed.scored = before.scored;
    this.files.set(file.name, filed);
  }

  /** Scores what has not been scored yet. */
  async goOn(): Promise<void> {
    const waiting = this.all().filter((filed) => filed.scored === null && filed.bad === null);
    this.show('scoring');
    const ended = await this.crew.work(waiting.map((filed) => this.scoring(filed)));
    if (!ended) return;
    await this.cut();
  }

  stop(): void {
    this.crew.stop();
    if (this.view.value.stage === 'scoring' || this.view.value.stage === 'cutting') this.show('stopped');
  }

  /** Puts the class away. */
  clear(): void {
    this.crew.stop();
    this.files = new Map();
    this.folders = new Set();
    this.passedOver = [];
    this.view.value = EMPTY;
  }

  /** One of the class's files, to be opened. */
  file(name: string): ChosenFile | null {
    return this.files.get(name)?.file ?? null;
  }

  /** Hands the class to the user. */
  save(kind: ClassExport): void {
    const { files } = this.ports;
    const name = `class-${this.days()}`;
    const kinds: Record<ClassExport, () => [content: string, end: string, type: string]> = {
      csv: () => [sheetCsv(this.sheet()), '.csv', 'text/csv'],
      rows: () => [rowsCsv(this.scored()), '-attempts.csv', 'text/csv'],
      jsonl: () => [rowsJsonl(this.scored()), '-attempts.jsonl', 'application/jsonl'],
      html: () => [classHtml(this.paper()), '.html', 'text/html'],
    };
    const [content, end, type] = kinds[kind]();
    files.saveAs(content, `${name}${end}`, type);
  }

  /** The class sheet as a page to print. */
  html(): string {
    return classHtml(this.paper());
  }

  private paper(): ClassPaper {
    const { cuts } = this.view.value;
    const sheet = this.sheet();
    const missing = { cut: null, caption: 'The cut is not drawn yet.' };
    return classPaperWith(
      sheet,
      sheet.firstThree.map((_, i) => cuts[i] ?? missing),
    );
  }

  private scoring(filed: Filed): Piece {
    const { name } = filed.file;
    const fail = (reason: string): void => {
      filed.bad = { file: name, reason };
      this.came();
    };
    return {
      task: async (): Promise<HandTask | null> => {
        try {
          return { type: 'score', file: name, bytes: await bytesOf(filed.file), judge: NO_JUDGE };
        } catch (error) {
          fail(error instanceof InputError ? error.message : unreadable(name, error));
          return null;
        }
      },
      answered: (said) => {
        if (said.type !== 'score') return;
        if (said.answer.ok) {
          filed.scored = said.answer.scored;
          this.came();
        } else fail(said.answer.reason);
      },
      brokeOff: (why) => fail(`${name}: scoring broke off (${why})`),
    };
  }

  /** The three to see first, welded again. */
  private async cut(): Promise<void> {
    this.show('cutting');
    const three = this.view.value.sheet?.firstThree ?? [];
    const put = (place: number, cut: FirstCut): void => {
      const cuts = [...this.view.value.cuts];
      cuts[place] = cut;
      this.view.value = { ...this.view.value, cuts };
    };
    const pieces = three.map((first, place): Piece => {
      const name = first.entry.file;
      return {
        task: async () => {
          try {
            return { type: 'cut', first, place, bytes: await bytesOf(this.files.get(name)!.file) };
          } catch (error) {
            put(place, { cut: null, caption: error instanceof InputError ? error.message : unreadable(name, error) });
            return null;
          }
        },
        answered: (said) => {
          if (said.type === 'cut') put(place, said.cut);
        },
        brokeOff: (why) => put(place, { cut: null, caption: `${name}: welding it again broke off (${why})` }),
      };
    });
    if (await this.crew.work(pieces)) this.view.value = { ...this.view.value, stage: 'done' };
  }

  /** A file is done; the sheet is laid anew now and then. */
  private came(): void {
    const now_ms = this.ports.clock.now_ms();
    if (now_ms - this.laid_ms >= LAY_MS) this.show('scoring');
    else this.view.value = { ...this.view.value, ...this.count() };
  }

  private show(stage: ClassView['stage']): void {
    const { sheet: before, cuts } = this.view.value;
    const sheet = this.sheet();
    const same = before !== null && sameThree(before, sheet);
    this.laid_ms = this.ports.clock.now_ms();
    this.view.value = {
      stage,
      ...this.count(),
      sheet,
      passedOver: this.passedOver,
      cuts: same ? cuts : sheet.firstThree.map(() => null),
    };
  }

  private count(): { done: number; total: number } {
    const all = this.all();
    return { done: all.filter((f) => f.scored !== null || f.bad !== null).length, total: all.length };
  }

  private sheet(): ClassSheet {
    const bad = this.all().flatMap((f) => (f.bad === null ? [] : [f.bad]));
    return classSheet({ scored: this.scored(), bad, folders: [...this.folders].sort() });
  }

  private scored(): Scored[] {
    return this.all().flatMap((f) => (f.scored === null ? [] : [f.scored]));
  }

  /** In the order of file names. */
  private all(): Filed[] {
    return [...this.files.keys()].sort().map((name) => this.files.get(name)!);
  }

  private days(): string {
    const { days } = this.sheet();
    if (days !== null) return days.from === days.to ? days.from : `${days.from}-to-${days.to}`;
    return this.ports.clock.written(this.ports.clock.date_ms()).day;
  }
}

function sameThree(a: ClassSheet, b: ClassSheet): boolean {
  const key = (s: ClassSheet): string =>
    JSON.stringify(s.firstThree.map((f) => [f.entry.scored.sha256, f.y_mm, f.line]));
  return key(a) === key(b);
}

/** As far as can be told without reading it: a file that was changed has another length or time. */
function sameFile(a: ChosenFile, b: ChosenFile): boolean {
  return a.size === b.size && a.lastModified === b.lastModified;
}

/** @throws InputError when it is packed or larger than is taken in */
async function bytesOf(file: ChosenFile): Promise<Uint8Array> {
  refusePacked(file.name);
  if (file.size > MOST_FILE_BYTES) {
    throw new InputError(file.name, [
      { path: '', found: `${file.size} bytes`, allowed: `at most ${MOST_FILE_BYTES} bytes` },
    ]);
  }
  return new Uint8Array(await file.arrayBuffer());
}

function unreadable(name: string, error: unknown): string {
  return `${name}: found a file that can no longer be read (${messageOf(error)}), allowed: a file that can be read`;
}
