import { rowsCsv, rowsJsonl } from '../../scoring/class/rows.ts';
import { scoredSchema } from '../../scoring/class/scored.ts';
import { sheetCsv } from '../../scoring/class/sheet-csv.ts';
import { sheetLines } from '../../scoring/class/sheet-text.ts';
import { drawingOf, tag, textAt } from '../../scoring/draw/svg.ts';
import {
  type AttemptPaper,
  type AttemptRecording,
  attemptHtml,
  attemptPaper,
  checkRecording,
  InputError,
  lineVerdicts,
  profileNamed,
  profileSchema,
  readRecording,
  recordingSchema,
  resultSchema,
  scoreAttempt,
} from '../../scoring/index.ts';
import { run } from '../../scoring/node/cli/run.ts';
import { Screen } from '../../scoring/node/cli/screen.ts';
import { attemptPdf, classHtml, classPdf, classSheet, type Scored, scoreBytes } from '../../scoring/node/index.ts';
import { classPaper } from '../../scoring/papers/class-paper.ts';
import { clean, cleanJson } from '../../scoring/schema/clean.ts';
import { reportLines } from '../../scoring/words/result.ts';
import { byMouse, weld } from '../scoring/welds.ts';
import type { Attack, Try } from './attack.ts';
import { hostile, poisoned, WHOLE_TEXTS } from './hostile.ts';
import { readPage, readPdf, readTable, readTerminal, steeringIn, xmlFault } from './readers.ts';

/** Tags that the papers are set with. */
const TAGS = new Set(
  'html head meta title style body main header section div figure figcaption h1 h2 h3 p b small ul li table thead tbody tr th td span svg g path line rect circle text tspan title defs pattern clippath clipPath style'.split(
    ' ',
  ),
);

let base: { recording: AttemptRecording; paper: AttemptPaper; scored: Scored } | null = null;
function made(): NonNullable<typeof base> {
  if (base !== null) return base;
  const recording = weld({ joint: { length_mm: 30 }, weave: { length_mm: 6, shelf_s: 0 }, ...byMouse(5) });
  const scored = scoreBytes(new TextEncoder().encode(JSON.stringify(recording)), 'a.json', {
    exercise: null,
    profile: null,
  });
  base = { recording, paper: attemptPaper(recording, '2026-03-14_b2_ines-calder_lap_03.json'), scored };
  return base;
}

const takes =
  (schema: { safeParse: (value: unknown) => { success: boolean } }) =>
  (value: unknown): boolean =>
    schema.safeParse(value).success;

/** Marks and joiners are left out of the comparison: a terminal puts them into the cell before. */
const seen = (text: string): string => text.replace(/[\p{M}\p{Cf}]/gu, '').trimEnd();

async function terminalFaults(what: string, lines: (screen: Screen) => void): Promise<string[]> {
  let output = '';
  const take = (text: string): void => {
    output += text;
  };
  lines(new Screen({ out: take, err: take }));
  return outputFaults(what, output);
}

async function outputFaults(what: string, output: string): Promise<string[]> {
  const faults: string[] = [];
  const { lines, did } = await readTerminal(output);
  if (did.length > 0) faults.push(`${what}: the terminal was made to ${did.join(', ')}`);
  const sent = output.split('\n').map(seen);
  sent.forEach((line, n) => {
    if (seen(lines[n] ?? '') !== line)
      faults.push(`${what}: line ${n} is shown as ${JSON.stringify(lines[n])}, was ${JSON.stringify(line)}`);
    if (/^\s*FORGED/.test(lines[n] ?? '')) faults.push(`${what}: a forged line, ${lines[n]}`);
  });
  const steers = steeringIn(output.replaceAll('\n', ''));
  if (steers !== null) faults.push(`${what}: U+${steers}`);
  return faults;
}

