import type { Profile, Rule } from '../schema/profile.ts';

/**
 * AWS D1.1 fillet profile, undercut and undersize. The inch and the SI table of the code are two tables: 1/16 in is not 2 mm, and
 * neither profile below is computed from the other. Each value says whether it was verified in a published page or is from memory.
 */

const SOURCE =
  'AWS D1.1/D1.1M as restated in open secondary sources: undersize, static undercut, fusion and craters from Table 6.1 of the 2004 edition; convexity by width of face, and cyclic undercut, from memory of the 2010 and later tables.';

const NOTES = [
  'No allowance over a length is given on pieces shorter than 12 in (300 mm): the coupon is too short to spread it over.',
  'Short-circuiting transfer is not prequalified by D1.1 (from memory); a qualified procedure is needed for production.',
  'Faces may be slightly convex, flat or slightly concave.',
];

const all = { over: 0, upTo: null };

type Table = 'inch' | 'SI';

function fusionRules(): Rule[] {
  return [
    {
      measure: 'root fusion',
      clause: 'D1.1 Table 6.1 (2): thorough fusion to base metal, read at the root',
      status: 'verified',
      plates: all,
      limit: { form: 'floor', value: 0 },
      extent: { kind: 'anywhere' },
    },
    {
      measure: 'fusion to plate',
      clause: 'D1.1 Table 6.1 (2): thorough fusion to base metal, read along each plate',
      status: 'verified',
      plates: all,
      limit: { form: 'floor', value: 0 },
      extent: { kind: 'anywhere' },
    },
    {
      measure: 'overlap',
      clause: 'D1.1 5.24 / Figure 5.4: no overlap',
      status: 'verified',
      plates: all,
      limit: { form: 'none' },
      extent: { kind: 'anywhere' },
    },
    {
      measure: 'crater short',
      clause: 'D1.1 Table 6.1 (3): craters filled, read as filled to the size asked',
      status: 'verified',
      plates: all,
      limit: { form: 'none' },
      extent: { kind: 'anywhere' },
      note: 'Craters filled: Table 6.1 of the 2004 edition (8.1 of later ones). To the specified size, ends outside the effective length left out: from memory.',
    },
  ];
}

const convexity: Record<Table, Rule> = {
  inch: {
    measure: 'convexity',
    clause: 'D1.1 Table 5.10 (2020: 7.9), inch: convexity by width of face',
    status: 'memory',
    plates: all,
    limit: {
      form: 'steps',
      of: 'face',
      rows: [
        { upTo: 0.3125, open: false, limit: 0.0625 },
        { upTo: 1, open: true, limit: 0.125 },
        { upTo: null, open: false, limit: 0.1875 },
      ],
    },
    extent: { kind: 'anywhere' },
  },
  SI: {
    measure: 'convexity',
    clause: 'D1.1 Table 5.10 (2020: 7.9), SI: convexity by width of face',
    status: 'memory',
    plates: all,
    limit: {
      form: 'steps',
      of: 'face',
      rows: [
        { upTo: 8, open: false, limit: 2 },
        { upTo: 25, open: true, limit: 3 },
        { upTo: null, open: false, limit: 5 },
      ],
    },
    extent: { kind: 'anywhere' },
  },
};

const legShort: Record<Table, Rule> = {
  inch: {
    measure: 'leg short',
    clause: 'D1.1 Table 6.1 (6), inch: undersize by nominal leg, over at most 10 % of the length',
    status: 'verified',
    plates: all,
    limit: {
      form: 'steps',
      of: 'leg',
      rows: [
        { upTo: 0.1875, open: false, limit: 0.0625 },
        { upTo: 0.25, open: false, limit: 0.09375 },
        { upTo: null, open: false, limit: 0.125 },
      ],
    },
    extent: { kind: 'share', share: 0.1, piece: 12 },
  },
  SI: {
    measure: 'leg short',
    clause: 'D1.1 Table 6.1 (6), SI: undersize by nominal leg, over at most 10 % of the length',
    status: 'verified',
    plates: all,
    limit: {
      form: 'steps',
      of: 'leg',
      rows: [
        { upTo: 5, open: false, limit: 2 },
        { upTo: 6, open: false, limit: 2.5 },
        { upTo: null, open: false, limit: 3 },
      ],
    },
    extent: { kind: 'share', share: 0.1, piece: 300 },
  },
};

function undercut(table: Table, loading: 'static' | 'cyclic'): Rule[] {
  const inch = table === 'inch';
  if (loading === 'cyclic') {
    return [
      {
        measure: 'undercut',
        clause: `D1.1 Table 6.1 (7), ${table}: cyclic, primary tension across the weld`,
        status: 'memory',
        plates: all,
        limit: { form: 'line', base: inch ? 0.01 : 0.25, slope: 0, of: 'plate', most: null },
        extent: { kind: 'anywhere' },
      },
    ];
  }
  const thin: Rule = {
    measure: 'undercut',
    clause: `D1.1 Table 6.1 (7), ${table}: static, plate under ${inch ? '1 in' : '25 mm'}`,
    status: 'verified',
    plates: { over: 0, upTo: inch ? 0.9999 : 24.999 },
    limit: { form: 'line', base: inch ? 0.03125 : 1, slope: 0, of: 'plate', most: null },
    extent: {
      kind: 'accumulated',
      deeper: inch ? 0.0625 : 2,
      length: inch ? 2 : 50,
      per: inch ? 12 : 300,
    },
  };
  return [thin];
}

function table(which: Table, loading: 'static' | 'cyclic'): Profile {
  return {
    format: 'toehold-profile',
    version: 1,
    name: `aws-d11-${loading}-${which.toLowerCase()}`,
    title: `AWS D1.1 fillet, ${loading === 'static' ? 'statically' : 'cyclically'} loaded, ${which === 'inch' ? 'inch' : 'SI'} table`,
    standard: 'AWS D1.1/D1.1M',
    edition: '2004 and 2010 onwards, see source',
    unit: which === 'inch' ? 'in' : 'mm',
    source: SOURCE,
    notes: NOTES,
    rules: [...fusionRules(), convexity[which], ...undercut(which, loading), legShort[which]],
  };
}

export const awsStaticSi = table('SI', 'static');
export const awsStaticInch = table('inch', 'static');
export const awsCyclicSi = table('SI', 'cyclic');
export const awsCyclicInch = table('inch', 'cyclic');
