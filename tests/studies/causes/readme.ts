/** The confusion of causes, as a page. */
import type { Row } from './study.ts';

export interface Half {
  title: string;
  rows: readonly Row[];
}

const share = (n: number, of: number): string => `${n} of ${of} (${((100 * n) / Math.max(1, of)).toFixed(0)} %)`;

export function causesPage(halves: readonly Half[]): string {
  return `# First sentence against true cause

Written by \`npm run causes\`. Each attempt is a demonstration of a ready exercise (tee, thin tee, lap) done by a hand with a little tremor and one thing
wrong, or two; it is welded, judged, and the first sentence is held against what was done. Advice was made on one half; the other was written
first, kept apart, and run once the rules stood. *Open*: the sentence says what was seen and leaves the cause open. *Wrong*: it names another cause, or
says "same again".

The hands are robots and their faults are clean and plain to see beside the demonstration: this shows that the first sentence finds what was done to a
hand that is otherwise as asked. It says nothing of how often it is right with people, who are off in several ways at once.

| half | attempts | right | right among two offered | open | wrong |
|---|---|---|---|---|---|
${halves.map(summary).join('\n')}
${halves.map(table).join('')}`;
}

function summary({ title, rows }: Half): string {
  const count = (grade: Row['grade']): string => share(rows.filter((r) => r.grade === grade).length, rows.length);
  return `| ${title} | ${rows.length} | ${count('right')} | ${count('right among two')} | ${count('open')} | ${count('wrong')} |`;
}

function table({ title, rows }: Half): string {
  const truths = [...new Set(rows.map((r) => r.truth.join(' + ')))].sort();
  const lines = truths.map((truth) => {
    const own = rows.filter((r) => r.truth.join(' + ') === truth);
    const said = [...new Set(own.map((r) => r.code ?? 'nothing'))].map((code) => {
      const of = own.filter((r) => (r.code ?? 'nothing') === code);
      return `${code} ${of.length}${of.some((r) => r.grade === 'wrong') ? ' (wrong)' : ''}`;
    });
    return `| ${truth} | ${own.length} | ${said.join(', ')} |`;
  });
  return `\n## ${title}\n\n| true cause | attempts | first sentence |\n|---|---|---|\n${lines.join('\n')}\n`;
}
