import type { GasName, Recording, TransferRegime, WeaveOptions } from '../../engine/index.ts';
import { clean, type Line, type Result, type Verdict, workSaid, workTimeSaid } from '../../scoring/index.ts';
import type { PictureProblem, Problem, Refusal } from '../core/session/problem.ts';
import type { Announcement, Notice } from '../core/session/state.ts';
import { desk } from './desk.ts';
import { guide } from './guide.ts';
import { lensWords } from './lens.ts';
import { lessonWords } from './lesson.ts';
import { logbookWords } from './logbook.ts';
import { oneDecimal, seconds, trimmed, twoDecimals, whole } from './numbers.ts';
import { practiceWords } from './practice.ts';
import { sheets } from './sheets.ts';

import { whatIfWords } from './what-if.ts';

type Side = 'A' | 'B' | null;
type Kind = 'tee' | 'lap' | 'corner';

const SIDES: Record<Kind, { A: string; B: string }> = {
  tee: { A: 'right', B: 'left' },
  corner: { A: 'right', B: 'left' },
  lap: { A: 'back plate', B: 'edge plate' },
};

const VERDICTS: Record<Verdict, string> = {
  within: 'within',
  outside: 'outside',
  'too close to call': 'too close to call',
  'no verdict': 'no verdict',
};

