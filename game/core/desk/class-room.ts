import { signal } from '@preact/signals-core';
import {
  type BadFile,
  type ClassPaper,
  type ClassSheet,
  classHtml,
  classPaperWith,
  classPdf,
  classSheet,
  digest,
  type Entry,
  type Exercise,
  exerciseDigest,
  exercises,
  type FirstCut,
  InputError,
  isTaken,
  type Judge,
  type KnownPieces,
  keptScore,
  type Language,
  MOST_FILES,
  type OwnKind,
  readExercise,
  refusePacked,
  rowsCsv,
  rowsJsonl,
  type Scored,
  scoreKey,
  sheetCsv,
  textOf,
} from '../../../scoring/index.ts';
import type { ChosenFile } from '../chosen-file.ts';
import type { ChosenFiles, Ports } from '../ports.ts';
import { bytesOf, MOST_FILE_BYTES } from '../session/files.ts';
import { messageOf } from '../session/problem.ts';
import { cutName } from '../session/saver.ts';
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
  /** Files whose scores were kept from before. */
  known: number;
  /** Titles of the exercises of the school's own that count, besides the ready ones. */
  counted: string[];
  /** Cuts of the three to see first, in their order, as far as they are drawn. */
  cuts: (FirstCut | null)[];
}

const EMPTY: ClassView = {
  stage: 'empty',
  done: 0,
  total: 0,
  known: 0,
  sheet: null,
  passedOver: [],
  counted: [],
  cuts: [],
};
const NO_JUDGE: Judge = { exercise: null, profile: null };

/** A file of the class and what it came to. Read again whenever it is wanted: a class need not fit in memory. */
interface Filed {
  file: ChosenFile;
  /** The name it came under. */
  given: string;
  /** Of its bytes, once they have been read. */
  sha256: string | null;
  scored: Scored | null;
  bad: BadFile | null;
  /** What else it is, where it is whole and no attempt. */
  other: OwnKind | null;
}

const NEW = { scored: null, bad: null, other: null, sha256: null } as const;

export type ClassExport = 'csv' | 'rows' | 'jsonl' | 'html' | 'pdf';

/** A class's files, scored on helping hands: what came in stays, a bad file is named, and it can be stopped and gone on with. */
export class ClassRoom {
  readonly view = signal<ClassView>(EMPTY);
  private files = new Map<string, Filed>();
  private passedOver: string[] = [];
  /** Exercises that came with the files. */
  private handed: Exercise[] = [];
  private folders = new Set<string>();
  /** Names of files whose scores were kept from before. */
  private known = new Set<string>();
  /** Names given to files of the addition under way. */
  private coming = new Set<string>();
  private readonly crew: Crew;
  private readonly outCrew: Crew;
  private laid_ms = 0;

  /**
   * @param made exercises made or opened here: attempts at them count, as those at the ready ones do
   * @param pieces whose plate is whose, and the start word
   * @param language of what is said of the three to see first, and of the class sheet on paper
   * @param inches whether they stand beside millimetres there
   */
  constructor(
    private readonly ports: Pick<Ports, 'openHand' | 'hands' | 'clock' | 'files' | 'scores' | 'papers'>,
    private readonly made: () => readonly Exercise[],
    private readonly pieces: () => KnownPieces,
    private readonly language: () => Language,
    private readonly inches: () => boolean,
  ) {
    this.crew = new Crew(ports.openHand, ports.hands);
    this.outCrew = new Crew(ports.openHand, 1);
  }

  /** Takes in files beside those there are, and scores them. The same file again costs nothing; another of the same name is kept beside it. */
  async add({ files, folders, lost = [] }: ChosenFiles): Promise<void> {
    for (const folder of folders) this.folders.add(folder);
    const these = files.filter((file) => isTaken(file.name));
    this.coming.clear();
    if (this.files.size + these.length > MOST_FILES) {
      throw new InputError('class', [
        { path: '', found: `${this.files.size + these.length} files`, allowed: `at most ${MOST_FILES} in one class` },
      ]);
    }
    if (these.length === 0 && lost.length === 0 && this.files.size === 0) {
      throw new InputError('class', [
        {
          path: '',
          found: files.length === 0 ? 'no files' : `${files.length} files, none of them ending in .json`,
          allowed: 'recordings saved by Toehold (.json)',
        },
      ]);
    }
    for (const file of these.filter(isExercise)) await this.takeExercise(file);
    this.passedOver = files.filter((file) => !isTaken(file.name)).map((file) => file.name);
    for (const file of these.filter((one) => !isExercise(one))) this.take(file);
    for (const folder of lost) this.lost(folder);
    await this.goOn();
  }

