import { jointHolds_mm2, metalLaid_mm2, wireState } from '../../engine/index.ts';
import type { Svg } from '../draw/svg.ts';
import { weaveSvg } from '../draw/weave-svg.ts';
import { MM_PER_INCH } from '../lines/limit.ts';
import { profileOf } from '../profiles/of-exercise.ts';
import { type Exercise, sizeAsked } from '../schema/exercise.ts';
import type { FreeSetting } from '../schema/leeway.ts';
import { InputError } from '../schema/problem.ts';
import type { LineMeasure, Profile, Rule } from '../schema/profile.ts';
import { leftRange } from '../words/left-free.ts';
import { measureName, said, toeName } from '../words/names.ts';
import { CAUTIONS } from '../words/statements.ts';
import { FOOTNOTE, GAS, PROVENANCE } from './sentences.ts';

/** All that stands on the sheet of an exercise, ready to be set. */
export interface ExercisePaper {
  title: string;
  /** Name and joint in a sentence. */
  joint: string;
  story: string;
  teaches: string;
  weave: { svg: Svg; width_mm: number; caption: string };
  /** What, and what it is. */
  settings: [string, string][];
  /** The same for the machine at the booth: what can be checked there without instruments. */
  booth: [string, string][];
  look: string[];
  limits: { what: string; limit: string; rule: string }[];
  limitsBy: string;
  /** Where limits come from that were not checked against their edition; empty: all were. */
  provenance: string;
  judged: string;
  cautions: string;
  block: [string, string][];
}

/** Paper millimetres for each millimetre of the joint. */
const WEAVE_SCALE = 4;
/** A weave wider or taller than this on paper is drawn smaller, mm. */
const MOST_WIDTH_MM = 62;
const MOST_HEIGHT_MM = 92;
/** How long the wire is run out to measure its speed; a tenth of a minute. */
export const WIRE_S = 6;

/**
 * The sheet of an exercise: the weave drawn to scale, settings, what to look for, limits, and a card for the booth.
 * @param profile its acceptance profile where it is not one that comes with Toehold
 * @throws InputError when the profile it names is not there
 */
export function exercisePaper(exercise: Exercise, profile = profileOf(exercise)): ExercisePaper {
  if (profile === undefined) {
    throw new InputError(exercise.name, [
      { path: 'profile', found: JSON.stringify(exercise.profile), allowed: 'a profile that comes with Toehold' },
    ]);
  }
  const { joint, demonstration: weave } = exercise;
  const drawing = drawn(exercise);
  const rules = profile.rules.filter((r) => holdsFor(r, profile, Math.min(joint.plateA_mm, joint.plateB_mm)));
  return {
    title: exercise.title,
    joint: jointSaid(exercise),
    story: exercise.story,
    teaches: exercise.teaches,
    weave: drawing,
    settings: settings(exercise),
    booth: [...boothSettings(exercise), ['Knobs of this machine', ''], [`${WIRE_S} s of wire, here`, '']],
    look: look(exercise),
    limits: rules.map((r) => ({
      what: ruleSaid(r.measure),
      limit: limitSaid(r, profile.unit),
      rule: `${r.clause}${r.status === 'memory' ? ` ${FOOTNOTE}` : ''}`,
    })),
    limitsBy: `${profile.title}, ${profile.edition}`,
    provenance: rules.some((r) => r.status === 'memory') ? PROVENANCE : '',
    judged: judgedSaid(exercise),
    cautions: CAUTIONS.join(' '),
    block: [
      ['Exercise', exercise.name],
      ['Weave', weave.pattern === 'straight' ? 'straight run' : weave.pattern.replace('-', ' ')],
      ['Trainee', ''],
      ['Date, bench', ''],
    ],
  };
}

function drawn({ demonstration: weave }: Exercise): ExercisePaper['weave'] {
  const { width_mm, height_mm } = weaveSvg(weave, WEAVE_SCALE);
  const fit = Math.min(1, MOST_WIDTH_MM / width_mm, MOST_HEIGHT_MM / height_mm);
  const scale = fit === 1 ? WEAVE_SCALE : Math.floor(10 * WEAVE_SCALE * fit) / 10;
  const straight = weave.pattern === 'straight';
  return {
    svg: weaveSvg(weave, scale).svg,
    width_mm: (width_mm * scale) / WEAVE_SCALE,
    caption: straight
      ? `The run as you see it, ${said(scale)} times as large; figures are mm up the joint.`
      : `The weave as you see it, ${said(scale)} times as large; figures are mm up the joint. Dashed: the root. Dots: where you wait, larger where longer.`,
  };
}

