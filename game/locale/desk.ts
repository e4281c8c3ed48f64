import { whole } from './numbers.ts';

const files = (n: number): string => (n === 1 ? '1 file' : `${whole(n)} files`);

/** Words of the instructor's desk. */
export const desk = {
  open: 'Desk',
  title: 'Instructor’s desk',
  close: 'Back to the bench',
  tabs: { class: 'Class', trainees: 'Trainees' },

  class: {
    teach:
      'Choose the files your class has saved, all of them together, or drop them anywhere on this page. They are welded again and judged here, on this machine; nothing is sent anywhere.',
    files: 'Choose files',
    folder: 'Choose a folder',
    scoring: (done: number, total: number) => `Scored ${whole(done)} of ${files(total)} …`,
    stopped: (done: number, total: number) => `Stopped after ${whole(done)} of ${files(total)}.`,
    cutting: 'Welding the three to see first again for their cuts …',
    stop: 'Stop',
    goOn: 'Go on',
    clear: 'Put this class away',
    passedOver: (names: readonly string[]) => `No recordings by their names, passed over: ${names.join(', ')}.`,
    first: { three: 'The three to see first', fewer: 'To see first', none: 'Nobody has a fault to be seen first.' },
    sawing: 'Sawing …',
    times: (times: number, of: number, device: string) => `${whole(times)} of the last ${whole(of)}, ${device}`,
    open: 'Open',
    beside: 'Lay beside',
    besideFirst: 'Open an attempt first: another can then lie beside it.',
    openFirst: (who: string) => `Open the attempt of ${who}`,
    filter: 'Only rows with',
    filterHint: 'name, exercise, device, fault',
    sortBy: (column: string) => `Sort by ${column}`,
    attemptsOf: (who: string) => `Attempts of ${who}`,
    line: 'Trend numbers in the order they were made, 0 to 100; a gap has no verdict.',
    noMatch: 'No row has that.',
    lists: {
      notCounted: 'Kept, not counted',
      mismatched: 'Counted, though something does not fit',
      unnamed: 'No trainee’s name',
      bad: 'Could not be read',
      folders: 'Folders, not looked into',
    },
    save: 'Save as',
    print: 'Print',
    kinds: {
      html: 'class sheet, page',
      csv: 'class table, CSV',
      rows: 'attempts, CSV',
      jsonl: 'attempts, JSON lines',
    },
    hidden: (n: number) => `Trainee ${whole(n)}`,
    hiddenFile: 'name hidden',
  },

  trainees: {
    next: 'Next trainee',
    teach:
      'Name and bench are written into every attempt and into the name of its file, until the next trainee is chosen.',
    name: 'Name or number',
    bench: 'Bench',
    start: 'Start',
    now: (name: string, bench: string) => `Now at the bench: ${name}${bench === '' ? '' : `, bench ${bench}`}.`,
    nobody: 'Nobody is named: attempts are kept and saved without a name.',
    following: (name: string) => `Next on the roster: ${name}`,
    roster: 'Roster',
    rosterTeach: 'Paste names or numbers, one a line, or a table whose first line names its columns (name, bench).',
    take: 'Use this roster',
    fromFile: 'Open a roster (CSV)',
    taken: (n: number) => (n === 1 ? '1 name on the roster.' : `${whole(n)} names on the roster.`),
    forget: 'Forgetting',
    forgetTeach: 'Names stay on this machine and go nowhere by themselves.',
    forgetNames: 'Forget trainee, bench and roster',
    forgetAll: (n: number) =>
      `Forget them, and remove the ${n === 1 ? 'attempt that carries' : `${whole(n)} attempts that carry`} a name`,
    hide: 'Leave names off the screen',
    who: (name: string, bench: string) => (bench === '' ? name : `${name}, ${bench}`),
    whoTitle: 'At the bench now. Press for the next trainee.',
    hidden: 'Name hidden',
  },
};
