import type { Sending } from '../lab/join/outbox.ts';

const some = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

/** Words of a school's lab: on the bench's class bar, and on the instructors' pages. */
export const labWords = {
  join: {
    title: 'Your class',
    open: 'Join your class',
    code: 'Class code',
    name: 'Your name, as on the roster',
    pin: 'PIN, if your instructor gave you one',
    join: 'Join',
    cancel: 'Cancel',
    leave: 'Leave',
    kept: 'On a shared computer leave the class when you go. What has not been sent by then waits here and goes when you join again.',
    noAnswer: 'The lab does not answer. You can weld on; what is to be handed in waits here.',
    handedOut: 'Handed out:',
    choose: 'choose an exercise',
    nothing: 'nothing yet',
    notHandedIn: 'What you weld now is for yourself.',
    handsIn: (most: number | null): string =>
      most === null
        ? 'Every attempt you end is handed in.'
        : `Every attempt you end is handed in; the first ${most === 1 ? 'one counts' : `${most} count`}.`,
    state: (sending: Sending, waiting: number): string => {
      if (sending === 'not kept') return 'This browser could not keep the attempt: save it as a file.';
      if (waiting === 0) return '';
      const n = some(waiting, 'attempt waits', 'attempts wait');
      if (sending === 'sending') return 'Sending …';
      if (sending === 'join again') return `${n}: join again to send.`;
      return `${n} for the lab to answer.`;
    },
    arrived: (all: number, scored: number): string =>
      all === 0 ? '' : `${some(all, 'attempt has', 'attempts have')} arrived, ${scored} scored.`,
    others: (n: number, names: readonly string[]): string =>
      `${some(n, 'attempt waits', 'attempts wait')} here for ${names.join(', ')} to join again.`,
    refused: (title: string, why: string): string =>
      `${title}: an attempt was not taken. ${why} It is still among your own attempts.`,
    forget: 'Put away',
  },

  desk: {
    title: 'School lab',
    setup: 'First instructor',
    setupSays: 'Nobody is here yet. The code was printed where the lab was started.',
    code: 'Code',
    name: 'Name',
    password: 'Password, at least 10 characters',
    make: 'Begin',
    login: 'Sign in',
    leave: 'Sign out',
    trainee: 'This browser has joined a class as a trainee. Sign out to come in as an instructor.',
    classes: 'Classes',
    noClasses: 'No class yet. Name the first one.',
    newClass: 'New class',
    add: 'Make',
    back: 'All classes',
    joinBy: (address: string): string => `Trainees open ${address} and join with the code`,
    tabs: {
      attempts: 'Attempts',
      roster: 'Roster',
      exercises: 'Handed out',
      marks: 'Marks',
      table: 'Class table',
      records: 'Records',
    },
    live: { open: 'live', closed: 'not live: the lab does not answer' },
    progress: (handed: number, scored: number): string =>
      handed === 0 ? 'Nothing handed in yet.' : `${some(handed, 'attempt', 'attempts')} handed in, ${scored} scored.`,
    projector: 'Without names',
    present: {
      welding: (names: readonly string[]): string =>
        names.length === 0 ? 'Nobody welds just now.' : `Welding just now: ${names.join(', ')}.`,
      waiting: (names: readonly string[]): string =>
        names.length === 0 ? 'Nobody waits to be scored.' : `Waiting to be scored: ${names.join(', ')}.`,
      waits: (name: string, attempts: number): string => (attempts === 1 ? name : `${name} (${attempts})`),
    },
    notCompared: 'Motions are compared when it is opened: there are too many to compare them all in the list.',
    columns: {
      trainee: 'Trainee',
      exercise: 'Exercise',
      number: 'No.',
      received: 'Received',
      verdict: 'Verdict',
      score: 'Score',
      first: 'First thing to change',
      against: 'Before believing it',
      plate: 'Plate',
      attempts: 'Attempts',
      within: 'Within',
      median: 'Median',
      fault: 'Common fault',
      mark: 'Mark by the rule',
      set: 'Set by hand',
      leftOut: 'Left out',
      opens: 'Opens',
      closes: 'Closes',
      most: 'Attempts that count',
      pin: 'PIN',
    },
    hidden: (n: number): string => `Trainee ${n}`,
    waiting: 'being scored',
    late: 'late',
    look: 'Look',
    file: 'Attempt file',
    evidence: 'To know before believing it',
    noEvidence: 'Nothing speaks against it. A copied hand with noise added, or a stranger’s hand, is not caught.',
    advice: 'What to change',
    close: 'Close',
    rosterSays: 'One name a line, or a CSV with a column called name. Nobody is taken off.',
    rosterAdd: 'Add to the roster',
    rosterFile: 'Names from a file',
    added: (n: number, known: number): string => `${n} added, ${known} there already.`,
    hasPin: 'has one',
    givePin: 'New PIN',
    pinIs: (name: string, pin: string): string => `PIN for ${name}: ${pin}. It is shown once.`,
    pins: 'Marks count: trainees join with a PIN',
    handOut: 'Hand out',
    exercise: 'Exercise',
    opens: 'Opens',
    now: 'now',
    closes: 'Closes (empty: stays open)',
    most: 'Attempts that count (empty: any number)',
    notOut: 'Nothing handed out yet.',
    ever: 'stays open',
    any: 'any number',
    rule: 'Rule',
    rules: { best: 'best attempt', last: 'last attempt', median: 'median of the last three' },
    setMark: 'Set',
    takeBack: 'Take back',
    mark: 'Mark, 0 to 100',
    reason: 'Reason',
    reasonNeeded: 'A mark set by hand stands beside the computed one, with its reason.',
    seeFirst: 'See these three first',
    nobodyFirst: 'Nobody stands out.',
    times: (times: number, of: number): string => `${times} of ${of}`,
    out: 'Take out',
    pdf: 'Class sheet as PDF',
    csv: 'Results as CSV',
    jsonl: 'Results as JSON lines',
    noAnswer: 'The lab does not answer.',
    bench: 'The bench',
    oneRoster: 'From a OneRoster export',
    oneRosterClass: 'sourcedId of the class (empty: the export has one)',
    oneRosterResults: 'OneRoster results of this exercise',
    exportOne: 'Export',
    eraseOne: 'Erase',
    keepOne: 'Keep',
    eraseSays: (name: string): string => `Erases ${name} with every attempt, for good. Type the name:`,
    erased: (name: string): string => `${name} is erased. Backups made before still hold the attempts.`,
    records: {
      kept: 'How long it is kept',
      forEver: 'For ever: the school has set no time (LAB_KEEP_DAYS where the lab is started).',
      keptFor: (days: number): string => `${some(days, 'day', 'days')}; what is older is erased every night.`,
      goes: (trainees: readonly string[], attempts: number): string =>
        trainees.length + attempts === 0
          ? 'Next night nothing of this class goes.'
          : `Next night go: ${[...trainees, some(attempts, 'attempt of others', 'attempts of others')].join(', ')}.`,
      versions: 'Versions that judged it',
      current: (engine: string, scoring: string): string => `Engine ${engine}, scoring ${scoring} at work.`,
      oneVersion: 'No other version has scored this class.',
      older: (engine: string, scoring: string, scores: number): string =>
        `Engine ${engine}, scoring ${scoring}: ${some(scores, 'attempt', 'attempts')}.`,
      compare: 'What differs',
      compared: (all: number, differing: number): string =>
        `${some(all, 'attempt', 'attempts')} scored by both; ${differing === 0 ? 'all alike' : `${differing} differ`}.`,
      judged: (verdict: string | null, score: number | null): string =>
        `${verdict ?? 'nothing'}${score === null ? '' : `, ${score}`}`,
      trail: 'Who did what',
      trailSays: 'The trail keeps ids, never names; who has been erased is an id that nothing else knows.',
      columns: {
        at: 'When',
        who: 'Who',
        did: 'What',
        detail: 'To what',
        trainee: 'Trainee',
        exercise: 'Exercise',
        number: 'No.',
        before: 'Before',
        after: 'Now',
      },
      roles: { lab: 'the lab', other: (role: string, id: string): string => `${role} ${id.slice(0, 8)}` },
    },
  },
};
