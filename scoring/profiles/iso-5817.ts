import type { Extent, Limit, Profile, Rule } from '../schema/profile.ts';

/**
 * ISO 5817 quality levels for fusion-welded joints in steel: the rows a fillet can break. Values of the 2014 edition as an open
 * secondary implementation has them, read over four files; rows from memory are marked.
 */

type Level = 'B' | 'C' | 'D';

const SOURCE =
  'ISO 5817:2014 as restated in an open implementation, cross-checked over its four files. The 2023 edition renumbers; its fillet limits are believed unchanged (from memory).';

const NOTES = [
  'Short imperfections: at most 25 mm in any 100 mm of weld, or 25 % of the length where the weld is shorter (from memory).',
  'Where a level permits nothing, a reading that finds nothing is within.',
  '2025 limits an end crater pipe that thins the weld; here the depth of the crater below the face beside it is held to it. Plate over 3 mm as in an open copy of Table 1 (2014), thinner from memory.',
  'h is the height of the imperfection, t the plate, a the nominal throat, b the width of the face.',
];

const anywhere: Extent = { kind: 'anywhere' };
const short: Extent = { kind: 'short', share: 0.25, length: 25, per: 100 };
const none: Limit = { form: 'none' };
const all = { over: 0, upTo: null };
const thin = { over: 0, upTo: 3 };
const thick = { over: 3, upTo: null };

function line(base: number, slope: number, of: 'plate' | 'throat' | 'face', most: number | null): Limit {
  return { form: 'line', base, slope, of, most };
}

interface Row {
  ref: string;
  title: string;
  measure: Rule['measure'];
  plates: Rule['plates'];
  status?: Rule['status'];
  /** Limit and extent per level; null: the level sets no limit. */
  levels: Record<Level, [Limit, Extent] | null>;
}

const rows: readonly Row[] = [
  {
    ref: '5011/5012',
    title: 'undercut, plate up to 3 mm',
    measure: 'undercut',
    plates: thin,
    levels: {
      D: [line(0, 0.2, 'plate', null), short],
      C: [line(0, 0.1, 'plate', null), short],
      B: [none, anywhere],
    },
  },
  {
    ref: '5011/5012',
    title: 'undercut, plate over 3 mm',
    measure: 'undercut',
    plates: thick,
    levels: {
      D: [line(0, 0.2, 'plate', 1), anywhere],
      C: [line(0, 0.1, 'plate', 0.5), anywhere],
      B: [line(0, 0.05, 'plate', 0.5), anywhere],
    },
  },
  {
    ref: '503',
    title: 'convexity',
    measure: 'convexity',
    plates: all,
    levels: {
      D: [line(1, 0.25, 'face', 5), anywhere],
      C: [line(1, 0.15, 'face', 4), anywhere],
      B: [line(1, 0.1, 'face', 3), anywhere],
    },
  },
  {
    ref: '505',
    title: 'toe angle',
    measure: 'toe angle',
    plates: all,
    levels: {
      D: [{ form: 'floor', value: 90 }, anywhere],
      C: [{ form: 'floor', value: 100 }, anywhere],
      B: [{ form: 'floor', value: 110 }, anywhere],
    },
  },
  {
    ref: '506',
    title: 'overlap',
    measure: 'overlap',
    plates: all,
    levels: { D: [line(0, 0.2, 'face', null), anywhere], C: [none, anywhere], B: [none, anywhere] },
  },
  {
    ref: '512',
    title: 'unequal legs',
    measure: 'unequal legs',
    plates: all,
    levels: {
      D: [line(2, 0.2, 'throat', null), anywhere],
      C: [line(2, 0.15, 'throat', null), anywhere],
      B: [line(1.5, 0.15, 'throat', null), anywhere],
    },
  },
  {
    ref: '5213',
    title: 'throat too small, plate up to 3 mm',
    measure: 'throat short',
    plates: thin,
    levels: {
      D: [line(0.2, 0.1, 'throat', null), short],
      C: [line(0.2, 0, 'throat', null), short],
      B: [none, anywhere],
    },
  },
  {
    ref: '5213',
    title: 'throat too small, plate over 3 mm',
    measure: 'throat short',
    plates: thick,
    levels: { D: [line(0.3, 0.1, 'throat', 2), short], C: [line(0.3, 0.1, 'throat', 1), short], B: [none, anywhere] },
  },
  {
    ref: '5214',
    title: 'throat too large',
    measure: 'throat over',
    plates: all,
    levels: { D: null, C: [line(1, 0.2, 'throat', 4), anywhere], B: [line(1, 0.15, 'throat', 3), anywhere] },
  },
  {
    ref: '401',
    title: 'lack of fusion to the plate',
    measure: 'fusion to plate',
    plates: all,
    levels: {
      D: [{ form: 'floor', value: 0 }, anywhere],
      C: [{ form: 'floor', value: 0 }, anywhere],
      B: [{ form: 'floor', value: 0 }, anywhere],
    },
  },
  {
    ref: '4013',
    title: 'lack of fusion at the root',
    measure: 'root fusion',
    plates: all,
    levels: {
      D: [{ form: 'floor', value: 0 }, anywhere],
      C: [{ form: 'floor', value: 0 }, anywhere],
      B: [{ form: 'floor', value: 0 }, anywhere],
    },
  },
  {
    ref: '2025',
    title: 'end crater, depth below the face, plate up to 3 mm',
    measure: 'crater depth',
    plates: thin,
    status: 'memory',
    levels: { D: [line(0, 0.2, 'plate', null), anywhere], C: [none, anywhere], B: [none, anywhere] },
  },
  {
    ref: '2025',
    title: 'end crater, depth below the face, plate over 3 mm',
    measure: 'crater depth',
    plates: thick,
    levels: {
      D: [line(0, 0.2, 'plate', 2), anywhere],
      C: [line(0, 0.1, 'plate', 1), anywhere],
      B: [none, anywhere],
    },
  },
  {
    ref: '617',
    title: 'root gap, plate over 3 mm',
    measure: 'gap',
    plates: thick,
    levels: {
      D: [line(1, 0.3, 'throat', 4), anywhere],
      C: [line(0.5, 0.2, 'throat', 3), anywhere],
      B: [line(0.5, 0.1, 'throat', 2), anywhere],
    },
  },
];

