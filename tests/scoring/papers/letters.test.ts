/** Names in any writing on a PDF: set in a typeface that has their letters, from the right where they are read so, or numbered and said. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { inflateSync } from 'node:zlib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { classPaperWith, classSheet, loadLanguage } from '../../../scoring/index.ts';
import { classPdf } from '../../../scoring/node/index.ts';
import { LETTERS_FILE, Lettering, typefaceOf } from '../../../scoring/papers/letters.ts';
import { clean } from '../../../scoring/schema/clean.ts';

const FILES = {
  papers: ['pdfmake/fonts/Roboto/Roboto-Regular.ttf', 'pdfmake/fonts/Roboto/Roboto-Medium.ttf'],
  hebrew: [LETTERS_FILE.hebrew],
  arabic: [LETTERS_FILE.arabic],
};

/** Code points a typeface's file has glyphs for: its `cmap` table, formats 4 and 12 (OpenType specification; WOFF 1.0, W3C 2012). */
function codesOf(name: string): Set<number> {
  const file = readFileSync(createRequire(import.meta.url).resolve(name));
  const woff = file.toString('latin1', 0, 4) === 'wOFF';
  const [count, first, size] = woff ? [file.readUInt16BE(12), 44, 20] : [file.readUInt16BE(4), 12, 16];
  const entry = Array.from({ length: count }, (_, i) => first + size * i).find(
    (at) => file.toString('latin1', at, at + 4) === 'cmap',
  )!;
  const from = file.readUInt32BE(entry + (woff ? 4 : 8));
  const packed = file.subarray(from, from + file.readUInt32BE(entry + (woff ? 8 : 12)));
  const table = woff && packed.length < file.readUInt32BE(entry + 12) ? inflateSync(packed) : packed;
  const codes = new Set<number>();
  for (let i = 0; i < table.readUInt16BE(2); i++) {
    const at = table.readUInt32BE(8 + 8 * i);
    const format = table.readUInt16BE(at);
    if (format === 12)
      for (let g = 0; g < table.readUInt32BE(at + 12); g++)
        for (let c = table.readUInt32BE(at + 16 + 12 * g); c <= table.readUInt32BE(at + 20 + 12 * g); c++) codes.add(c);
    if (format === 4) {
      const n = table.readUInt16BE(at + 6) / 2;
      for (let s = 0; s < n; s++)
        for (let c = table.readUInt16BE(at + 16 + 2 * (n + s)); c <= table.readUInt16BE(at + 14 + 2 * s); c++)
          codes.add(c);
    }
  }
  return codes;
}

const runs = (text: string): string[] => {
  const set = new Lettering().set(clean(text));
  return typeof set === 'string' ? [set] : set.map((run) => run.text);
};

describe('letters and their typefaces', () => {
  it('no typeface is said to have a letter that its file does not have', () => {
    for (const [face, names] of Object.entries(FILES))
      for (const codes of names.map(codesOf)) {
        const said = Array.from({ length: 0x10000 }, (_, c) => c).filter((c) => typefaceOf(c) === face);
        expect(said.length).toBeGreaterThan(80);
        expect(said.filter((c) => !codes.has(c))).toEqual([]);
      }
  });

  it('stand from left to right as they are seen (orders after Unicode Standard Annex 9)', () => {
    expect(runs('Inés Łucja Őz Лев Άννα')).toEqual(['Inés Łucja Őz Лев Άννα']);
    expect(runs('Zoe\u0308')).toEqual(['Zoë']);
    // Two words read from the right are one piece: what sets it turns it round.
    expect(runs('שרה לוי')).toEqual(['לוי', '\u00a0', 'שרה']);
    expect(runs('1. שרה, b2')).toEqual(['1. ', 'שרה', ', b2']);
    // A number keeps its own direction and stands left of the word it follows; brackets are mirrored.
    expect(runs('שרה 17')).toEqual(['17\u00a0', 'שרה']);
    expect(runs('שרה (לוי)')).toEqual(expect.arrayContaining(['לוי', 'שרה']));
    expect(runs('שרה (לוי) b').join('|')).toBe('(|לוי|)\u00a0|שרה| b');
    expect(runs('محمد علي')).toHaveLength(3);
    // A non-joiner parts what stands about it; a joiner is not seen.
    expect(runs('می\u200cخواهم')).toEqual(['خواهم', 'می']);
    expect(runs('ب\u200dن')).toEqual(['بن']);
  });

  it('that no typeface has are numbered, the same ones alike, and listed by code point', () => {
    const lettering = new Lettering();
    expect(lettering.set(clean('山田 太郎'))).toBe('[1] [2]');
    expect(lettering.set(clean('b_山田.json'))).toBe('b_[1].json');
    expect(lettering.set(clean('Bo 👩‍🏭 Lind'))).toBe('Bo [3] Lind');
    expect(lettering.list()).toBe('[1] U+5C71 U+7530, [2] U+592A U+90CE, [3] U+1F469 U+200D U+1F3ED');
    expect(lettering.needed.size).toBe(0);
  });
});

