import type { FileKind, ProofFault } from '../../scoring/index.ts';
import { oneDecimal, whole } from './numbers.ts';

const files = (n: number): string => (n === 1 ? '1 file' : `${whole(n)} files`);

/** What a file is, and what can be done with it. */
const KINDS: Record<Exclude<FileKind, 'recording' | 'exercise' | 'json' | 'empty'>, string> = {
  profile:
    'an acceptance profile: it says what is judged by which limit. The command line judges a class by it (--profile)',
  coupon:
    'the marks of a real coupon. Open it under “a real coupon” beside a cut, or drop it on the page under its own name (.coupon.json)',
  result: 'a result: what was read off an attempt. Open the attempt’s own file to see the bead',
  logbook: 'a logbook: the attempts of a whole shelf. Take it in under Attempts',
  damaged: 'a kept attempt that was damaged, as this browser saved it. It cannot be welded again',
  table: 'a table. If it is a roster, open it at the desk under Trainees',
  page: 'a page or a drawing. Any browser shows it in a window of its own',
  other: 'no file of the bench’s',
};

/** Words of the instructor's desk. */
export const desk = {
  open: 'Desk',
  title: 'Instructor’s desk',
  close: 'Back to the bench',
  onBench: (title: string) => `what is on the bench (${title})`,
  tabs: { class: 'Class', exercise: 'Exercise', trainees: 'Trainees' },

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
    counted: (own: readonly string[]) =>
      `Counted are attempts at the exercises that come with Toehold${own.length === 0 ? '' : ` and at ${own.join(', ')}`}; others are practice. An exercise file (.exercise.json) chosen with them counts too.`,
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

  editor: {
    teach: 'Make an exercise from another one: change what should be otherwise, let robot hands prove it, hand it out.',
    from: 'Begin from',
    groups: {
      words: 'Words',
      joint: 'Joint',
      asked: 'Size asked for',
      machine: 'Machine',
      weave: 'Weave',
      judged: 'Judged',
      guides: 'Guides the trainee may use',
    },
    fields: {
      name: 'name, as in file names',
      title: 'title',
      story: 'the job',
      teaches: 'what it teaches',
      'joint.kind': 'joint',
      'joint.plateA_mm': 'right or back plate, mm',
      'joint.plateB_mm': 'left or edge plate, mm',
      'joint.plateWidth_mm': 'plates wide, mm',
      'joint.length_mm': 'joint long, mm',
      'joint.gap_mm': 'gap, mm',
      'joint.startTemp_C': 'plates at, °C',
      'joint.tabs': 'run-on and run-off tabs',
      'asked.kind': 'leg or throat',
      'asked.size_mm': 'size, mm',
      'asked.atMost_mm': 'at most, mm (empty: as the profile says)',
      'asked.edgeBack_mm': 'lap: edge melted back at most, mm (empty: any)',
      settings: 'settings',
      'process.wire_mm': 'wire, mm',
      'process.feed_mpmin': 'wire feed speed, m/min',
      'process.volts_V': 'volts',
      'process.gas': 'shielding gas',
      'process.tip_mm': 'tip, mm out of the nozzle',
      'process.nozzle_mm': 'nozzle, mm',
      'demonstration.pattern': 'pattern',
      'demonstration.cyclesPerSecond': 'beat, cycles a second',
      'demonstration.width_mm': 'width, mm',
      'demonstration.travel_mmps': 'travel, mm/s',
      'demonstration.pauseB_s': 'pause left or edge, s',
      'demonstration.pauseA_s': 'pause right or back, s',
      'demonstration.apex_mm': 'reach ahead, mm',
      'demonstration.firstToe': 'first toe',
      'demonstration.tipToWork_mm': 'tip-to-work, mm',
      'demonstration.workAngle_deg': 'work angle, °',
      'demonstration.travelAngle_deg': 'travel angle, ° push',
      'demonstration.shelf_s': 'shelf, s',
      'judged.from_mm': 'from, mm',
      'judged.to_mm': 'to, mm',
      cuts_mm: 'cuts fixed beforehand, mm',
      profile: 'acceptance profile',
      'aids.pacer': 'pacer',
      'aids.beat': 'beat',
      'aids.toeMarks': 'toe marks',
      'aids.handRig': 'hand rig',
    },
    choices: {
      fixed: 'as given',
      'own process': 'set by ear',
      A: 'right or back',
      B: 'left or edge',
      leg: 'leg',
      throat: 'throat',
    } as Record<string, string>,
    wrong: (found: string, allowed: string) => `found ${found}, allowed: ${allowed}`,
    count: (n: number) => (n === 0 ? 'An exercise.' : n === 1 ? 'One thing to mend.' : `${whole(n)} things to mend.`),
    test: 'No guide is allowed: this is a test.',
    tryIt: 'Put it on the bench',
    save: 'Save as a file',
    link: 'Link',
    linkTitle:
      'Opens this exercise in any copy of the bench at this address. Nothing is sent: the exercise stands in the link.',
    linkLong: 'Too long for a link; save it as a file.',
    print: 'Print the sheet',
    prove: 'Prove it with robot hands',
    proving: (done: number, of: number) => `Robot hands are welding it: ${whole(done)} of ${whole(of)} …`,
    stopped: 'Stopped.',
    proof: {
      title: 'Proved by robot hands',
      good: (within: number, of: number, least: number | null) =>
        within === of
          ? `All ${whole(of)} good hands are within${least === null ? '' : `, the narrowest by ${oneDecimal(least)} × its plus-minus`}.`
          : `Only ${whole(within)} of ${whole(of)} good hands are within: what is asked cannot be done, or only just.`,
      faults: (told: number, of: number) =>
        `${whole(told)} of ${whole(of)} named faults fall outside or get no verdict.`,
      close: (names: readonly string[]) => `Too close to call: ${names.join(', ')}.`,
      missed: (names: readonly string[]) => `Within all the same: ${names.join(', ')}.`,
      tolerates: (amount: number | null) =>
        amount === null
          ? 'It tolerates no hand at all as tried here.'
          : `It tolerates a hand with ${whole(100 * amount)} % of a beginner’s failings.`,
      head: ['hand', 'verdict', 'nearest line', 'what would be said first'],
      nearest: (name: string, by: number) =>
        `${name}, ${by < 0 ? `${oneDecimal(-by)} × its plus-minus outside` : `${oneDecimal(by)} × its plus-minus inside`}`,
      good1: 'good hand, no failing',
      amount: (amount: number, seed: number) =>
        `hand with ${whole(100 * amount)} % of a beginner’s failings, no. ${whole(seed)}`,
      model:
        'Of the model’s beads, by hands that do one thing otherwise: it says whether the exercise asks for what it should, not what your trainees will do.',
    },
    faults: {
      'arc-back': 'arc 3 mm back in the puddle at the root',
      'tip-far': 'tip 8 mm too far',
      'no-pause-right': 'no pause at the right (back) toe',
      'no-pause-left': 'no pause at the left (edge) toe',
      narrow: 'weave half as wide',
      wide: 'weave far too wide',
      fast: 'climbs half as fast again',
      slow: 'climbs half as fast',
      'to-one-side': '2 mm to one side',
      uneven: 'uneven beat',
      'stopped-early': 'stopped half way',
      'straight-instead': 'straight run instead of the weave',
    } satisfies Record<ProofFault, string>,
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

  problems: {
    otherKind: (file: string, kind: FileKind): string =>
      `${file} is ${kind in KINDS ? KINDS[kind as keyof typeof KINDS] : KINDS.other}. Opened here are attempts and exercises saved by the bench.`,
    spoiltLink:
      'The link carries an exercise that cannot be read: it was cut off or changed on its way. Ask for it as a file.',
  },
};