function jointSaid({ joint, asked }: Exercise): string {
  const kind = joint.kind.charAt(0).toUpperCase() + joint.kind.slice(1);
  const plates =
    joint.plateA_mm === joint.plateB_mm
      ? `${said(joint.plateA_mm)} mm plates`
      : `plates of ${said(joint.plateA_mm)} (${joint.kind === 'lap' ? 'back' : 'right'}) and ${said(joint.plateB_mm)} mm`;
  const gap = joint.gap_mm > 0 ? `, gap ${said(joint.gap_mm)}` : '';
  const warm = joint.startTemp_C === joint.ambient_C ? '' : `, plates at ${said(joint.startTemp_C, 0)} °C`;
  const most = asked.atMost_mm === null ? '' : `, at most ${said(asked.atMost_mm)}`;
  return `${kind}, ${plates} ${said(joint.plateWidth_mm)} wide, ${said(joint.length_mm)} long${gap}${warm}${joint.tabs ? ', with tabs' : ''}; ${asked.kind} ${said(asked.size_mm)} mm${most}. Vertical-up.`;
}

function settings(exercise: Exercise): [string, string][] {
  const { demonstration: w, process, joint, asked } = exercise;
  const laid = metalLaid_mm2(process, w.travel_mmps);
  const holds = jointHolds_mm2(joint, sizeAsked(asked).leg_mm);
  const most =
    asked.atMost_mm === null
      ? ''
      : `, ${said(jointHolds_mm2(joint, sizeAsked({ ...asked, size_mm: asked.atMost_mm }).leg_mm))} at the largest leg allowed`;
  const rows: [string, string][] = [
    ['Climb', `${said(w.travel_mmps)} mm/s: ${said(10 / w.travel_mmps)} s for 10 mm`],
    ['Tip-to-work', `${said(w.tipToWork_mm)} mm${freeIn(exercise, 'tipToWork_mm')}`],
    [
      'Work angle',
      `${said(w.workAngle_deg, 0)}° from the ${joint.kind === 'lap' ? 'back' : 'right'} plate${freeIn(exercise, 'workAngle_deg')}`,
    ],
    ['Travel angle', `${said(w.travelAngle_deg, 0)}° push${freeIn(exercise, 'travelAngle_deg')}`],
    ['Shelf', `${said(w.shelf_s)} s at the bottom before you climb`],
    ['Metal', `lays ${said(laid)} mm², the joint holds ${said(holds)}${most}`],
    ...(w.reStrikes === undefined || w.reStrikes === 0
      ? []
      : [
          [
            'Crater',
            `${w.reStrikes === 1 ? 'one short re-strike' : `${w.reStrikes} short re-strikes`} into it as it sets`,
          ] as [string, string],
        ]),
  ];
  if (w.pattern === 'straight') return rows;
  return [
    ['Beat', `${said(w.cyclesPerSecond, 2)} cycles a second`],
    ['Width', `${said(w.width_mm)} mm from toe to toe`],
    ['Reach ahead', `${said(w.apex_mm)} mm at the root`],
    [`Wait, ${toeName(joint.kind, 'B')}`, `${said(w.pauseB_s, 2)} s`],
    [`Wait, ${toeName(joint.kind, 'A')}`, `${said(w.pauseA_s, 2)} s`],
    ...rows,
  ];
}

/** Wire speed is metres a minute; six seconds are a tenth of one, so centimetres of wire are ten times the speed. */
export function boothSettings(exercise: Exercise): [string, string][] {
  const { process, settings: given, demonstration } = exercise;
  const amps = wireState(process, demonstration.tipToWork_mm).current_A;
  const rows: [string, string][] =
    given !== 'own process'
      ? [
          ['Wire speed', `${said(process.feed_mpmin)} m/min${freeIn(exercise, 'feed_mpmin')}`],
          [`${WIRE_S} s of wire, measured`, `${said((process.feed_mpmin * 100 * WIRE_S) / 60, 0)} cm`],
          ['Volts at the arc', `${said(process.volts_V)} V (about ${said(amps, 0)} A)${freeIn(exercise, 'volts_V')}`],
        ]
      : [['Wire speed and volts', 'set by ear']];
  return [
    ...rows,
    ['Wire', `${process.wire_mm.toFixed(1)} mm${freeIn(exercise, 'wire_mm')}`],
    ['Gas', `${GAS[process.gas]}${freeIn(exercise, 'gas')}`],
    [
      'Nozzle, tip',
      `${said(process.nozzle_mm)} mm${freeIn(exercise, 'nozzle_mm')}, ${tipSaid(process.tip_mm)}${freeIn(exercise, 'tip_mm')}`,
    ],
  ];
}

/** What of a setting is left to the trainee, behind what is given. */
function freeIn(exercise: Exercise, setting: FreeSetting): string {
  const range = leftRange(exercise, setting);
  if (range === null) return '';
  return Array.isArray(exercise.free?.[setting]) ? `, free: ${range}` : `, free from ${range}`;
}