/** The rules of the rows for one level. */
function rulesOf(level: Level, only: (row: Row) => boolean = () => true): Rule[] {
  const rules: Rule[] = [];
  for (const row of rows) {
    const at = row.levels[level];
    if (at === null || !only(row)) continue;
    rules.push({
      measure: row.measure,
      clause: `ISO 5817-${level} ${row.ref}: ${row.title}`,
      status: row.status ?? 'verified',
      plates: row.plates,
      limit: at[0],
      extent: at[1],
    });
  }
  return rules;
}

function profile(level: Level): Profile {
  return {
    format: 'toehold-profile',
    version: 1,
    name: `iso-5817-${level.toLowerCase()}`,
    title: `ISO 5817 quality level ${level}`,
    standard: 'ISO 5817',
    edition: '2014',
    unit: 'mm',
    source: SOURCE,
    notes: NOTES,
    rules: rulesOf(level),
  };
}

export const isoB = profile('B');
export const isoC = profile('C');
export const isoD = profile('D');

/** References ISO 15614-1 level 2 takes from level C; the rest from B. */
const FROM_C = new Set(['5011/5012', '503', '505', '5214']);

/** The mix a welding procedure test uses: level B, but C for undercut, convexity, toe angle and excess throat. */
export const isoProcedureTest: Profile = {
  format: 'toehold-profile',
  version: 1,
  name: 'iso-15614-1-level-2',
  title: 'ISO 5817 as ISO 15614-1 level 2 mixes it',
  standard: 'ISO 15614-1 with ISO 5817',
  edition: '2017 with 2014',
  unit: 'mm',
  source: `${SOURCE} The mix (B, but C for 5011/5012, 502 to 505 and 5214) is from ISO 15614-1:2017, verified.`,
  notes: NOTES,
  rules: [...rulesOf('B', (row) => !FROM_C.has(row.ref)), ...rulesOf('C', (row) => FROM_C.has(row.ref))],
};

/** References ISO 9606-1 takes from level C, of those a fillet can break; the rest from B. */
const WELDER_FROM_C = new Set(['5011/5012', '503', '5214']);

/** The mix a welder qualification test uses: level B, but C for undercut, excess convexity and excess throat. From memory throughout. */
export const isoWelderTest: Profile = {
  format: 'toehold-profile',
  version: 1,
  name: 'iso-9606-1',
  title: 'ISO 5817 as ISO 9606-1 mixes it for welder tests',
  standard: 'ISO 9606-1 with ISO 5817',
  edition: '2012 with 2014',
  unit: 'mm',
  source: `${SOURCE} The mix (B, but C for undercut 501, excess weld metal 502, excess convexity 503, excess penetration 504 and excess throat 5214) is from memory of ISO 9606-1:2012, clause 7: check it in the standard.`,
  notes: [
    'From memory: which rows are taken from level C is not verified against ISO 9606-1, and every line says so.',
    'A test piece is also broken or cut under ISO 9606-1, and witnessed; nothing here qualifies anybody.',
    ...NOTES,
  ],
  rules: [
    ...rulesOf('B', (row) => !WELDER_FROM_C.has(row.ref)),
    ...rulesOf('C', (row) => WELDER_FROM_C.has(row.ref)),
  ].map((rule) => ({ ...rule, status: 'memory' as const })),
};
