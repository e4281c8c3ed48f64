import type { GasName, Recording, WeaveOptions } from '../../engine/index.ts';
import type { InputError, Line, Result, Verdict } from '../../scoring/index.ts';
import { BAD_IN_A_ROW, GOOD_IN_A_ROW, type Level } from '../session/level.ts';
import type { AttemptEntry } from '../storage/attempts.ts';
import { oneDecimal, seconds, twoDecimals, whole } from './numbers.ts';

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

  top: {
    exercise: 'Exercise',
    ownJoint: 'Own joint and settings',
    attempts: 'Attempts',
    open: 'Open',
    save: 'Save',
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
    range: (from: string, to: string) => `${from} to ${to}`,
    over: (mm2: number) => `${oneDecimal(mm2)} over, which goes into crown or extra leg whatever your hand does`,
    under: (mm2: number) => `${oneDecimal(mm2)} short, which leaves it undersize whatever your hand does`,
    even: 'about what it holds',
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
    touching: 'nozzle touching',
  },

  strip: {
    title: 'Opened root',
    share: (share: number) => `${whole(share * 100)} % of the judged length tied in`,
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
  },

  findings: {
    verdict: VERDICTS,
    first: 'Change this first',
    show: 'Show me',
    lines: 'Lines',
    hand: 'Hand',
    head: { measure: 'measure', reading: 'reading', limit: 'limit', rule: 'rule', verdict: 'verdict', place: 'at' },
    measuring: 'Measuring the bead …',
    weldingAgain: 'Welding the recording again …',
    notMeasured: 'Not measured',
    notModelled: 'Not modelled',
    cautions: 'Cautions',
    score: (score: number) => `Trend number ${whole(score)} of 100: for your own line at this exercise, nothing else.`,
    sameHash: 'Welded again here to the same check number.',
    otherHash:
      'Welded again here to another check number than the file carries: another engine version made it, or it was changed.',
    details: 'Details',
    check: 'check number',
    engine: 'engine',
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
    drop: 'Or drop a recording file anywhere on the page.',
  },

  level: {
    short: (level: Level, own: boolean): string => {
      if (level.kind === 'test') return 'Test: no guides';
      if (level.kind === 'free' || own) return 'Guides as you set them';
      if (level.kind === 'with guides') return `With guides, ${level.good} of ${GOOD_IN_A_ROW} good in a row`;
      return level.bad === 0 ? 'Without guides' : `Without guides, ${level.bad} of ${BAD_IN_A_ROW} outside in a row`;
    },
    long: (level: Level): string => {
      if (level.kind === 'test')
        return 'This is a test: ghost, beat and toe marks are off in it, whatever is set here.';
      if (level.kind === 'free') return 'Your own joint and settings: guides are as you set them here.';
      if (level.kind === 'with guides')
        return `This exercise is welded with guides, as set here. After three good attempts in a row they go; so far ${['none', 'one', 'two'][level.good]}.`;
      return `Three good attempts in a row: ghost, beat and toe marks are off in this exercise. Two outside in a row bring them back${level.bad > 0 ? '; so far one' : ''}.`;
    },
    own: 'Guides as set here, whatever the level says',
    helped: {
      robot: 'robot hand',
      test: 'test, no guides',
      'with guides': 'with guides',
      'without guides': 'without guides',
    } satisfies Record<AttemptEntry['helped'], string>,
    welded: (helped: AttemptEntry['helped']) =>
      helped === 'robot'
        ? 'Welded by the robot hand'
        : helped === 'test'
          ? 'Test, welded without guides'
          : `Welded ${helped}`,
  },

  aids: {
    title: 'Aids and device',
    note: 'Aids in use are written into the attempt.',
    ghost: 'Ghost: shows the weave before you strike',
    beatSeen: 'Beat, seen',
    beatHeard: 'Beat, heard',
    toeMarks: 'Toe marks on the joint',
    plainView: 'Plain view, for weak machines',
    handRig: 'Hand rig: gun weight and hose drag between hand and torch',
    gun: 'gun weight',
    hose: 'hose drag',
    latch: 'Space keeps the trigger until pressed again',
    sound: 'Sound',
    calibrate: 'Measure the screen with a bank card',
    calibrated: (scale: number) => `Screen measured: ${oneDecimal(scale)} pixels to the millimetre.`,
    oneToOne: 'Weld at 1:1, a millimetre of hand for a millimetre of joint',
    tooLong: (fits: number) => `At 1:1 only the first ${whole(fits)} mm of this joint fit on the screen.`,
    measureFirst: 'Measure first: cuts open without readings until you have measured them or ask',
    penCheck: 'Check that the pen tells how it leans',
    penTilts: 'Pen leans are measured: work and travel angle come from the pen.',
  },

  calibration: {
    title: 'Measure the screen',
    text: 'Lay a bank card on the screen, its left edge on the line, and drag the right line to its right edge. Cards are 85.6 mm wide (ISO/IEC 7810).',
    upright:
      'Stand a bank card upright on the screen, its left edge on the line, and drag the right line to its right edge. The short edge of a card is 54.0 mm (ISO/IEC 7810).',
    slider: 'Width of the card on the screen',
    keep: 'Keep',
    cancel: 'Cancel',
  },

  pen: {
    title: 'Check the pen',
    text: 'Touch the field with the pen and lean it well to the left, to the right, towards you and away. Some pens report no lean; then the exercise holds the angles.',
    left: 'left',
    right: 'right',
    towards: 'towards you',
    away: 'away',
    field: 'Lean the pen here',
    passed: 'This pen tells how it leans. Work and travel angle are now measured.',
    close: 'Close',
  },

  cautions: {
    title: 'Before you start',
    text: [
      'Welding can blind, burn, shock, gas and set fires; grinders, saws, hot metal, etching acids and coated steel hurt too. Work with a trained person, ventilation, eye wash and gloves.',
      'The screen goes dark and bright with the arc. The light is smoothed and never flashes more than three times a second; if light on a screen can harm you, use the plain view or do not start. Sound starts low.',
      'Practice here replaces no supervised practice, protective equipment, ventilation, fire watch or qualified procedure. Limits shown are a study aid; the local code, the written procedure and the inspector decide. A score qualifies nobody.',
    ],
    plain: 'Start in the plain view',
    go: 'Understood',
  },

  about: {
    title: 'About the bench',
    how: 'How to weld here',
    steps: [
      'Read the sentence at the top: metal laid against metal the joint holds. Click a value to change it.',
      'Press on the bottom of the joint and hold. Let the puddle become a shelf the full width of the bead.',
      'Weave from toe to toe: wait until the toe has wetted in, cross the root with the arc on the front of the puddle.',
      'Let go to stop. Strike again within four seconds to fill the crater or go on.',
      'Drag the cutting line, read what to change first, press Show me, weld another.',
      'Measure a cut yourself before you believe the bench, and lay a photograph of a real one beside it.',
    ],
    cannot: 'What a screen cannot teach',
    cannotText:
      'Heat in the glove, weight of the hose, sparks in the collar, the body’s stance, and seeing through a lens. Mouse, finger and keyboard do not know tip-to-work or angles: the exercise holds them and they read “not measured”.',
    model: 'What the model leaves out',
    modelText:
      'Porosity, cracks, silica islands, arc strikes, distortion. Undercut is read with a stated plus-minus. Readings are of a model, not of your coupon.',
    scenario: 'Tern Dock workshop, its people, exercises and stories are invented.',
    close: 'Close',
  },

  problems: {
    title: 'That did not work',
    close: 'Close',
    couponNotKept:
      'This browser would not keep the coupon (private window, or no space left). Save the marks as a file.',
    notKept: 'This browser would not keep the attempt (private window, or no space left). Save it as a file.',
    worker: (message: string) =>
      `The welding program in this page stopped: ${message}. Reload the page; kept attempts are safe.`,
    noWebGl:
      'This browser shows no WebGL 2 picture, which the joint is drawn with. Switch on hardware acceleration, or use a current Firefox, Chrome, Edge or Safari.',
    input: (error: InputError) => error.message,
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
    } satisfies Record<Recording['ended'], string>,
    verdict: (result: Result) =>
      `Verdict: ${result.verdict}. ${result.advice[0]?.text ?? result.reasons[0]?.text ?? ''}`,
  },
};