function tableFaults(what: string, text: string, rows: number): string[] {
  const faults: string[] = [];
  const read = readTable(text);
  if (read.length !== rows + 1) faults.push(`${what}: ${read.length} rows for ${rows + 1}`);
  for (const cell of read.flat()) {
    const steers = steeringIn(cell);
    if (steers !== null) faults.push(`${what}: U+${steers} in a cell`);
    if (Number.isNaN(Number(cell)) && /(^|[;|])\s*[=+\-@\uff1d\uff0b\uff0d\uff20]/.test(cell))
      faults.push(`${what}: a formula, ${cell}`);
  }
  return faults;
}

function pageFaults(what: string, text: string, shows: readonly string[]): string[] {
  const { text: read, tags, active } = readPage(text);
  const steers = steeringIn(read.replaceAll('\n', ''));
  return [
    ...[...tags].filter((t) => !TAGS.has(t)).map((t) => `${what}: a ${t}`),
    ...active.map((a) => `${what}: ${a}`),
    ...(steers === null ? [] : [`${what}: U+${steers}`]),
    ...shows.filter((s) => !read.includes(clean(s))).map((s) => `${what}: does not show ${JSON.stringify(s)}`),
  ];
}

async function pdfFaults(what: string, bytes: Uint8Array, title: string): Promise<string[]> {
  const read = await readPdf(bytes);
  const steers = steeringIn(read.text) ?? steeringIn(read.title);
  return [
    ...read.active.map((a) => `${what}: ${a}`),
    ...(steers === null ? [] : [`${what}: U+${steers}`]),
    ...(read.title === clean(title) ? [] : [`${what}: its title is ${JSON.stringify(read.title)}`]),
  ];
}

async function ofFiles(n: number, text: (place: number) => string): Promise<Try> {
  const { recording, scored } = made();
  const file = poisoned(recording, (r) => takes(recordingSchema)(r), text);
  const profile = poisoned(profileNamed('aws-d11-static-si')!, takes(profileSchema), text);
  const name = `${hostile(n).replaceAll('/', '')}.json`;
  const welded =
    n % 4 === 0 ? scoreAttempt(checkRecording(file.value, name), { profile: profile.value }) : scored.result;
  const result = poisoned(welded, takes(resultSchema), text);
  const row: Scored = { ...scored, file: name, result: result.value };
  const named = poisoned(
    { ...row, file: `2026-03-14_b1_${hostile(n).replaceAll(/[/_]/g, '')}_lap_1.json` },
    takes(scoredSchema),
    text,
  );
  const bad = [{ file: name, reason: refusalOf(name, hostile(n)) }];
  const counted = new Set([scored.exercise!]);
  const sheet = classSheet(
    { scored: [row, named.value, { ...scored, hand: '0'.repeat(64) }], bad, folders: [hostile(n)] },
    counted,
  );
  const paper = classPaper(sheet, (of) => {
    throw new InputError(of, [{ path: text(1), found: text(2), allowed: text(3) }]);
  });
  return {
    inputs: file.places + profile.places + result.places + named.places + 3,
    faults: [
      ...(await terminalFaults('sentences', (screen) => screen.say(...reportLines(result.value, 'tee')))),
      ...(await terminalFaults('result as JSON', (screen) => screen.json(result.value))),
      ...(await terminalFaults('class sheet', (screen) => screen.say(...sheetLines(sheet)))),
      ...(await terminalFaults('refusal', (screen) => screen.warn(...bad[0]!.reason.split('\n')))),
      ...(cleanJson(file.value) !== '' &&
      JSON.stringify(JSON.parse(cleanJson(file.value))) === JSON.stringify(file.value)
        ? []
        : ['JSON does not read back as what was written']),
      ...tableFaults('rows', rowsCsv([row, named.value]), 2),
      ...tableFaults('class table', sheetCsv(sheet), sheet.rows.length),
      ...rowsJsonl([row])
        .trimEnd()
        .split('\n')
        .flatMap((line) => (steeringIn(line) === null ? [] : ['rows as JSON steer'])),
      ...pageFaults('class page', classHtml(paper), [sheet.bad[0]!.reason]),
      ...(n % 3 === 0 ? await pdfFaults('class PDF', await classPdf(paper), paper.title) : []),
    ],
  };
}

