import type { AdviceCode, HandMeasure, HandReading } from '../../scoring/index.ts';
import type { Drill, RetentionStep } from '../core/practice/record.ts';
import type { Level } from '../core/practice/views.ts';
import { fixed, trimmed, twoDecimals, whole } from './numbers.ts';

const times = (n: number, of: number): string => `${whole(n)} of ${whole(of)}`;

const MEASURES: Record<HandMeasure, string> = {
  beat: 'beat',
  width: 'width',
  'pause A': 'wait on the right',
  'pause B': 'wait on the left',
  climb: 'climb',
  symmetry: 'middle, right of the root',
  evenness: 'spread of the cycles',
};

/** What a fault is called where it is one of several answers. */
const FAULTS: Partial<Record<AdviceCode, string>> = {
  'arc-back-on-puddle': 'Arc back in the puddle at the root',
  'tip-too-far': 'Tip held too far off',
  'too-narrow': 'Weave too narrow',
  'too-wide': 'Weave too wide',
  'to-one-side': 'Weave to one side',
  'toe-left-early': 'One toe left too early',
  'climbed-fast': 'Climbed too fast',
  'climbed-slowly': 'Climbed too slowly',
  'cold-root': 'Settings too cold',
};

/** What the sheet shows of each, whether the bead holds or not. */
const SHOWS: Partial<Record<AdviceCode, string>> = {
  'arc-back-on-puddle':
    'crossings without a filled dot on the beat sheet and less root than as shown, though beat, width and climb are as asked',
  'tip-too-far': 'tip-to-work past its band in the hand’s table, and less fusion than as shown, root and plates',
  'too-narrow': 'width under its band in the hand’s table, and legs shorter than as shown on both plates',
  'too-wide': 'width over its band in the hand’s table, and legs longer than as shown on both plates',
  'to-one-side': 'one leg longer than the other all the way, and a weave that does not lie over the root',
  'toe-left-early': 'bars on one line of the beat sheet that stop before the band begins, those on the other as asked',
  'climbed-fast':
    'climb over its band in the hand’s table, cycles far apart along the joint, and legs shorter than as shown',
  'climbed-slowly':
    'climb under its band in the hand’s table, cycles close together along the joint, and legs longer than as shown',
  'cold-root': 'a hand as asked in every row, and a root that is bare or in doubt over much of the length',
};

const WHEN: Record<RetentionStep, string> = { day: 'next day', week: 'after a week', fortnight: 'after a fortnight' };

const DRILLS: Record<Drill, { name: string; text: string }> = {
  pattern: { name: 'Pattern', text: 'The shape of the weave: width, middle on the root, even climb.' },
  beat: { name: 'Beat', text: 'One cycle as long as the next, at the beat asked for.' },
  toes: { name: 'Toes', text: 'A wait at each toe as long as asked, and no more.' },
};