/** A class sheet on which some files could not be read. */
function pdfNaming(names: readonly string[], language: 'en' | 'de' = 'en'): Promise<Uint8Array> {
  const bad = names.map((name) => ({ file: name, reason: `${name}: found nothing` }));
  return classPdf(classPaperWith(classSheet({ scored: [], bad }), [], language));
}

interface Placed {
  text: string;
  x: number;
  y: number;
}

async function placed(pdf: Uint8Array): Promise<Placed[]> {
  const task = getDocument({ data: pdf.slice(), verbosity: 0 });
  const { items } = await (await (await task.promise).getPage(1)).getTextContent();
  const out = items.flatMap((i) =>
    'str' in i ? [{ text: i.str, x: i.transform[4] as number, y: i.transform[5] as number }] : [],
  );
  await task.destroy();
  return out;
}

describe('a PDF with names in other writing', () => {
  it('gives every Arabic letter back as it was written, joined on either side and alone', async () => {
    const letters = Array.from({ length: 0x6d4 - 0x620 }, (_, i) => String.fromCodePoint(0x620 + i)).filter(
      (c) => typefaceOf(c.codePointAt(0)!) === 'arabic' && /\p{L}/u.test(c),
    );
    expect(letters.length).toBeGreaterThan(140);
    const pdf = await pdfNaming(
      Array.from({ length: Math.ceil(letters.length / 10) }, (_, i) =>
        letters
          .slice(10 * i, 10 * i + 10)
          .map((c) => `م${c}م ${c}`)
          .join(' '),
      ),
    );
    const whole = (await placed(pdf)).map((i) => i.text).join('');
    expect(whole).not.toMatch(/[\p{Cc}\p{Co}\p{Cn}\ufffd]/u);
    for (const c of letters) expect(whole.split(c).length, `U+${c.codePointAt(0)!.toString(16)}`).toBeGreaterThan(2);
  }, 20_000);

  it('sets Hebrew and Arabic from the right, each with its own letters, and the same bytes each time', async () => {
    const names = ['שרה לוי', 'محمد علي'];
    const pdf = await pdfNaming(names);
    expect(Buffer.from(pdf).equals(Buffer.from(await pdfNaming(names)))).toBe(true);
    const items = await placed(pdf);
    const whole = items.map((i) => i.text).join('');
    for (const word of ['שרה', 'לוי'])
      expect(whole.includes(word) || whole.includes([...word].reverse().join(''))).toBe(true);
    const at = (word: string): number =>
      items.find((i) => i.text.includes(word) || i.text.includes([...word].reverse().join('')))!.x;
    expect(at('שרה')).toBeGreaterThan(at('לוי'));
    const text = Buffer.from(pdf).toString('latin1');
    expect(text).toMatch(/NotoSansHebrew/);
    expect(text).toMatch(/IBMPlexSansArabic/);
  }, 20_000);

  it('fetches no typeface that is not needed, and says what it cannot show', async () => {
    const plain = Buffer.from(await pdfNaming(['Ines Calder'])).toString('latin1');
    expect(plain).not.toMatch(/NotoSans/);
    const english = (await placed(await pdfNaming(['山田']))).map((i) => i.text).join('');
    expect(english).toContain('[1]: found nothing');
    expect(english).toContain('letters that the typeface of this PDF does not have ([1] U+5C71 U+7530)');
    await loadLanguage('de');
    const german = (await placed(await pdfNaming(['山田'], 'de'))).map((i) => i.text).join('');
    expect(german).toContain('Zeichen, die die Schrift dieses PDF nicht hat');
  }, 20_000);
});
