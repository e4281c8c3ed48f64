/**
 * What welders and handbooks know to happen when one thing is changed. `more` is the case whose quantity must be larger, by at least
 * `margin`. Sources: [GW] = GMAW handbook trend table (G-W, GMAW-FCAW handbook 2018, p. 84); [ESAB] = MIG handbook ch. 7;
 * [MAN] = makers' welder manuals; "practice" = common practice, no source.
 */
import { after, hand, type Summary, type TendencyCase } from './summary.ts';

export interface Tendency {
  name: string;
  source: string;
  quantity: keyof Summary;
  more: TendencyCase;
  less: TendencyCase;
  margin: number;
  /** A larger margin that was asked and is not held; `margin` is then what the model does show, and DEVELOPERS.md says so. */
  asked?: number;
  /** A cell size at which it misses its margin, and what the difference comes to there: said in the README's limits, and tested to stay so. */
  notHeldAt?: { cell_mm: number; between: readonly [number, number] };
  /** The calibration was set to show this (tests/studies/calibration): held, but not predicted. */
  calibratedOn?: true;
}

const base: TendencyCase = {};
const straight: TendencyCase = { weave: { pattern: 'straight', travel_mmps: 2.2 } };
const weave22: TendencyCase = { weave: { travel_mmps: 2.2 } };
const back: TendencyCase = { weave: { apex_mm: -3 } };
const cold: TendencyCase = { process: { volts_V: 16, feed_mpmin: 4 } };
const hot: TendencyCase = { process: { volts_V: 19.5, feed_mpmin: 5.5 } };
const coldEqualMetal: TendencyCase = { process: { volts_V: 15.5, feed_mpmin: 3.7 }, weave: { travel_mmps: 1.28 } };
const hotEqualMetal: TendencyCase = { process: { volts_V: 19.5, feed_mpmin: 5.5 } };
const farTip: TendencyCase = { weave: { tipToWork_mm: 19 } };
const noPause: TendencyCase = { weave: { pauseA_s: 0, pauseB_s: 0 } };
const noPauseB: TendencyCase = { weave: { pauseB_s: 0 } };
const lowVolts: TendencyCase = { process: { volts_V: 17 } };
const highVolts: TendencyCase = { process: { volts_V: 20.5 } };
const slow: TendencyCase = { weave: { travel_mmps: 1.4 } };
const fast: TendencyCase = { weave: { travel_mmps: 3.2 } };
const warm: TendencyCase = { joint: { startTemp_C: 250 } };
const thin: TendencyCase = { joint: { plateA_mm: 5, plateB_mm: 5 } };
const thick: TendencyCase = { joint: { plateA_mm: 12, plateB_mm: 12 } };
const gap: TendencyCase = { joint: { gap_mm: 1.5 } };
const lap: TendencyCase = { joint: { kind: 'lap' } };
const wide: TendencyCase = { weave: { width_mm: 7 } };
const feedUp: TendencyCase = { process: { feed_mpmin: 6 } };
const drift: TendencyCase = { faults: { driftU_mm: 6 } };
/** Long run on narrow plates against wide ones: the top end runs hot. */
const longNarrow: TendencyCase = { joint: { length_mm: 120, plateWidth_mm: 30 }, between: [103, 112] };
const longNarrowLow: TendencyCase = { ...longNarrow, between: [22, 46] };
/** Straight runs down and up the joint at the same travel. */
const down: TendencyCase = {
  poses: () =>
    [...hand({ pattern: 'straight', travel_mmps: 2.5, length_mm: 50, shelf_s: 0 })].map((p) => ({
      ...p,
      y_mm: 58 - p.y_mm,
    })),
  process: { feed_mpmin: 5 },
  between: [20, 40],
};
const up: TendencyCase = { weave: { pattern: 'straight', travel_mmps: 2.5 }, between: [20, 40] };
/** Stop at 26 mm, cool for 20 s; restart in the crater, or ahead of it. */
const restartInCrater: TendencyCase = {
  poses: () => after(hand({ length_mm: 22 }), 20, hand({ start_mm: 25, length_mm: 28 })),
  process: { feed_mpmin: 5 },
  between: [24, 28],
};
/** The same with the arc held in the crater for a moment before the hand goes on. */
export const restartAfterWait: TendencyCase = {
  poses: () => after(hand({ length_mm: 22 }), 20, [...wait(0.6), ...hand({ start_mm: 25, length_mm: 28 })]),
  process: { feed_mpmin: 5 },
  between: [22, 32],
};
const restartAhead: TendencyCase = {
  poses: () => after(hand({ length_mm: 22 }), 20, hand({ start_mm: 28.5, length_mm: 26, shelf_s: 0 })),
  process: { feed_mpmin: 5 },
  between: [24, 28],
};
function* wait(time_s: number) {
  for (let n = 0; n < time_s * 100; n++)
    yield { u_mm: 0, y_mm: 25.5, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger: true };
}
/** Crater left open, or filled by two short re-strikes. */
function* restrikes(times: number) {
  const at = { u_mm: 0, y_mm: 42.5, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8 };
  for (let k = 0; k < times; k++) {
    for (let n = 0; n < 35; n++) yield { ...at, trigger: true };
    for (let n = 0; n < 70; n++) yield { ...at, trigger: false };
  }
}
const craterOpen: TendencyCase = {
  poses: () => after(hand({ length_mm: 40 }), 0, restrikes(0)),
  process: { feed_mpmin: 5 },
  between: [42, 44],
};
const craterFilled: TendencyCase = {
  poses: () => after(hand({ length_mm: 40 }), 0, restrikes(2)),
  process: { feed_mpmin: 5 },
  between: [42, 44],
};

