import type { OwnKind } from '../schema/what-is.ts';

/** What the class sheet says, in English; the type of every other language. */
export const classWords = {
  head: {
    trainee: 'trainee',
    exercise: 'exercise',
    device: 'device',
    attempts: 'attempts',
    within: 'within',
    first: 'first',
    latest: 'latest',
    'median of last 5': 'median of last 5',
    spread: 'spread',
    'common fault': 'common fault',
  },
  none: 'none',
  span: (from: string | number, to: string | number): string => `${from} to ${to}`,
  verdict: {
    within: 'within',
    outside: 'outside',
    'too close to call': 'too close to call',
    'no verdict': 'no verdict',
  },
  trainees: (n: number): string => count(n, 'trainee'),
  files: (n: number): string => count(n, 'file'),
  attempts: (n: number): string => count(n, 'attempt'),
  notCounted: (n: number): string => `${n} kept and not counted`,
  unread: (n: number): string => `${n} that could not be read`,
  counted: (n: number): string => `${n} counted`,
  noneCounts: 'No attempt counts, so nothing can be said of a class.',
  oneWithout: 'One trainee, without a fault among the latest attempts.',
  oneOften: (fault: string, attempts: string): string =>
    `One trainee. Most often first among the latest attempts: ${fault}, ${attempts}.`,
  noCommon: 'No two trainees share a fault among their latest attempts.',
  common: (fault: string, trainees: string, attempts: string): string =>
    `Common fault of the class: ${fault}, ${trainees}, ${attempts} among the latest.`,
  firstRule:
    'Chosen from each trainee’s latest attempt: root faults first, then beads that are not there, toes, metal, shape, hand; within a kind the fault that has come back most often, then the reading farthest outside its limit. Nobody is ranked.',
  title: 'Class sheet',
  seeFirst: {
    three: 'The three to see first',
    fewer: 'To see first',
    none: 'Nobody has a fault to be seen first.',
    nobody: 'Nobody to see first yet.',
  },
  times: (times: number, of: number, device: string): string => `${times} of the last ${of}, ${device}`,
  lists: {
    notCounted: 'Kept, not counted',
    mismatched: 'Counted, though something does not fit',
    unnamed: 'No trainee in the file name',
    bad: 'Could not be read',
    others: 'No attempts, left alone',
    folders: 'Not looked into',
    notes: 'To know',
  },
  kinds: {
    recording: 'a recording',
    exercise: 'an exercise',
    profile: 'acceptance limits',
    coupon: 'marks of a real coupon',
    result: 'a result',
    logbook: 'a logbook',
  } satisfies Record<OwnKind, string>,
  block: { class: 'Class', days: 'Days', exercise: 'Exercise', instructor: 'Instructor, initials' },
  same: (what: string): string => `In every row: ${what}.`,
  coupon: 'real coupon',
  weeks: 'Change over weeks',
  weeksRule: 'Median of the week’s trend numbers, and how many of its attempts were within.',
  from: (monday: string): string => `from ${monday}`,
  within: (n: number, of: number): string => `${n} of ${of}`,
  notModelled: (what: string): string => `Not modelled: ${what}.`,
};
export type ClassWords = typeof classWords;

function count(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}
