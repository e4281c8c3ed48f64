import { signal } from '@preact/signals';
import { useState } from 'preact/hooks';
import {
  type ClassSheet,
  classWordsIn,
  type Entry,
  faultSaid,
  TABLE_HEAD,
  type TraineeRow,
  tableCells,
  weeksOf,
} from '../../../scoring/index.ts';
import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { trimmed } from '../../locale/numbers.ts';
import { finished, language } from '../../page.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { fileSaid, nameSaid } from './names.ts';
import { TrendLine } from './trend-line.tsx';

const w = words.desk.class;

type Column = (typeof TABLE_HEAD)[number];

/** What a column is sorted by: a number where it has one, so that 9 stands before 10. Rows without come last. */
const NUMBERS: Partial<Record<Column, (row: TraineeRow) => number | null>> = {
  attempts: (row) => row.attempts.length,
  within: (row) => row.within,
  first: (row) => row.first.scored.result.score,
  latest: (row) => row.latest.scored.result.score,
  'median of last 5': (row) => row.median,
  spread: (row) => (row.spread === null ? null : row.spread.to - row.spread.from),
};

interface Props {
  session: Session;
  sheet: ClassSheet;
  close: () => void;
}

/** One row a trainee, exercise and device, as on the printed sheet; a row opens into its attempts. */
export function ClassTable({ session, sheet, close }: Props) {
  const [by, setBy] = useState<{ column: Column; down: boolean }>({ column: 'trainee', down: false });
  const [having, setHaving] = useState('');
  const [open, setOpen] = useState<string | null>(null);
  if (sheet.rows.length === 0) return null;
  const shown = sorted(sheet.rows, by).filter((row) => has(row, sheet, having));
  return (
    <section class="class-table">
      <label class="filter">
        {w.filter}{' '}
        <input
          value={having}
          placeholder={w.filterHint}
          size={28}
          onInput={(event) => setHaving(event.currentTarget.value)}
        />
      </label>
      <div class="scroll">
        <table>
          <thead>
            <tr>
              {TABLE_HEAD.map((column) => (
                <th
                  key={column}
                  scope="col"
                  aria-sort={by.column !== column ? 'none' : by.down ? 'descending' : 'ascending'}
                >
                  <button
                    type="button"
                    title={w.sortBy(column)}
                    onClick={() => setBy({ column, down: by.column === column && !by.down })}
                  >
                    {classWordsIn(language.value).head[column]}
                    {by.column === column && (by.down ? ' ↓' : ' ↑')}
                  </button>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => {
              const key = JSON.stringify([row.trainee, row.exercise, row.device]);
              const isOpen = open === key;
              return [
                <tr key={key} class={isOpen ? 'opened' : ''}>
                  <th scope="row">
                    <button type="button" aria-expanded={isOpen} onClick={() => setOpen(isOpen ? null : key)}>
                      <bdi>{nameSaid(sheet, row.trainee)}</bdi>
                    </button>
                  </th>
                  {tableCells(row, language.value)
                    .slice(1)
                    .map((cell, i) => (
                      <td key={TABLE_HEAD[i + 1]}>{cell}</td>
                    ))}
                </tr>,
                isOpen && (
                  <tr key={`${key} attempts`} class="attempts">
                    <td colSpan={TABLE_HEAD.length}>
                      <Attempts session={session} sheet={sheet} row={row} close={close} />
                    </td>
                  </tr>
                ),
              ];
            })}
          </tbody>
        </table>
      </div>
      {shown.length === 0 && <p>{w.noMatch}</p>}
      <Picked session={session} close={close} />
    </section>
  );
}

function Attempts({
  session,
  sheet,
  row,
  close,
}: {
  session: Session;
  sheet: ClassSheet;
  row: TraineeRow;
  close: () => void;
}) {
  const onBench = finished.value !== null;
  return (
    <>
      <TrendLine row={row} />
      <Weeks row={row} />
      <ul aria-label={w.attemptsOf(nameSaid(sheet, row.trainee))}>
        {row.attempts.map((entry) => (
          <li key={entry.file}>
            <input
              type="checkbox"
              aria-label={w.pick(fileSaid(entry.file))}
              checked={picked.value.includes(entry.file)}
              onChange={(event) => pick(entry.file, event.currentTarget.checked)}
            />
            <span class="file">
              <bdi>{fileSaid(entry.file)}</bdi>
            </span>
            <VerdictMark verdict={entry.scored.result.verdict} />
            <span class="unit">{faultOf(entry)}</span>
            <button
              type="button"
              class="link"
              onClick={() => {
                void session.desk.openOfClass(entry.file, null);
                close();
              }}
            >
              {w.open}
            </button>
            <button
              type="button"
              class="link"
              disabled={!onBench}
              title={onBench ? '' : w.besideFirst}
              onClick={() => {
                void session.desk.besideOfClass(entry.file);
                close();
              }}
            >
              {w.beside}
            </button>
            {(['result', 'cut'] as const).map((what) => (
              <button
                key={what}
                type="button"
                class="link"
                title={w.saveOf[what].long}
                onClick={() => void session.desk.saveOfClass(entry, what)}
              >
                {w.saveOf[what].short}
              </button>
            ))}
          </li>
        ))}
      </ul>
    </>
  );
}

/** Attempts picked to be seen side by side, at most two: of anybody, at anything. */
const picked = signal<readonly string[]>([]);

function pick(file: string, on: boolean): void {
  const others = picked.value.filter((name) => name !== file);
  picked.value = on ? [...others, file].slice(-2) : others;
}

function Picked({ session, close }: { session: Session; close: () => void }) {
  const [first, second] = picked.value;
  if (first === undefined) return null;
  return (
    <p class="picked" role="status">
      {w.picked(picked.value.length)}{' '}
      {second !== undefined && (
        <button
          type="button"
          class="strong"
          onClick={() => {
            picked.value = [];
            void session.desk.openBoth(first, second);
            close();
          }}
        >
          {w.both}
        </button>
      )}{' '}
      <button
        type="button"
        class="link"
        onClick={() => {
          picked.value = [];
        }}
      >
        {w.unpick}
      </button>
    </p>
  );
}

/** How a row changed over the weeks, where it has more than one. */
function Weeks({ row }: { row: TraineeRow }) {
  const weeks = weeksOf(row);
  if (weeks.length < 2) return null;
  return (
    <p class="unit">
      {w.weeks}:{' '}
      {weeks
        .map(({ monday, median, within, attempts }) =>
          w.week(monday, median === null ? '–' : trimmed(median, 1), within, attempts),
        )
        .join('; ')}
      .
    </p>
  );
}

function faultOf(entry: Entry): string {
  return entry.fault === null ? '' : faultSaid(entry.fault.code, language.value);
}

function sorted(rows: readonly TraineeRow[], { column, down }: { column: Column; down: boolean }): TraineeRow[] {
  const number = NUMBERS[column];
  const at = TABLE_HEAD.indexOf(column);
  const sign = down ? -1 : 1;
  return [...rows].sort((a, b) => {
    if (number === undefined)
      return sign * tableCells(a, language.value)[at]!.localeCompare(tableCells(b, language.value)[at]!);
    const [x, y] = [number(a), number(b)];
    if (x === null || y === null) return Number(x === null) - Number(y === null);
    return sign * (x - y);
  });
}

/** Whether a row has all the words looked for, in any cell. A hidden name is not found. */
function has(row: TraineeRow, sheet: ClassSheet, having: string): boolean {
  const text = [nameSaid(sheet, row.trainee), ...tableCells(row, language.value).slice(1)].join(' ').toLowerCase();
  return having
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