const ALL: readonly Tendency[] = [
  {
    name: 'a weave has longer legs than a straight run',
    source: 'practice',
    quantity: 'leg',
    more: weave22,
    less: straight,
    margin: 0.5,
  },
  {
    name: 'a straight run is more convex than a weave',
    source: 'practice',
    quantity: 'convexity',
    more: straight,
    less: weave22,
    margin: 0.6,
    calibratedOn: true,
  },
  {
    name: 'crossing on the front of the puddle ties the root in deeper',
    source: 'practice',
    quantity: 'root',
    more: base,
    less: back,
    margin: 0.25,
    calibratedOn: true,
  },
  {
    name: 'riding back in the puddle crowns',
    source: 'practice',
    quantity: 'convexity',
    more: back,
    less: base,
    margin: 0.2,
  },
  {
    name: 'more volts and feed at equal travel: deeper at the root',
    source: '[GW] feed',
    quantity: 'root',
    more: hot,
    less: cold,
    margin: 0.3,
    notHeldAt: { cell_mm: 0.5, between: [0.2, 0.3] },
    calibratedOn: true,
  },
  {
    name: 'more volts and feed at equal travel: crowns more',
    source: '[GW] feed',
    quantity: 'convexity',
    more: hot,
    less: cold,
    margin: 0.25,
    calibratedOn: true,
  },
  {
    name: 'more volts and feed: deeper into the walls',
    source: '[GW] feed',
    quantity: 'depthA',
    more: hot,
    less: cold,
    margin: 0.4,
  },
  {
    name: 'at equal metal the colder root is shorter',
    source: 'practice',
    quantity: 'root',
    more: hotEqualMetal,
    less: coldEqualMetal,
    margin: 0.3,
  },
  {
    name: 'at equal metal the colder bead overlaps more',
    source: 'practice',
    quantity: 'overlap',
    more: coldEqualMetal,
    less: hotEqualMetal,
    margin: 0.1,
    notHeldAt: { cell_mm: 0.5, between: [-0.05, 0.06] },
  },
  {
    name: 'a farther tip takes fewer amps',
    source: '[GW] stick-out; melting-rate balance',
    quantity: 'current',
    more: base,
    less: farTip,
    margin: 8,
  },
  {
    name: 'a farther tip leaves the root colder',
    source: '[GW] stick-out',
    quantity: 'root',
    more: base,
    less: farTip,
    margin: 0.15,
  },
  {
    name: 'a farther tip melts the walls less',
    source: '[GW] stick-out',
    quantity: 'depthA',
    more: base,
    less: farTip,
    margin: 0.2,
  },
  {
    name: 'a farther tip: shorter legs',
    source: 'practice',
    quantity: 'leg',
    more: base,
    less: farTip,
    margin: 0.02,
    asked: 0.06,
  },
  {
    name: 'slow travel crowns',
    source: '[MAN] piles metal',
    quantity: 'convexity',
    more: slow,
    less: base,
    margin: 0.6,
  },
  {
    name: 'faster travel lays a smaller bead',
    source: '[GW] travel',
    quantity: 'leg',
    more: base,
    less: fast,
    margin: 0.25,
  },
  {
    name: 'faster travel is flatter when weaving',
    source: 'practice',
    quantity: 'convexity',
    more: base,
    less: fast,
    margin: 0.6,
  },
  {
    name: 'a faster straight run is narrower',
    source: '[GW] travel',
    quantity: 'leg',
    more: straight,
    less: { weave: { pattern: 'straight', travel_mmps: 3.2 } },
    margin: 0.2,
  },
  {
    name: 'volts alone: wider',
    source: '[GW] volts',
    quantity: 'faceWidth',
    more: highVolts,
    less: lowVolts,
    margin: 0.1,
    asked: 0.2,
  },
  {
    name: 'volts alone: flatter',
    source: '[GW] volts',
    quantity: 'convexity',
    more: lowVolts,
    less: highVolts,
    margin: 0.2,
  },
  { name: 'feed alone: taller', source: '[GW] feed', quantity: 'convexity', more: feedUp, less: base, margin: 0.6 },
  { name: 'feed alone: more amps', source: '[GW] feed', quantity: 'current', more: feedUp, less: base, margin: 12 },
  {
    name: 'no pause at the toes: shorter legs',
    source: '[ESAB] pauses at the walls',
    quantity: 'leg',
    more: base,
    less: noPause,
    margin: 0.4,
  },
  {
    name: 'no pause at the toes: crowned',
    source: '[MAN] pause against convexity',
    quantity: 'convexity',
    more: noPause,
    less: base,
    margin: 0.5,
  },
  {
    name: 'pause left out at one toe: that leg shorter',
    source: 'practice',
    quantity: 'legB',
    more: base,
    less: noPauseB,
    margin: 0.7,
  },
  {
    name: 'pause left out at one toe: that wall melted less',
    source: 'practice',
    quantity: 'depthB',
    more: base,
    less: noPauseB,
    margin: 0.1,
  },
  { name: 'a wider weave: longer legs', source: 'practice', quantity: 'leg', more: wide, less: base, margin: 0.7 },
  { name: 'a wider weave: flatter', source: 'practice', quantity: 'convexity', more: base, less: wide, margin: 0.7 },
  { name: 'warm plates: deeper root', source: 'practice', quantity: 'root', more: warm, less: base, margin: 0.08 },
  { name: 'warm plates: deeper walls', source: 'practice', quantity: 'depthB', more: warm, less: base, margin: 0.15 },
  {
    name: 'thicker plate: colder root',
    source: 'practice; 2-D and 3-D heat flow',
    quantity: 'root',
    more: thin,
    less: thick,
    margin: 0.08,
  },
  {
    name: 'thicker plate: walls melted less',
    source: 'practice; 2-D and 3-D heat flow',
    quantity: 'depthA',
    more: thin,
    less: thick,
    margin: 0.08,
  },
  {
    name: 'a gap takes effective throat',
    source: 'AWS D1.1: leg grows by the gap',
    quantity: 'throat',
    more: base,
    less: gap,
    margin: 0.6,
  },
  {
    name: 'a lap melts its edge back, a tee has none',
    source: 'practice',
    quantity: 'edgeBack',
    more: lap,
    less: base,
    margin: 0.3,
  },
  {
    name: 'the edge plate of a lap melts deeper than its back plate',
    source: 'practice',
    quantity: 'depthB',
    more: lap,
    less: base,
    margin: 0.2,
  },
  {
    name: 'the hand drifts to one side: that leg longer',
    source: 'geometry',
    quantity: 'legA',
    more: drift,
    less: base,
    margin: 1,
  },
  {
    name: 'the hot top end of a long run on narrow plates goes flatter',
    source: 'practice',
    quantity: 'convexity',
    more: longNarrowLow,
    less: longNarrow,
    margin: 0.15,
  },
  {
    name: 'a cold start leaves the root short where the settled run ties it in',
    source: 'practice',
    quantity: 'root',
    more: base,
    less: { between: [6, 12] },
    margin: 0.4,
  },
  {
    name: 'vertical-down leaves the root shallower than vertical-up',
    source: 'practice',
    quantity: 'root',
    more: up,
    less: down,
    margin: 0.3,
  },
  {
    name: 'vertical-down is flatter than vertical-up',
    source: 'practice',
    quantity: 'convexity',
    more: up,
    less: down,
    margin: 0.5,
  },
  {
    name: 'a restart in the crater fills it, one ahead of it leaves a hollow',
    source: 'practice',
    quantity: 'throat',
    more: restartInCrater,
    less: restartAhead,
    margin: 0.5,
  },
  {
    name: 'two short re-strikes fill the crater',
    source: 'practice',
    quantity: 'throat',
    more: craterFilled,
    less: craterOpen,
    margin: 0.4,
    notHeldAt: { cell_mm: 0.5, between: [0.25, 0.4] },
  },
];

/** What the model shows without having been told. */
export const PREDICTED: readonly Tendency[] = ALL.filter((t) => !t.calibratedOn);

/** What the free parameters were chosen by; that it holds says nothing about the model. */
export const CALIBRATED: readonly Tendency[] = ALL.filter((t) => t.calibratedOn);
