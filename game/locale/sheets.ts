import { BAD_IN_A_ROW, GOOD_IN_A_ROW, type Level } from '../core/session/level.ts';
import type { AttemptEntry } from '../core/session/shelf.ts';
import { oneDecimal, whole } from './numbers.ts';

/** Words of the sheets laid over the bench (aids, screen, pen, cautions, about) and of the level an exercise is welded at. */
export const sheets = {
  level: {
    short: (level: Level, own: boolean): string => {
      if (level.kind === 'test') return 'Test: no guides';
      if (level.kind === 'free' || own) return 'Guides as you set them';
      if (level.kind === 'with guides') return `With guides, ${level.good} of ${GOOD_IN_A_ROW} good in a row`;
      return level.bad === 0 ? 'Without guides' : `Without guides, ${level.bad} of ${BAD_IN_A_ROW} outside in a row`;
    },
    long: (level: Level): string => {
      if (level.kind === 'test')
        return 'This is a test: pacer, beat and toe marks are off in it, whatever is set here.';
      if (level.kind === 'free') return 'Your own joint and settings: guides are as you set them here.';
      if (level.kind === 'with guides')
        return `This exercise is welded with guides, as set here. After three good attempts in a row they go; so far ${['none', 'one', 'two'][level.good]}.`;
      return `Three good attempts in a row: pacer, beat and toe marks are off in this exercise. Two outside in a row bring them back${level.bad > 0 ? '; so far one' : ''}.`;
    },
    used: (used: number, allowed: number): string =>
      used >= allowed
        ? `all ${whole(allowed)} attempts made, more are practice`
        : `attempt ${whole(used + 1)} of ${whole(allowed)}`,
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
    pacer: 'Pacer: shows the weave before you strike',
    beatSeen: 'Beat, seen',
    beatHeard: 'Beat, heard',
    toeMarks: 'Toe marks on the joint',
    plainView: 'Plain view, for weak machines',
    handRig: 'Hand rig: gun weight and hose drag between hand and torch',
    gun: 'gun weight',
    grams: (g: number) => `${whole(g)} g`,
    hose: 'hose drag',
    latch: 'Space keeps the trigger until pressed again',
    sound: 'Sound',
    language: 'Language',
    inches: 'Inches beside millimetres',
    leftHanded: 'Laid out for the left hand',
    captions: 'Captions for the sound of the arc',
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
    picture: 'What the picture adds',
    pictureText:
      'Shape, edge of the puddle, heat, temper colours and the line of every ripple are the model’s: one ripple a root crossing, where the metal froze. Grain, the depth of ripples, the fine ripples between them, waves on the liquid, slag islands, silica, soot and the balls of spatter that stick are decoration: read nothing from them. At the toes a thread of light means metal stands full on the plate, a dark crescent that it does not yet.',
    scenario: 'Tern Dock workshop, its people, exercises and stories are invented.',
    notices: 'Licences of what this page contains',
    close: 'Close',
  },
};
