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
    tabs: { attempts: 'Attempts', roster: 'Roster', exercises: 'Handed out', marks: 'Marks', table: 'Class table' },
    live: { open: 'live', closed: 'not live: the lab does not answer' },
    progress: (handed: number, scored: number): string =>
      handed === 0 ? 'Nothing handed in yet.' : `${some(handed, 'attempt', 'attempts')} handed in, ${scored} scored.`,
    projector: 'Without names',
    columns: {
      trainee: 'Trainee',
      exercise: 'Exercise',
      number: 'No.',
      received: 'Received',
      verdict: 'Verdict',
      score: 'Score',
      first: 'First thing to change',
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
    csv: 'Results as CSV',
    jsonl: 'Results as JSON lines',
    noAnswer: 'The lab does not answer.',
    bench: 'The bench',
  },
};
