/** Other people's readers: what a terminal, a spreadsheet, a browser and a PDF viewer make of what was written. */
import { createRequire } from 'node:module';
import { parse as parseTable } from 'csv-parse/sync';
import { XMLValidator } from 'fast-xml-parser';
import { type DefaultTreeAdapterMap, parse as parsePage } from 'parse5';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

// CommonJS, whose default export test runner and script loader hand over differently.
const { Terminal } = createRequire(import.meta.url)('@xterm/headless') as typeof import('@xterm/headless');

type Node = DefaultTreeAdapterMap['node'];

/** Code points that steer or are not seen, from the Unicode charts by number, so that it is another list than the program's. */
const STEERS: readonly [number, number][] = [
  [0x00, 0x1f],
  [0x7f, 0x9f],
  [0x061c, 0x061c],
  [0x200b, 0x200b],
  [0x200e, 0x200f],
  [0x2028, 0x202e],
  [0x2066, 0x2069],
  [0xfeff, 0xfeff],
  [0xfff9, 0xfffb],
  [0xfffe, 0xffff],
  [0xd800, 0xdfff],
  [0xe0000, 0xe007f],
];

/** The first code point of a text that steers, as hexadecimal; null where none does. */
export function steeringIn(text: string): string | null {
  for (const c of text) {
    const code = c.codePointAt(0)!;
    if (STEERS.some(([from, to]) => code >= from && code <= to)) return code.toString(16);
  }
  return null;
}

/** What a terminal shows of an output, line by line, and what it was made to do besides. */
export async function readTerminal(output: string): Promise<{ lines: string[]; did: string[] }> {
  const count = output.split('\n').length;
  const screen = new Terminal({
    cols: 400,
    rows: 5,
    scrollback: 20 * count + 100,
    convertEol: true,
    allowProposedApi: true,
  });
  const did: string[] = [];
  screen.onTitleChange(() => did.push('title'));
  screen.onBell(() => did.push('bell'));
  screen.onData(() => did.push('answer'));
  await new Promise<void>((done) => screen.write(output, done));
  if (screen.buffer.active.type !== 'normal') did.push('other screen');
  const lines: string[] = [];
  for (let y = 0; y < screen.buffer.normal.length; y++) {
    const line = screen.buffer.normal.getLine(y)!;
    const text = line.translateToString(true);
    if (line.isWrapped) lines.push(lines.pop() + text);
    else lines.push(text);
  }
  screen.dispose();
  return { lines, did };
}

/** Rows of cells; throws where rows have different lengths or quotes do not match. */
export function readTable(text: string): string[][] {
  return parseTable(text, { bom: true, relax_column_count: false });
}

export interface Page {
  text: string;
  tags: Set<string>;
  /** Attributes that load, lead or run something. */
  active: string[];
}

/** A page as a browser builds it. */
export function readPage(text: string): Page {
  const page: Page = { text: '', tags: new Set(), active: [] };
  const visit = (node: Node): void => {
    if ('value' in node) page.text += node.value;
    if ('tagName' in node) {
      page.tags.add(node.tagName);
      for (const { name, value } of node.attrs) {
        if (/^(on|href|src|action|formaction|data|xlink)/.test(name) || /^\s*javascript:/i.test(value))
          page.active.push(`${name}=${value}`);
      }
    }
    if ('childNodes' in node && !('tagName' in node && node.tagName === 'style')) node.childNodes.forEach(visit);
  };
  visit(parsePage(text));
  return page;
}

/** Why a text is no well-formed XML; null where it is. */
export function xmlFault(text: string): string | null {
  const answer = XMLValidator.validate(text);
  return answer === true ? null : answer.err.msg;
}

export interface PdfRead {
  title: string;
  text: string;
  /** Links, scripts, forms and files in it. */
  active: string[];
}

/** A PDF as a viewer reads it. */
export async function readPdf(bytes: Uint8Array): Promise<PdfRead> {
  const fonts = createRequire(import.meta.url)
    .resolve('pdfjs-dist/package.json')
    .replace('package.json', 'standard_fonts/');
  const task = getDocument({ data: bytes.slice(), isEvalSupported: false, verbosity: 0, standardFontDataUrl: fonts });
  const pdf = await task.promise;
  const read: PdfRead = { title: '', text: '', active: [] };
  const { info } = await pdf.getMetadata();
  read.title = String((info as { Title?: unknown }).Title ?? '');
  if ((await pdf.getJSActions()) !== null) read.active.push('script');
  if ((await pdf.getAttachments()) !== null) read.active.push('attachment');
  if ((await pdf.getOpenAction()) !== null) read.active.push('open action');
  for (let n = 1; n <= pdf.numPages; n++) {
    const page = await pdf.getPage(n);
    for (const { subtype } of await page.getAnnotations()) read.active.push(String(subtype));
    const { items } = await page.getTextContent();
    read.text += items.map((item) => ('str' in item ? item.str : '')).join(' ');
  }
  await task.destroy();
  return read;
}
