import { jointHolds_mm2, metalLaid_mm2, wireState } from '../../engine/index.ts';
import type { Svg } from '../draw/svg.ts';
import { weaveSvg } from '../draw/weave-svg.ts';
import { MM_PER_INCH } from '../lines/limit.ts';
import { profileOf } from '../profiles/of-exercise.ts';
import { type Exercise, sizeAsked } from '../schema/exercise.ts';
import type { FreeSetting } from '../schema/leeway.ts';
import { InputError } from '../schema/problem.ts';
import type { Profile, Rule } from '../schema/profile.ts';
import { allWithInches } from '../words/inches.ts';
import type { Language } from '../words/language.ts';
import { leftRange } from '../words/left-free.ts';
import { wordsIn } from '../words/words.ts';
import { FOOTNOTE } from './sentences.ts';
import { type SheetWords, sheetWords } from './sheet-words.ts';
import { sheetWordsIn } from './words-in.ts';

/** All that stands on the sheet of an exercise, ready to be set. */
export interface ExercisePaper {
  language: Language;
  /** Inches stand beside millimetres. */
  inches: boolean;
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
 * @param inches stand beside millimetres
 * @throws InputError when the profile it names is not there
 */
export function exercisePaper(
  exercise: Exercise,
  profile = profileOf(exercise),
  language: Language = 'en',
  inches = false,
): ExercisePaper {
  const w = sheetWordsIn(language);
  const { ready } = wordsIn(language);
  if (profile === undefined) {
    throw new InputError(exercise.name, [
      { path: 'profile', found: JSON.stringify(exercise.profile), allowed: 'a profile that comes with Toehold' },
    ]);
  }
  const { joint, demonstration: weave } = exercise;
  const drawing = drawn(exercise, w);
  const sized = <T>(part: T): T => (inches ? allWithInches(part, language) : part);
  const rules = profile.rules.filter((r) => holdsFor(r, profile, Math.min(joint.plateA_mm, joint.plateB_mm)));
  return {
    language,
    inches,
    title: ready(exercise.title),
    joint: sized(jointSaid(exercise, w)),
    story: ready(exercise.story),
    teaches: ready(exercise.teaches),
    weave: drawing,
    settings: sized(settings(exercise, w)),
    booth: [...sized(boothSettings(exercise, w)), [w.booth.knobs, ''], [w.booth.wireHere(WIRE_S), '']],
    look: look(exercise, w),
    limits: rules.map((r) => ({
      what: w.limits.measure(r.measure),
      limit: sized(limitSaid(r, profile.unit, w)),
      rule: `${ready(r.clause)}${r.status === 'memory' ? ` ${FOOTNOTE}` : ''}`,
    })),
    limitsBy: `${ready(profile.title)}, ${ready(profile.edition)}`,
    provenance: rules.some((r) => r.status === 'memory') ? w.provenance : '',
    judged: sized(judgedSaid(exercise, w)),
    cautions: w.cautions,
    block: [
      [w.block.exercise, exercise.name],
      [w.block.weave, w.pattern[weave.pattern]],
      [w.block.trainee, ''],
      [w.block.date, ''],
    ],
  };
}

function drawn({ demonstration: weave }: Exercise, w: SheetWords): ExercisePaper['weave'] {
  const { width_mm, height_mm } = weaveSvg(weave, WEAVE_SCALE);
  const fit = Math.min(1, MOST_WIDTH_MM / width_mm, MOST_HEIGHT_MM / height_mm);
  const scale = fit === 1 ? WEAVE_SCALE : Math.floor(10 * WEAVE_SCALE * fit) / 10;
  const straight = weave.pattern === 'straight';
  return {
    svg: weaveSvg(weave, scale).svg,
    width_mm: (width_mm * scale) / WEAVE_SCALE,
    caption: straight ? w.captions.straight(w.said(scale)) : w.captions.weave(w.said(scale)),
  };
}

function jointSaid({ joint, asked }: Exercise, w: SheetWords): string {
  const { said } = w;
  const j = w.joint;
  const plates =
    joint.plateA_mm === joint.plateB_mm
      ? j.plates(said(joint.plateA_mm))
      : j.platesOf(said(joint.plateA_mm), joint.kind === 'lap', said(joint.plateB_mm));
  const parts = [
    j.kind[joint.kind],
    `${plates} ${j.wide(said(joint.plateWidth_mm))}`,
    j.long(said(joint.length_mm)),
    ...(joint.gap_mm > 0 ? [j.gap(said(joint.gap_mm))] : []),
    ...(joint.startTemp_C === joint.ambient_C ? [] : [j.warm(said(joint.startTemp_C, 0))]),
    ...(joint.tabs ? [j.tabs] : []),
  ];
  const most = asked.atMost_mm === null ? '' : `, ${j.atMost(said(asked.atMost_mm))}`;
  return `${parts.join(', ')}; ${j.asked[asked.kind]} ${said(asked.size_mm)} mm${most}. ${j.up}`;
}

function settings(exercise: Exercise, w: SheetWords): [string, string][] {
  const { demonstration: weave, process, joint, asked } = exercise;
  const { said } = w;
  const h = w.hand;
  const laid = metalLaid_mm2(process, weave.travel_mmps);
  const holds = jointHolds_mm2(joint, sizeAsked(asked).leg_mm);
  const most =
    asked.atMost_mm === null
      ? null
      : said(jointHolds_mm2(joint, sizeAsked({ ...asked, size_mm: asked.atMost_mm }).leg_mm));
  const rows: [string, string][] = [
    [h.climb.name, h.climb.say(said(weave.travel_mmps), said(10 / weave.travel_mmps))],
    [h.tipToWork, `${said(weave.tipToWork_mm)} mm${freeIn(exercise, 'tipToWork_mm', w)}`],
    [
      h.workAngle.name,
      `${h.workAngle.say(said(weave.workAngle_deg, 0), joint.kind === 'lap')}${freeIn(exercise, 'workAngle_deg', w)}`,
    ],
    [
      h.travelAngle.name,
      `${h.travelAngle.say(said(weave.travelAngle_deg, 0))}${freeIn(exercise, 'travelAngle_deg', w)}`,
    ],
    [h.shelf.name, h.shelf.say(said(weave.shelf_s))],
    [h.metal.name, h.metal.say(said(laid), said(holds), most)],
  ];
  if (weave.reStrikes !== undefined && weave.reStrikes > 0) rows.push([h.crater.name, h.crater.say(weave.reStrikes)]);
  if (weave.pattern === 'straight') return rows;
  return [
    [h.beat.name, h.beat.say(said(weave.cyclesPerSecond, 2))],
    [h.width.name, h.width.say(said(weave.width_mm))],
    [h.reach.name, h.reach.say(said(weave.apex_mm))],
    [h.wait(w.toeName(joint.kind, 'B')), `${said(weave.pauseB_s, 2)} s`],
    [h.wait(w.toeName(joint.kind, 'A')), `${said(weave.pauseA_s, 2)} s`],
    ...rows,
  ];
}

/** Wire speed is metres a minute; six seconds are a tenth of one, so centimetres of wire are ten times the speed. */
export function boothSettings(exercise: Exercise, w: SheetWords = sheetWords): [string, string][] {
  const { process, settings: given, demonstration } = exercise;
  const { said } = w;
  const b = w.booth;
  const amps = wireState(process, demonstration.tipToWork_mm).current_A;
  const left = (setting: FreeSetting): string => freeIn(exercise, setting, w);
  const rows: [string, string][] =
    given !== 'own process'
      ? [
          [b.speed, `${said(process.feed_mpmin)} m/min${left('feed_mpmin')}`],
          [b.measured(WIRE_S), `${said((process.feed_mpmin * 100 * WIRE_S) / 60, 0)} cm`],
          [b.volts.name, `${b.volts.say(said(process.volts_V), said(amps, 0))}${left('volts_V')}`],
        ]
      : [[b.byEar.name, b.byEar.say]];
  return [
    ...rows,
    [b.wire, `${process.wire_mm.toFixed(1).replace('.', said(0.5).charAt(1))} mm${left('wire_mm')}`],
    [b.gas, `${w.gas[process.gas]}${left('gas')}`],
    [b.nozzle, `${said(process.nozzle_mm)} mm${left('nozzle_mm')}, ${tipSaid(process.tip_mm, w)}${left('tip_mm')}`],
  ];
}

/** What of a setting is left to the trainee, behind what is given. */
function freeIn(exercise: Exercise, setting: FreeSetting, { left, booth }: SheetWords): string {
  const range = leftRange(exercise, setting, left);
  if (range === null) return '';
  return Array.isArray(exercise.free?.[setting]) ? booth.freeOne(range) : booth.free(range);
}

function tipSaid(tip_mm: number, { said, booth: { tip } }: SheetWords): string {
  return tip_mm === 0 ? tip.flush : tip_mm > 0 ? tip.out(said(tip_mm)) : tip.in(said(-tip_mm));
}

/** What to look for while welding. Common practice, no source. */
function look({ demonstration: weave, joint }: Exercise, { look: l }: SheetWords): string[] {
  if (weave.pattern === 'straight') return [l.edges, l.shelf, l.front];
  return [l.edges, l.cross, l.leave, l.middle, ...(joint.kind === 'lap' ? [l.lap] : []), l.crater];
}

function judgedSaid({ judged, cuts_mm, aids, attempts, vary }: Exercise, w: SheetWords): string {
  const { said, judged: j } = w;
  const guides = [
    ...(aids.pacer ? [j.pacer] : []),
    ...(aids.beat ? [j.beat] : []),
    ...(aids.toeMarks ? [j.toeMarks] : []),
  ];
  const cuts = cuts_mm.length === 0 ? j.noCut : j.cuts(cuts_mm.map((y) => said(y)));
  return [
    `${j.span(said(judged.from_mm), said(judged.to_mm))}; ${cuts}.`,
    guides.length === 0 ? j.test : j.guides(guides),
    ...(attempts === undefined ? [] : [j.attempts(attempts)]),
    ...(vary === undefined ? [] : [j.vary]),
  ].join(' ');
}

/** Plates a rule is for are in the profile's own unit. */
function holdsFor(rule: Rule, { unit }: Profile, plate_mm: number): boolean {
  const plate = unit === 'in' ? plate_mm / MM_PER_INCH : plate_mm;
  return plate > rule.plates.over && (rule.plates.upTo === null || plate <= rule.plates.upTo);
}

/** A limit as it depends on what it depends on, in the profile's own unit. */
function limitSaid({ measure, limit, extent }: Rule, unit: Profile['unit'], w: SheetWords): string {
  return valueSaid(limit, measure === 'toe angle' ? '°' : unit, w) + extentSaid(extent, unit, w);
}

/** @param unit of the profile's lengths; an angle's own */
function valueSaid(limit: Rule['limit'], unit: Profile['unit'] | '°', { said, limits: l }: SheetWords): string {
  const value = (x: number): string => (unit === '°' ? `${said(x, 0)}°` : `${said(x, unit === 'in' ? 4 : 2)} ${unit}`);
  switch (limit.form) {
    case 'none':
      return l.none;
    case 'floor':
      return l.atLeast(value(limit.value));
    case 'line': {
      if (limit.slope === 0) return l.atMost(value(limit.base));
      const base = limit.base === 0 ? '' : `${value(limit.base)} + `;
      const most = limit.most === null ? '' : l.never(value(limit.most));
      return `${l.atMost(`${base}${said(limit.slope, 3)} × ${l.of[limit.of]}`)}${most}`;
    }
    case 'steps': {
      const rows = limit.rows.map(({ upTo, open, limit: most }) => {
        if (upTo === null) return l.beyond(value(most));
        return open ? l.under(value(most), value(upTo)) : l.upTo(value(most), value(upTo));
      });
      return l.by(rows.join(', '), l.of[limit.of]);
    }
  }
}

function extentSaid(extent: Rule['extent'], unit: Profile['unit'], { said, limits: l }: SheetWords): string {
  const percent = (share: number): string => `${said(100 * share, 0)} %`;
  switch (extent.kind) {
    case 'anywhere':
      return '';
    case 'short':
      return l.short(percent(extent.share));
    case 'accumulated':
      return l.deeper(said(extent.deeper, 3), said(extent.length), said(extent.per), unit);
    case 'share':
      return l.share(percent(extent.share));
  }
}