/** Every word on screen, in one place. Trade terms as in ISO 17659, AWS A3.0 and everyday welding English. */
export const en = {
  product: 'Toehold',

  ...sheets,
  lens: lensWords,
  lesson: lessonWords,
  logbook: logbookWords,
  practice: practiceWords,
  whatIf: whatIfWords,
  desk,
  guide,

  top: {
    exercise: 'Exercise',
    ownJoint: 'Own joint and settings',
    made: 'Made or opened here',
    attempts: 'Attempts',
    open: 'Open',
    save: 'Save',
    print: 'Print',
    aids: 'Aids',
    help: 'About',
    weldAgain: 'Weld another',
    robot: 'Watch the robot hand',
    stopRobot: 'Stop the robot hand',
    done: 'Done',
  },

  setting: {
    kind: { tee: 'Tee', lap: 'Lap', corner: 'Corner' } satisfies Record<Kind, string>,
    gas: {
      'M21-ArC-18': 'argon with 18 % CO₂',
      'M21-ArC-25': 'argon with 25 % CO₂',
      C1: 'CO₂',
    } satisfies Record<GasName, string>,
    asks: { leg: 'leg', throat: 'throat' },
    fields: {
      kind: 'joint',
      plateA: { tee: 'through plate, right', corner: 'right plate', lap: 'back plate' } satisfies Record<Kind, string>,
      plateB: { tee: 'standing plate, left', corner: 'left plate', lap: 'edge plate' } satisfies Record<Kind, string>,
      plateWidth: 'plate width',
      length: 'length of joint',
      gap: 'gap',
      startTemp: 'start temperature',
      size: 'weld size asked for',
      wire: 'wire',
      feed: 'wire feed speed',
      volts: 'volts',
      gas: 'shielding gas',
      tip: 'contact tip: + out of the nozzle, − inside it',
      nozzle: 'nozzle diameter',
      tipToWork: 'contact-tip-to-work distance, held',
      travel: 'travel speed',
      workAngle: 'work angle from the right (back) plate, held',
      travelAngle: 'travel angle, push, held',
      tabs: 'run-on and run-off tabs',
    },
    tabs: { yes: 'with tabs', no: 'no tabs' },
    noGap: 'no gap',
    gap: (mm: string) => `gap ${mm}`,
    flush: 'flush',
    out: (mm: string) => `${mm} out`,
    in: (mm: string) => `${mm} in`,
    /** What stands between the values of the sentence. */
    joins: {
      on: ' on ',
      plate: ' plate, ',
      wide: ' wide, ',
      long: ' long, ',
      at: ', at ',
      held: ' tip-to-work, held at ',
      and: ' and ',
      climbing: ' push, climbing ',
      wire: ' wire, ',
      tip: ', tip ',
      inA: ' in a ',
      nozzle: ' nozzle',
      laying: ', laying ',
      holds: '; the joint holds ',
      comma: ', ',
      stop: '. ',
      colon: ': ',
    },
    range: (from: string, to: string) => `${from} to ${to}`,
    /** On a phone the sentence is folded to two lines. */
    all: 'All settings',
    fewer: 'Fold the settings',
    within: (most_mm2: number) =>
      `more than the leg asked takes, and within the ${oneDecimal(most_mm2)} of the largest leg allowed`,
    /** @param most_mm2 what the largest size allowed takes; null: there is none */
    over: (mm2: number, most_mm2: number | null) =>
      `${oneDecimal(mm2)} over${most_mm2 === null ? '' : ` even the ${oneDecimal(most_mm2)} of the largest leg allowed`}, which goes into crown or extra leg whatever your hand does`,
    under: (mm2: number) => `${oneDecimal(mm2)} short, which leaves it undersize whatever your hand does`,
    transfer: {
      stubbing: (low: number, high: number) =>
        ` Too few volts for this wire: it stubs. At these amps it dips from about ${oneDecimal(low)} to ${oneDecimal(high)} V.`,
      globular: (low: number, high: number) =>
        ` Too many volts for this wire and gas: it goes over in globules. At these amps it dips from about ${oneDecimal(low)} to ${oneDecimal(high)} V.`,
    },
    even: 'about what it holds',
    left: (what: string) => ` Left to you: ${what}. `,
    piece: (plate: number) => ` Your piece: plate ${whole(plate)}, dealt from the start word. `,
    noPiece:
      ' Everybody has a piece of their own in this exercise: say plate number and start word at the desk, under Trainees. Until then it is practice. ',
    thick: 'Over 6 mm, a single short-circuiting pass needs a qualified procedure and risks lack of fusion.',
  },

  weave: {
    straight: 'straight run',
    'inverted-v': 'inverted V',
    triangle: 'looping triangle',
    zigzag: 'zigzag',
    crescent: 'crescent',
  } satisfies Record<WeaveOptions['pattern'], string>,

  asked: {
    straight: (travel: string) => `Straight run, climbing ${travel} mm/s.`,
    weave: (name: string, tempo: string, width: string) => `${name}, ${tempo} cycles a second, ${width} mm wide`,
    pauses: (left: string, right: string) =>
      left === right ? `${left} s at each toe.` : `${left} s at the left toe, ${right} s at the right.`,
  },

  joint: {
    label:
      'Joint, welder’s view. Arrow keys move the torch, hold Space for the trigger, Enter ends the attempt. Or press and drag up the joint.',
    empty: 'No attempt yet. Press on the bottom of the joint and hold; drag up as the puddle lets you.',
    emptyTouch: 'No attempt yet. Press below the joint and hold: the wire points above your finger.',
    out: (s: number) => `Arc out. Strike again within ${whole(s)} s to go on, or`,
    finish: 'finish here',
    robot: 'Robot hand',
    left: { tee: 'left plate', corner: 'left plate', lap: 'edge plate' } satisfies Record<Kind, string>,
    right: { tee: 'right plate', corner: 'right plate', lap: 'back plate' } satisfies Record<Kind, string>,
    fixedCut: (y: number) => `Cut fixed beforehand at ${oneDecimal(y)} mm`,
    handle: 'Cut through the joint; arrow keys move it',
    flag: (n: number, text: string) => `Place ${n}: ${text}`,
    slow: (lag: number) =>
      `Stopped: this machine fell ${twoDecimals(lag)} s behind real time, and time at the bench is never slowed. Close other programs, switch on the plain view, or take a shorter joint.`,
  },

  live: {
    time: 's',
    height: 'mm up',
    current: 'A',
    held: 'held',
    tipToWork: (held: string) => `tip-to-work ${held}`,
    touching: 'nozzle touching',
    /** What the arc sounds like, for whoever does not hear it. */
    sound: {
      'short-circuiting': (rate_Hz: number) => `sizzles evenly, ${whole(rate_Hz)} a second`,
      stubbing: (rate_Hz: number) => `stutters and bangs, ${whole(rate_Hz)} a second`,
      globular: (rate_Hz: number) => `splutters, coarse and loud, ${whole(rate_Hz)} a second`,
      off: () => 'silent',
    } satisfies Record<TransferRegime, (rate_Hz: number) => string>,
  },

  strip: {
    title: 'Opened root',
    /** @param covered the judged length carries weld everywhere */
    share: (percent: number, covered: boolean) =>
      `${whole(percent)} % of the ${covered ? 'judged length' : 'weld there is'} tied in`,
    weldedDown: 'welded downwards: not judged',
    empty: 'The root, opened along its length, appears here after an attempt.',
  },

  cut: {
    letter: 'A',
    title: (y: number) => `Cut A–A at ${oneDecimal(y)} mm`,
    empty: 'Drag the cutting line along the joint; the section is drawn here.',
    compare: 'Compare with',
    nothing: 'nothing',
    coupon: (y: number) => `real coupon at ${oneDecimal(y)} mm`,
    measure: 'Measure it yourself',
    save: 'Save drawing',
    saveLong: 'Save this cut as a drawing (SVG)',
    real: 'a real coupon …',
    hidden: 'Measure this cut yourself first, or',
    show: 'see the readings',
    readings: {
      leg: 'leg',
      throat: 'throat',
      convexity: 'convexity',
      undercut: 'undercut',
      fused: 'fused depth',
      root: 'root',
      past: (mm: string) => `tied in, ${mm} past the corner`,
      short: (mm: string) => `${mm} short of the corner`,
      doubt: (mm: string) => `at the corner (${mm}), too close to call`,
      down: 'not judged: welded downwards',
    },
    thisOne: 'on the bench',
    difference: 'hatched where the faces differ',
  },

  beat: {
    title: 'Beat sheet',
    left: { tee: 'left toe', corner: 'left toe', lap: 'edge toe' } satisfies Record<Kind, string>,
    right: { tee: 'right toe', corner: 'right toe', lap: 'back toe' } satisfies Record<Kind, string>,
    empty: 'Each pause at a toe becomes a bar as long as it lasted, each root crossing a stroke between.',
    pause: (toe: string, s: number, filled: boolean | null) =>
      `${toe}: ${seconds(s)}${filled === null ? '' : filled ? ', filled when left' : ', left before it filled'}`,
    crossing: (lead: number | null, onFront: boolean | null) =>
      onFront === null || lead === null
        ? 'Root crossed; no puddle to compare with'
        : onFront
          ? 'Root crossed with the arc on the front of the puddle'
          : `Root crossed ${oneDecimal(Math.abs(lead))} ${lead < 0 ? 'behind' : 'ahead of'} the front of the puddle`,
  },

  replay: {
    title: 'Replay',
    play: 'Play',
    pause: 'Pause',
    finished: 'Finished piece',
    whole: 'finished piece',
    at: (t: number, end: number) => `${oneDecimal(t)} of ${oneDecimal(end)} s`,
    slider: 'Time in the attempt',
    back: 'Back to the weave cycle before',
    on: 'On to the next weave cycle',
    pace: 'How fast it plays',
    times: (times: number) =>
      times === 1 ? 'as welded' : times < 1 ? `${trimmed(1 / times, 1)} × slower` : `${trimmed(times, 1)} × faster`,
    show: 'Show to the room',
    showEnd: 'End the show',
    chalk: {
      draw: 'Draw on it',
      stop: 'Put the pen down',
      back: 'Take the last stroke back',
      wipe: 'Wipe',
      board: 'Drawn over the show',
    },
  },

  findings: {
    verdict: VERDICTS,
    first: 'Change this first',
    show: 'Show me',
    lines: 'Lines',
    hand: 'Hand',
    head: { measure: 'measure', reading: 'reading', limit: 'limit', rule: 'rule', verdict: 'verdict', place: 'at' },
    /** What became of the first sentence when it was welded again. */
    proof: {
      trying: 'Being tried: your attempt is welded again, one thing changed at a time …',
      proved: 'Proved',
      replaced: 'Tried, and it is this that mends it',
      'not mended': 'Tried',
    },
    measuring: 'Measuring the bead …',
    weldingAgain: 'Welding the recording again …',
    notMeasured: 'Not measured',
    notModelled: 'Not modelled',
    cautions: 'Cautions',
    sameHash: 'Welded again here to the same check number.',
    otherHash:
      'Welded again here to another check number than the file carries: another engine version made it, or it was changed.',
    details: 'Details',
    check: 'check number',
    engine: 'engine',
    saveResult: 'Save the result as JSON',
    /** A line's measure. */
    measure: (measure: string): string => measure,
    side: (kind: Kind, side: Side) => (side === null ? '' : SIDES[kind][side]),
    place: (line: Line) => `at ${oneDecimal(line.y_mm)}`,
  },

  hand: {
    notMeasured: 'not measured',
    rows: {
      arcOnFrontShare: 'arc on the front at the root',
      lead: 'arc to front of puddle',
      pause: 'pause at the toe',
      reach: 'reach to the toe',
      filled: 'toe filled when left',
      period: 'one cycle',
      width: 'weave width',
      stepUp: 'step up per cycle',
      travel: 'travel',
      tipToWork: 'tip-to-work',
      workAngle: 'work angle',
      travelAngle: 'travel angle',
    },
    asked: 'asked',
    evenness: (cv: number) => `spread ${whole(cv * 100)} %`,
  },

  toes: {
    title: 'Toes, at their worst',
    undercut: 'undercut',
    risk: 'toe risk',
    riskSays: 'plate melted outside the metal; on steel it may show as undercut',
  },

  process: {
    title: 'Machine and metal',
    current: 'current',
    heat: 'heat input',
    laid: 'laid',
    holds: 'joint holds',
    deposited: 'deposited',
    spatter: 'spatter',
    dripped: 'dropped out',
    arcTime: 'arc time',
  },

  shelf: {
    title: 'Attempts kept in this browser',
    empty: 'None yet. Every attempt is kept here when it ends.',
    untitled: 'Attempt without an exercise',
    fileName: 'attempt',
    open: 'Open',
    remove: 'Remove',
    removed: (title: string, when: string) => `${title}, ${when}, is removed.`,
    putBack: 'Put it back',
    trend: (score: number) => `trend ${whole(score)}`,
    trendTitle: 'Of 100. For your own line over attempts at one exercise, nothing else.',
    drop: 'Or drop a recording file anywhere on the page.',
    damaged: (why: string) => `Damaged (${why}). It stays as it is until you remove it.`,
    saveRaw: 'Save as it is',
    persistent: 'This browser keeps them until you remove them.',
    clearable:
      'This browser may clear them when the disk runs short: save what matters as a file. It has been asked to keep them and did not promise it.',
    unasked: 'On this address the browser cannot be asked to keep them for good: save what matters as a file.',
  },

  unfinished: {
    title: 'An attempt was not ended',
    heading: 'Not ended',
    said: (title: string, when: string, s: number) =>
      `${title}, ${when}: ${oneDecimal(s)} s of it are kept, up to where the page was closed or stopped.`,
    otherEngine: 'Another version of the bench welded it: the same hand makes a somewhat other bead now.',
    damaged: (why: string) => `It cannot be welded again (${why}).`,
    take: 'Weld it again and judge it',
    later: 'Later',
    remove: 'Throw it away',
  },

  notice: {
    'asks-to-keep':
      'This page asks the browser to keep your attempts for good: otherwise it may clear them when the disk runs short.',
    'may-be-cleared':
      'The browser has not promised to keep your attempts: it may clear them when the disk runs short. Save what matters as a file.',
    close: 'Dismiss',
  } satisfies Record<Notice | 'close', string>,

  problems: {
    title: 'That did not work',
    close: 'Close',
    goOn: 'Open it all the same',
    muchWork: (file: string | null, work: string, most: string) =>
      `${file ?? 'The kept attempt'}: found ${work}; opened without asking are those of at most ${most}. Nothing has been welded. Opened all the same, this page is busy with it for about that long.`,
    couponNotKept:
      'This browser would not keep the coupon (private window, or no space left). Save the marks as a file.',
    notKept: 'This browser would not keep the attempt (private window, or no space left). Save it as a file.',
    storageFull:
      'There is no space left to keep attempts in this browser. Nothing kept so far is lost; save this attempt as a file, and remove kept ones or free some of the disk.',
    noStore: 'This browser keeps no attempts (private window?). Save what matters as a file.',
    silent: (kept: string) =>
      `The welding program in this page fell silent and has been started again. ${kept} A cold piece is on the bench.`,
    silentKept: (s: number) => `What you welded, ${oneDecimal(s)} s, is kept: it can be taken up under Attempts.`,
    silentLost: 'Nothing of yours was being welded.',
    worker: (message: string) =>
      `The welding program in this page stopped: ${message}. Reload the page; kept attempts are safe.`,
    noWebGl:
      'This browser shows no WebGL 2 picture, which the joint is drawn with. Switch on hardware acceleration, or use a current Firefox, Chrome, Edge or Safari.',
    /** A message as errors carry it, a line a problem. */
    refused: (message: string): string => message,
    /** A text said in English where it was found out. */
    phrase: (text: string): string => text,
    found: ({ found, allowed }: Refusal) => `found ${found}, allowed: ${allowed}`,
    tooLarge: (file: string, bytes: number, most: number) =>
      `${file}: found ${whole(bytes / 1e6)} MB, allowed are recordings of at most ${whole(most / 1e6)} MB`,
    picture: {
      'cut-off': { found: 'a picture that is cut off', allowed: 'a complete PNG or JPEG file' },
      'cannot-be-shown': { found: 'a picture this browser cannot show', allowed: 'a complete PNG or JPEG file' },
    } satisfies Record<PictureProblem['why'], Refusal>,
    ...desk.problems,
    say: (problem: Problem): string => sayProblem(en, problem),
  },

  announce: {
    idle: 'Ready. A cold piece is on the bench.',
    welding: 'Arc on.',
    out: 'Arc out.',
    stopped: 'Attempt ended.',
    ended: {
      stopped: 'Attempt ended. Measuring.',
      'too-slow': 'Attempt stopped: the machine fell behind real time.',
      'length-reached': 'Top of the joint reached. Measuring.',
      interrupted: 'Attempt welded up to where it was left. Measuring.',
      'hand-finished': 'The weave is welded. Measuring.',
      'time-limit': 'Longest time reached. Measuring.',
    } satisfies Record<Recording['ended'], string>,
    verdict: (result: Result) =>
      `Verdict: ${VERDICTS[result.verdict]}. ${result.advice[0]?.text ?? result.reasons[0]?.text ?? ''}`,
    say: (news: Announcement, result: Result | null): string => sayNews(en, news, result),
  },
};

