import { type Exercise, exercises } from '../../../scoring/index.ts';
import { words } from '../../locale/index.ts';
import { oneDecimal } from '../../locale/numbers.ts';

const w = words.desk.editor;

export type FieldPath = keyof typeof w.fields;

/** How a field is filled in. */
export type Field =
  | { path: FieldPath; kind: 'text' | 'long' | 'name' | 'number' | 'numbers' | 'flag' }
  /** A number that may be left out. */
  | { path: FieldPath; kind: 'number or none' }
  /** From and to, both of which may be left out. */
  | { path: FieldPath; kind: 'band or none' }
  /** Several of a few, or none of them. */
  | { path: FieldPath; kind: 'some or none'; of: () => readonly (readonly [value: string | number, said: string])[] }
  | { path: FieldPath; kind: 'choice'; of: () => readonly (readonly [value: string | number, said: string])[] };

/** Read when they are shown: they are in the language on screen. */
const said =
  (...values: string[]) =>
  () =>
    values.map((value) => [value, w.choices[value] ?? value] as const);
const number = (path: FieldPath): Field => ({ path, kind: 'number' });
const flag = (path: FieldPath): Field => ({ path, kind: 'flag' });

const wires = () => [0.8, 0.9, 1, 1.2].map((mm) => [mm, oneDecimal(mm)] as const);
const gases = () => Object.entries(words.setting.gas);

/** Every field of an exercise that can be made, group by group; all else follows from these. */
export const groups: readonly { name: keyof typeof w.groups; fields: readonly Field[] }[] = [
  {
    name: 'words',
    fields: [
      { path: 'title', kind: 'text' },
      { path: 'name', kind: 'name' },
      { path: 'story', kind: 'long' },
      { path: 'teaches', kind: 'long' },
    ],
  },
  {
    name: 'joint',
    fields: [
      { path: 'joint.kind', kind: 'choice', of: () => Object.entries(words.setting.kind) },
      number('joint.plateA_mm'),
      number('joint.plateB_mm'),
      number('joint.plateWidth_mm'),
      number('joint.length_mm'),
      number('joint.gap_mm'),
      number('joint.startTemp_C'),
      flag('joint.tabs'),
    ],
  },
  {
    name: 'asked',
    fields: [
      { path: 'asked.kind', kind: 'choice', of: said('leg', 'throat') },
      number('asked.size_mm'),
      { path: 'asked.atMost_mm', kind: 'number or none' },
      { path: 'asked.edgeBack_mm', kind: 'number or none' },
    ],
  },
  {
    name: 'machine',
    fields: [
      { path: 'settings', kind: 'choice', of: said('fixed', 'within ranges', 'own process') },
      { path: 'process.wire_mm', kind: 'choice', of: wires },
      number('process.feed_mpmin'),
      number('process.volts_V'),
      { path: 'process.gas', kind: 'choice', of: gases },
      number('process.tip_mm'),
      number('process.nozzle_mm'),
    ],
  },
  {
    name: 'left',
    fields: [
      { path: 'free.feed_mpmin', kind: 'band or none' },
      { path: 'free.volts_V', kind: 'band or none' },
      { path: 'free.wire_mm', kind: 'some or none', of: wires },
      { path: 'free.gas', kind: 'some or none', of: gases },
      { path: 'free.tip_mm', kind: 'band or none' },
      { path: 'free.nozzle_mm', kind: 'band or none' },
      { path: 'free.tipToWork_mm', kind: 'band or none' },
      { path: 'free.workAngle_deg', kind: 'band or none' },
      { path: 'free.travelAngle_deg', kind: 'band or none' },
    ],
  },
  {
    name: 'weave',
    fields: [
      { path: 'demonstration.pattern', kind: 'choice', of: () => Object.entries(words.weave) },
      number('demonstration.cyclesPerSecond'),
      number('demonstration.width_mm'),
      number('demonstration.travel_mmps'),
      number('demonstration.pauseB_s'),
      number('demonstration.pauseA_s'),
      number('demonstration.apex_mm'),
      { path: 'demonstration.firstToe', kind: 'choice', of: said('A', 'B') },
      number('demonstration.tipToWork_mm'),
      number('demonstration.workAngle_deg'),
      number('demonstration.travelAngle_deg'),
      number('demonstration.shelf_s'),
    ],
  },
  {
    name: 'judged',
    fields: [
      number('judged.from_mm'),
      number('judged.to_mm'),
      { path: 'cuts_mm', kind: 'numbers' },
      { path: 'attempts', kind: 'number or none' },
    ],
  },
  {
    name: 'piece',
    fields: [
      { path: 'vary.gap_mm', kind: 'band or none' },
      { path: 'vary.startTemp_C', kind: 'band or none' },
      { path: 'vary.cuts_mm', kind: 'number or none' },
    ],
  },
  { name: 'guides', fields: [flag('aids.pacer'), flag('aids.beat'), flag('aids.toeMarks'), flag('aids.handRig')] },
];

/** Exercises a draft can begin from. */
export function beginnings(made: readonly Exercise[]): readonly Exercise[] {
  return [...exercises, ...made];
}

/** Whether a field has anything to say in this draft: ranges only where settings are free within them. */
export function isAsked(field: Field, draft: Exercise): boolean {
  return !field.path.startsWith('free.') || draft.settings === 'within ranges';
}

/** What stands in a field of a draft. */
export function valueAt(draft: Exercise, path: FieldPath): unknown {
  return path.split('.').reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], draft);
}