/** Words of what is practised beside attempts: judging oneself, drills, tests after a while, naming a fault. */
export const practiceWords = {
  rootInDoubt: (percent: number) => `, ${whole(percent)} % too close to tell`,
  leaf: 'Practice',
  sayFirst: {
    judge: 'Measured. Say first what is outside, then the verdict is shown.',
    name: 'The coupon is welded. Say what was wrong with the hand or the machine.',
  },

  judge: {
    title: 'Judge it yourself first',
    ask: 'Look at bead and cut. Tick what is outside; what you leave is inside.',
    leg: 'Smallest leg, mm (a guess, if you like)',
    done: 'That is my judgement',
    atOnce: 'Show the verdict at once',
    switch: { lessons: 'in lessons', always: 'always', never: 'never' },
    when: 'Judge yourself before the verdict',
    beside: 'Your judgement and the verdict',
    head: { measure: 'Measure', yours: 'You', verdict: 'Verdict' },
    said: { inside: 'inside', outside: 'outside' },
    missed: 'missed',
    imagined: 'not there',
    agree: 'agree',
    open: 'counts neither way',
    sum: (right: number, of: number) =>
      of === 0
        ? 'Every line was too close to call: nothing to hold your judgement against.'
        : `You agree on ${times(right, of)} lines.`,
    legSaid: (said: number, was: number, pm: number) =>
      `Smallest leg: you ${fixed(said, 1)}, read ${twoDecimals(was)} ± ${twoDecimals(pm)} mm (${said >= was ? '+' : ''}${fixed(said - was, 1)}).`,
  },

  trend: {
    title: 'How well you judge',
    none: 'Nothing judged yet. Say what is outside before the verdict, and how well you judge is drawn here.',
    sum: (right: number, of: number, attempts: number) =>
      `Over ${whole(attempts)} ${attempts === 1 ? 'attempt' : 'attempts'} you agree with the reading on ${times(right, of)} lines.`,
    faults: (seen: number, there: number) =>
      there === 0 ? 'No fault was there to be seen yet.' : `Of faults that were there you saw ${times(seen, there)}.`,
    held: (seen: number, there: number) =>
      there === 0 ? '' : `Of lines that held you called ${times(seen, there)} inside.`,
    /** Which way it leans, told only once there is enough of it. */
    leans: {
      passes:
        'You let faults pass more often than you see some that are not there: look again before you call it inside.',
      finds:
        'You see faults that are not there more often than you miss one: hold it against the limit before you call it outside.',
      even: 'You lean neither way.',
      few: 'Too few to say which way you lean.',
    },
    chart: 'Share of lines on which you agree, oldest first',
    legs: (bias: number, n: number) =>
      `Legs: over ${whole(n)} ${n === 1 ? 'guess' : 'guesses'} you say ${fixed(Math.abs(bias), 2)} mm ${bias >= 0 ? 'more' : 'less'} than is read, on average.`,
    limits: (from: number, to: number) =>
      `Nineteen guesses in twenty lie between ${fixed(from, 2)} and ${to >= 0 ? '+' : ''}${fixed(to, 2)} mm of the reading.`,
    fewLegs: (least: number) => `From ${whole(least)} guesses on it is said how far they scatter.`,
    legChart: 'Guess less reading, against their mean; mm',
  },

  drill: {
    title: 'Drills without metal',
    text: 'The hand weaves on the joint with no arc, and is read as in an attempt. Kept apart from attempts.',
    begin: (drill: Drill) => DRILLS[drill].name,
    name: (drill: Drill) => `Drill: ${DRILLS[drill].name.toLowerCase()}`,
    about: (drill: Drill) => DRILLS[drill].text,
    ready:
      'Press on the joint and hold, as if to weld: no arc. Weave for ten seconds or so, then let go. By keyboard: Space and arrows.',
    short: 'Too short to read: at least four seconds.',
    running: (s: number) => `${whole(s)} s`,
    done: (s: number) => `Read over ${fixed(s, 1)} s. Press on the joint to go again.`,
    nothing: 'No weave read yet.',
    leave: 'End the drill',
    measure: MEASURES,
    reading: ({ is, unit, asked }: Pick<HandReading, 'is' | 'unit' | 'asked'>) =>
      `${trimmed(is, unit === '%' ? 0 : 2)} ${unit}${asked ? ` (asked ${trimmed(asked.from, 2)} to ${trimmed(asked.to, 2)})` : ''}`,
    state: { in: 'inside', out: 'outside', free: '' },
    kept: (n: number) => (n === 0 ? 'No drill kept yet.' : `${whole(n)} kept.`),
    last: (drill: Drill, inside: number, of: number, when: string) =>
      `${DRILLS[drill].name}, ${when}: ${times(inside, of)} inside`,
  },

  due: {
    title: 'Tests after a while',
    text: 'What you can do a day, a week and a fortnight after you had learnt it, without guides. Such attempts count apart: neither the level nor the charts are told from them.',
    none: 'Nothing learnt yet: an exercise counts as learnt when its guides have gone, a test when it was passed.',
    now: (title: string, step: RetentionStep) => `Test due: ${title}, ${WHEN[step]}`,
    later: (title: string, step: RetentionStep, when: string) => `${title}, ${WHEN[step]}: from ${when}`,
    weld: 'Weld it now',
    running: (step: RetentionStep) => `Test ${WHEN[step]}, without guides`,
    done: (title: string, step: RetentionStep, when: string) => `${title}, ${WHEN[step]} (${when}):`,
    gone: 'attempt removed',
  },

  naming: {
    title: 'Name the fault',
    text: 'A robot welds a coupon with one thing wrong. Look at face, cut, root strip and beat sheet, and say what it was.',
    level: (level: Level, right: number, of: number) =>
      `Level ${whole(level)}${of === 0 ? '' : `: ${times(right, of)} right`}`,
    welding: 'A coupon is being welded.',
    ask: 'What was wrong?',
    say: 'That is it',
    right: (was: string) => `Right: ${was}.`,
    wrong: (said: string, was: string) => `Not “${said}”. It was: ${was}.`,
    wouldShow: (said: string, shows: string) => `With “${said}” the sheet would show ${shows}.`,
    here: (shows: string) => `Here it shows ${shows}.`,
    next: 'Next coupon',
    leave: 'Leave',
    fault: (code: AdviceCode) => FAULTS[code] ?? code,
    shows: (code: AdviceCode) => SHOWS[code] ?? '',
  },

  fade: 'Seen guides go while the hand is inside the band',
};