/** The type of every language: one that leaves something out does not compile. */
export type Words = typeof en;

/** Something that went wrong, in the words of a language. */
export function sayProblem(w: Words, problem: Problem): string {
  const p = w.problems;
  switch (problem.code) {
    case 'input':
      return p.refused(problem.error.message);
    case 'file-too-large':
      return p.tooLarge(clean(problem.file), problem.bytes, problem.most_bytes);
    case 'much-work':
      return p.muchWork(
        problem.file === null ? null : clean(problem.file),
        p.phrase(workSaid(problem.work)),
        workTimeSaid(problem.most_s),
      );
    case 'other-kind':
      return p.otherKind(clean(problem.file), problem.kind);
    case 'spoilt-link':
      return p.spoiltLink;
    case 'picture':
      return `${clean(problem.picture.file)}: ${p.found(p.picture[problem.picture.why])}`;
    case 'not-kept':
      return p.notKept;
    case 'storage-full':
      return p.storageFull;
    case 'no-store':
      return p.noStore;
    case 'bench-silent':
      return p.silent(problem.kept_s === null ? p.silentLost : p.silentKept(problem.kept_s));
    case 'coupon-not-kept':
      return p.couponNotKept;
    case 'no-such-change':
      return w.whatIf.cannot(problem.change);
    case 'logbook-left-out':
      return w.logbook.leftOut(problem.count);
    case 'bench-refused':
    case 'unexpected':
      return p.refused(problem.message);
    case 'bench-broken':
      return p.worker(problem.message);
    case 'no-webgl':
      return p.noWebGl;
  }
}

/** What a screen reader is told, in the words of a language. */
export function sayNews(w: Words, news: Announcement, result: Result | null): string {
  const a = w.announce;
  switch (news.code) {
    case 'torch':
      return a[news.torch];
    case 'ended':
      return a.ended[news.ended];
    case 'verdict':
      return result === null ? '' : a.verdict(result);
    case 'say-first':
      return w.practice.sayFirst[news.why];
  }
}
