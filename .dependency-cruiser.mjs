/**
 * Which way imports may go. Read by `tests/walls/walls.test.ts`; breaches of today stand in tests/walls/known.json, a list that may only
 * shrink. Types count: a type that points up is a room that knows too much.
 */
const DOORS = {
  engine: '^engine/(index|solvers/index)\\.ts$',
  scoring: '^scoring/(index|node/index|browser)\\.ts$',
};
/** Rooms of the engine, ground floor first: each may know those before it. */
const ENGINE_FLOORS = [
  'numerics/',
  'input/',
  'physics/',
  'grid/',
  'kernel/',
  'hand/',
  'state/',
  '(arc|heat|pool)/',
  'output/',
  'cold-piece\\.ts',
  'simulation\\.ts',
  'replay/',
  'solvers/',
];
const STAGES = ['arc', 'heat', 'pool'];
/** Rooms of scoring, ground floor first: each may know those before it. */
const FLOORS = [
  'schema/',
  '(exercises|profiles)/',
  'attempt/',
  'measures/',
  'lines/',
  'verdict/',
  'advice/',
  'words/',
  'score\\.ts',
  '(draw|macro|trials|range)/',
  'class/',
  'papers/',
  'node/',
];
/** Those that need a page. Signals without their hooks and matter-js's mechanics (the hand rig) run anywhere. */
const BROWSER_PACKAGES = '^node_modules/(pixi\\.js|preact|@preact/signals|idb)/';

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [
    {
      name: 'engine-stands-alone',
      comment: 'The engine imports nothing: no package, no Node, no other part.',
      severity: 'error',
      from: { path: '^engine/', pathNot: '^engine/kernel/simd/' },
      to: { pathNot: '^engine/' },
    },
    ...ENGINE_FLOORS.slice(0, -1).map((room, i) => ({
      name: 'engine-goes-one-way',
      comment: 'What is below knows nothing of what is built on it.',
      severity: 'error',
      from: { path: `^engine/${room}` },
      to: { path: `^engine/(${ENGINE_FLOORS.slice(i + 1).join('|')})` },
    })),
    ...STAGES.map((stage) => ({
      name: 'engine-stages-apart',
      comment: 'Arc, heat and pool meet in the state alone.',
      severity: 'error',
      from: { path: `^engine/${stage}/` },
      to: { path: `^engine/(${STAGES.filter((other) => other !== stage).join('|')})/` },
    })),
    {
      name: 'scoring-does-not-know-the-game',
      severity: 'error',
      from: { path: '^scoring/' },
      to: { path: '^(game|tests)/' },
    },
    {
      name: 'game-does-not-know-tests',
      severity: 'error',
      from: { path: '^game/' },
      to: { path: '^tests/' },
    },
    {
      name: 'engine-only-through-its-door',
      severity: 'error',
      from: { path: '^(scoring|game)/' },
      to: { path: '^engine/', pathNot: DOORS.engine },
    },
    {
      name: 'scoring-only-through-its-door',
      severity: 'error',
      from: { path: '^game/' },
      to: { path: '^scoring/', pathNot: DOORS.scoring },
    },
    {
      name: 'scoring-needs-node-in-its-own-rooms-only',
      comment: 'What runs in a browser must not reach for files or threads.',
      severity: 'error',
      from: { path: '^scoring/', pathNot: '^scoring/(node|lab|tools)/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'core-knows-no-browser',
      comment: 'game/core takes clock, worker, stores and files as arguments.',
      severity: 'error',
      from: { path: '^game/core/' },
      to: { path: `^game/(browser|view|audio|panels|style)/|^game/(main|app)\\.tsx$|${BROWSER_PACKAGES}` },
    },
    {
      name: 'game-without-node',
      severity: 'error',
      from: { path: '^game/', pathNot: '^game/tools/' },
      to: { dependencyTypes: ['core'] },
    },
    ...FLOORS.slice(0, -1).map((room, i) => ({
      name: 'scoring-goes-one-way',
      comment: 'attempt -> measures -> lines -> verdict -> advice -> words: a stage knows only those before it.',
      severity: 'error',
      from: { path: `^scoring/${room}` },
      to: { path: `^scoring/(${FLOORS.slice(i + 1).join('|')})` },
    })),
    { name: 'no-circle', severity: 'error', from: {}, to: { circular: true } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(dist|engine/kernel/simd)/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.mjs', '.js', '.css'] },
  },
};