/** What is said of a file whose every field is hostile. */
function refusalOf(file: string, text: string): string {
  try {
    readRecording(
      JSON.stringify({ format: 'toehold-recording', version: 2, [text]: text, engine: text, poses: { [text]: 1 } }),
      file,
    );
    return 'taken';
  } catch (error) {
    return (error as Error).message;
  }
}

async function ofPapers(n: number, text: (place: number) => string): Promise<Try> {
  const { svg, strip, standing } = {
    svg: made().paper.cut.svg,
    strip: made().paper.strip,
    standing: made().paper.lines[0]?.standing,
  };
  const drawings = new Set<unknown>([svg, strip, standing, ...made().paper.smallCuts.map((c) => c.svg)]);
  const { value, places } = poisoned(made().paper, (p) => keepsItsKind(p as AttemptPaper, drawings), text);
  const drawing = drawingOf(
    40,
    40,
    text(1),
    textAt({ x: 1, y: 1 }, text(2), { class: text(3) }) + tag('rect', { id: text(4) }),
  );
  const drawn = readPage(drawing);
  const fault = xmlFault(drawing);
  return {
    inputs: places + 4,
    faults: [
      ...pageFaults('report', attemptHtml(value), [value.title, value.settings]),
      ...(n % 3 === 1
        ? await pdfFaults('report as PDF', await attemptPdf(value), `${value.file}: ${value.verdict}`)
        : []),
      ...pageFaults('drawing', drawing, [text(2)]),
      ...(fault === null && drawn.tags.size === 6 ? [] : [`drawing: ${fault ?? [...drawn.tags].join(' ')}`]),
    ],
  };
}

const isVerdict: ReadonlySet<string> = new Set(lineVerdicts);

/** Drawings are the one kind of markup a paper is handed; everything else in it but its codes is text. */
function keepsItsKind(paper: AttemptPaper, drawings: ReadonlySet<unknown>): boolean {
  return (
    // Codes, not texts: words are found by them.
    paper.language === made().paper.language &&
    paper.verdict === made().paper.verdict &&
    paper.lines.every((l) => isVerdict.has(l.verdict)) &&
    drawings.has(paper.cut.svg) &&
    drawings.has(paper.strip) &&
    paper.smallCuts.every((c) => drawings.has(c.svg)) &&
    paper.lines.every((l) => drawings.has(l.standing) || l.standing.startsWith('<svg'))
  );
}

async function ofCommandLine(n: number): Promise<Try> {
  const commands = [
    ['score', hostile(n)],
    [hostile(n)],
    ['report', 'a.json', '--out', hostile(n)],
    ['schema', hostile(n)],
    ['weave', '--volts', hostile(n)],
  ];
  const faults: string[] = [];
  for (const args of commands) {
    let output = '';
    const take = (text: string): void => {
      output += text;
    };
    if (args.some((a) => a.includes('\u0000'))) continue;
    const code = await run(args, { out: take, err: take });
    if (code !== 2) faults.push(`${args[0]} took it`);
    // commander says what was typed on a line of its own; a line end typed there is the typist's.
    faults.push(
      ...(await outputFaults('command line', output)).filter(
        (f) => !hostile(n).includes('\n') || !f.includes('forged'),
      ),
    );
  }
  return { inputs: commands.length, faults };
}

/** Every text of every format made hostile, and each output read back by somebody else's reader. */
export const hostileText: Attack = {
  name: 'hostile text',
  says: 'control, bidi, formula, markup and line-end texts in every string of recording, exercise, profile, result, paper, file name and argument; terminal, tables, pages, drawings and PDF read back by other readers',
  share: 2,
  whole: WHOLE_TEXTS + 30,
  tries: async (n) => {
    const text = (place: number): string => hostile((n + place) % (2 * WHOLE_TEXTS));
    const parts = [await ofFiles(n, text), await ofPapers(n, text), await ofCommandLine(n)];
    return { inputs: parts.reduce((sum, p) => sum + p.inputs, 0), faults: parts.flatMap((p) => p.faults) };
  },
};