function tipSaid(tip_mm: number): string {
  return tip_mm === 0 ? 'tip flush' : `tip ${said(Math.abs(tip_mm))} mm ${tip_mm > 0 ? 'out' : 'inside'}`;
}

/** What to look for while welding. Common practice, no source. */
function look({ demonstration: w, joint }: Exercise): string[] {
  const common = ['Look at the edges of the puddle, not at the arc.'];
  if (w.pattern === 'straight')
    return [
      ...common,
      'Build a shelf the full width of the bead first.',
      'Keep the arc on the front of the puddle; climb as it lets you.',
    ];
  return [
    ...common,
    'Cross the root with the arc on the front of the puddle.',
    'Leave a toe when it has filled, not when the clock says; the seconds only explain it.',
    'Cross the middle without waiting, step up at most half the puddle.',
    ...(joint.kind === 'lap' ? ['The back plate wants the longer wait; only touch the edge.'] : []),
    'At the top, strike again in the crater until it is full.',
  ];
}

function judgedSaid({ judged, cuts_mm, aids, attempts, vary }: Exercise): string {
  const guides = [
    ...(aids.pacer ? ['pacer'] : []),
    ...(aids.beat ? ['beat'] : []),
    ...(aids.toeMarks ? ['toe marks'] : []),
  ];
  const cuts =
    cuts_mm.length === 0 ? 'no cut is fixed beforehand' : `cuts fixed at ${cuts_mm.map((y) => said(y)).join(', ')}`;
  return `Judged from ${said(judged.from_mm)} to ${said(judged.to_mm)} mm; ${cuts}. ${guides.length === 0 ? 'A test: no guides.' : `Guides: ${guides.join(', ')}.`}${attempts === undefined ? '' : ` ${attempts === 1 ? 'One attempt counts' : `${attempts} attempts count`}.`}${vary === undefined ? '' : ' Everybody has a piece of their own, dealt from start word and plate number.'}`;
}

/** Plates a rule is for are in the profile's own unit. */
function holdsFor(rule: Rule, { unit }: Profile, plate_mm: number): boolean {
  const plate = unit === 'in' ? plate_mm / MM_PER_INCH : plate_mm;
  return plate > rule.plates.over && (rule.plates.upTo === null || plate <= rule.plates.upTo);
}

function ruleSaid(measure: Rule['measure']): string {
  const own: Partial<Record<Rule['measure'], string>> = {
    'leg short': 'leg short of the size asked',
    'throat short': 'throat short of the size asked',
    'throat over': 'throat over the size asked',
    'crater short': 'leg short at the crater',
  };
  return own[measure] ?? measureName(measure as LineMeasure, null, 'tee');
}

const OF = { plate: 'plate thickness', throat: 'throat', face: 'width of the face', leg: 'leg' } as const;

/** A limit as it depends on what it depends on, in the profile's own unit. */
function limitSaid({ limit, extent }: Rule, unit: Profile['unit']): string {
  return valueSaid(limit, unit) + extentSaid(extent, unit);
}

function valueSaid(limit: Rule['limit'], unit: Profile['unit']): string {
  const value = (x: number): string => `${said(x, unit === 'in' ? 4 : 2)} ${unit}`;
  switch (limit.form) {
    case 'none':
      return 'none';
    case 'floor':
      return `at least ${value(limit.value)}`;
    case 'line': {
      if (limit.slope === 0) return `at most ${value(limit.base)}`;
      const base = limit.base === 0 ? '' : `${value(limit.base)} + `;
      return `at most ${base}${said(limit.slope, 3)} × ${OF[limit.of]}${limit.most === null ? '' : `, never over ${value(limit.most)}`}`;
    }
    case 'steps': {
      const rows = limit.rows.map(({ upTo, open, limit: most }) =>
        upTo === null ? `${value(most)} beyond` : `${value(most)} ${open ? 'under' : 'up to'} ${value(upTo)}`,
      );
      return `at most ${rows.join(', ')}, by ${OF[limit.of]}`;
    }
  }
}

function extentSaid(extent: Rule['extent'], unit: Profile['unit']): string {
  const percent = (share: number): string => `${said(100 * share, 0)} %`;
  switch (extent.kind) {
    case 'anywhere':
      return '';
    case 'short':
      return `; over short lengths alone, ${percent(extent.share)} of it at most`;
    case 'accumulated':
      return `; up to ${said(extent.deeper, 3)} ${unit} over ${said(extent.length)} in any ${said(extent.per)} ${unit}`;
    case 'share':
      return `; over ${percent(extent.share)} of the length at most`;
  }
}