  /** An exercise among the files is one the class was asked for. */
  private async takeExercise(file: ChosenFile): Promise<void> {
    const filed: Filed = { ...NEW, file, given: file.name };
    this.files.set(file.name, filed);
    try {
      const exercise = readExercise(textOf(await taken(file), file.name), file.name);
      this.handed = [...this.handed.filter((e) => e.name !== exercise.name), exercise];
      filed.other = 'exercise';
    } catch (error) {
      filed.bad = { file: file.name, reason: messageOf(error) };
    }
  }

  /** A folder that could not be looked into is named like a file that cannot be read. */
  private lost(folder: string): void {
    const file = `${folder}/`;
    const reason = new InputError(file, [
      { path: '', found: 'a folder that can no longer be read', allowed: 'a folder that can be read' },
    ]).message;
    const gone: ChosenFile = { name: file, size: 0, lastModified: 0, arrayBuffer: () => Promise.reject(reason) };
    this.files.set(file, { ...NEW, file: gone, given: file, bad: { file, reason } });
  }

  /** Two laptops may give one name to two attempts: both are kept, the later one under the name that a browser gives a second download. */
  private take(file: ChosenFile): void {
    for (let n = 1; ; n++) {
      const name = n === 1 ? file.name : file.name.replace(/(\.json)?$/i, (end) => ` (${n})${end}`);
      const before = this.files.get(name);
      if (before?.scored && sameFile(before.file, file)) return;
      if (before && this.coming.has(name) && !sameFile(before.file, file)) continue;
      if (before?.scored) continue;
      this.files.set(name, { ...NEW, file: n === 1 ? file : renamed(file, name), given: file.name });
      this.coming.add(name);
      return;
    }
  }

  /** The very same bytes have come under the same name already, from another folder: one of them is enough. */
  private isCopy(filed: Filed, sha256: string): boolean {
    filed.sha256 = sha256;
    const same = this.all().some((one) => one !== filed && one.given === filed.given && one.sha256 === sha256);
    if (same) {
      this.files.delete(filed.file.name);
      this.came();
    }
    return same;
  }

  /** Scores what has not been scored yet. */
  async goOn(): Promise<void> {
    // As they came: of two copies the first keeps its name.
    const waiting = [...this.files.values()].filter((filed) => !isDone(filed));
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
    this.known = new Set();
    this.folders = new Set();
    this.passedOver = [];
    this.handed = [];
    this.view.value = EMPTY;
  }

  /** One of the class's files, to be opened. */
  file(name: string): ChosenFile | null {
    return this.files.get(name)?.file ?? null;
  }

  /**
   * Hands out a file made of one attempt, which is welded again for it: its result as JSON, or its cut where the first fix points.
   * @throws InputError where it can no longer be read
   */
  async saveOf(entry: Entry, what: 'result' | 'cut'): Promise<void> {
    const filed = this.files.get(entry.file);
    if (!filed) return;
    const cut = what === 'cut' ? entry.scored.result : null;
    const bytes = await taken(filed.file);
    const name = entry.file.replace(/\.json$/i, '');
    const failed = (reason: string): never => {
      throw new InputError(entry.file, [{ path: '', found: reason, allowed: 'a file that can be welded again' }]);
    };
    await this.outCrew.work([
      {
        task: async () => ({ type: 'file', file: entry.file, bytes, cut }),
        answered: (said) => {
          if (said.type !== 'file') return;
          if ('reason' in said) failed(said.reason);
          else if (typeof said.made === 'string')
            this.ports.files.saveAs(said.made, `${name}.result.json`, 'application/json');
          else this.ports.files.saveAs(said.made.svg, cutName(name, said.made.y_mm), 'image/svg+xml');
        },
        brokeOff: failed,
      },
    ]);
  }

