import type { Profile } from '../schema/profile.ts';

const all = { over: 0, upTo: null };

/**
 * A school's own limits, for first runs: joined, of the size asked, not grossly crowned, no lapped toes. Tern Dock workshop and its limits are
 * invented for this project.
 */
export const firstRuns: Profile = {
  format: 'toehold-profile',
  version: 1,
  name: 'tern-dock-first-runs',
  title: 'Tern Dock first runs',
  standard: "a school's own limits (invented)",
  edition: '1',
  unit: 'mm',
  source: 'Tern Dock workshop, a made-up boatyard school; the limits are invented for practice and follow no code.',
  notes: ['For the first straight runs only: the face may stand higher than a code would let it.'],
  rules: [
    {
      measure: 'root fusion',
      clause: 'Tern Dock: tied in at the root',
      status: 'memory',
      plates: all,
      limit: { form: 'floor', value: 0 },
      extent: { kind: 'anywhere' },
    },
    {
      measure: 'leg short',
      clause: 'Tern Dock: at most 0.5 mm under the leg asked',
      status: 'memory',
      plates: all,
      limit: { form: 'line', base: 0.5, slope: 0, of: 'leg', most: null },
      extent: { kind: 'anywhere' },
    },
    {
      measure: 'overlap',
      clause: 'Tern Dock: at most 1.5 mm of metal resting on cold plate',
      status: 'memory',
      plates: all,
      limit: { form: 'line', base: 1.5, slope: 0, of: 'face', most: null },
      extent: { kind: 'anywhere' },
    },
    {
      measure: 'convexity',
      clause: 'Tern Dock: crown of a straight run at most 3 mm',
      status: 'memory',
      plates: all,
      limit: { form: 'line', base: 3, slope: 0, of: 'face', most: null },
      extent: { kind: 'anywhere' },
    },
    {
      measure: 'undercut',
      clause: 'Tern Dock: undercut at most 0.5 mm',
      status: 'memory',
      plates: all,
      limit: { form: 'line', base: 0.5, slope: 0, of: 'plate', most: null },
      extent: { kind: 'anywhere' },
    },
  ],
};