  /** Hands the class to the user. */
  async save(kind: ClassExport): Promise<void> {
    const { files, papers } = this.ports;
    const name = `class-${this.days()}`;
    const kinds: Record<ClassExport, () => Promise<[content: string | Uint8Array, end: string, type: string]>> = {
      csv: async () => [sheetCsv(this.sheet()), '.csv', 'text/csv'],
      rows: async () => [rowsCsv(this.scored()), '-attempts.csv', 'text/csv'],
      jsonl: async () => [rowsJsonl(this.scored()), '-attempts.jsonl', 'application/jsonl'],
      html: async () => [classHtml(this.paper()), '.html', 'text/html'],
      pdf: async () => [await classPdf(this.paper(), await papers.fonts()), '.pdf', 'application/pdf'],
    };
    const [content, end, type] = await kinds[kind]();
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
      this.language(),
      this.inches(),
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
          const bytes = await taken(filed.file);
          const sha256 = digest(bytes);
          if (this.isCopy(filed, sha256)) return null;
          const before = await this.kept(name, sha256);
          if (before === null) return { type: 'score', file: name, bytes, judge: NO_JUDGE };
          filed.scored = before;
          this.known.add(name);
          this.came();
          return null;
        } catch (error) {
          fail(messageOf(error));
          return null;
        }
      },
      answered: (said) => {
        if (said.type !== 'score') return;
        if (said.answer.ok) {
          filed.scored = said.answer.scored;
          this.keep(said.answer.scored);
          this.came();
        } else if (said.answer.kind === undefined) fail(said.answer.reason);
        else void this.other(filed, said.answer.kind);
      },
      brokeOff: (why) => fail(`${name}: scoring broke off (${why})`),
    };
  }

  /** A whole file that is no attempt; an exercise under another name counts as one under its own. */
  private async other(filed: Filed, kind: OwnKind): Promise<void> {
    if (kind === 'exercise') await this.takeExercise(filed.file);
    else filed.other = kind;
    this.came();
  }

  /** The score of these very bytes from before; null where none is kept, or it cannot be read. */
  private async kept(file: string, sha256: string): Promise<Scored | null> {
    try {
      return keptScore(await this.ports.scores.get(scoreKey(sha256, NO_JUDGE)), file, sha256);
    } catch {
      return null;
    }
  }

  /** Keeps a score for the next time. A browser that keeps nothing scores again; nothing else is lost by that. */
  private keep({ file: _file, ...score }: Scored): void {
    this.ports.scores.put(scoreKey(score.sha256, NO_JUDGE), score).catch(() => undefined);
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
            return {
              type: 'cut',
              first,
              place,
              bytes: await taken(this.files.get(name)!.file),
              language: this.language(),
            };
          } catch (error) {
            put(place, { cut: null, caption: messageOf(error) });
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
      known: this.known.size,
      counted: [...new Set(this.own().map((e) => e.title))],
      cuts: same ? cuts : sheet.firstThree.map(() => null),
    };
  }

  private count(): { done: number; total: number } {
    const all = this.all();
    return { done: all.filter(isDone).length, total: all.length };
  }

  private sheet(): ClassSheet {
    const bad = this.all().flatMap((f) => (f.bad === null ? [] : [f.bad]));
    const others = this.all().flatMap((f) => (f.other === null ? [] : [{ file: f.file.name, kind: f.other }]));
    const asked = new Set([...exercises, ...this.own()].map((e) => exerciseDigest(e)!));
    return classSheet({ scored: this.scored(), bad, others, folders: [...this.folders].sort() }, asked, this.pieces());
  }

  /** Exercises of the school's own that count. */
  private own(): Exercise[] {
    return [...this.made(), ...this.handed];
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

function isDone({ scored, bad, other }: Filed): boolean {
  return scored !== null || bad !== null || other !== null;
}

function isExercise({ name }: ChosenFile): boolean {
  return /\.exercise\.json$/i.test(name);
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

/** Bytes of one of the class's files. @throws InputError when it is packed, larger than is taken in or cannot be read */
async function taken(file: ChosenFile): Promise<Uint8Array> {
  refusePacked(file.name);
  if (file.size > MOST_FILE_BYTES) {
    throw new InputError(file.name, [
      { path: '', found: `${file.size} bytes`, allowed: `at most ${MOST_FILE_BYTES} bytes` },
    ]);
  }
  return bytesOf(file);
}

/** A file under another name. */
function renamed(file: ChosenFile, name: string): ChosenFile {
  return { name, size: file.size, lastModified: file.lastModified, arrayBuffer: () => file.arrayBuffer() };
}
