/**
 * Which way imports may go. Read by `tests/walls/walls.test.ts`; breaches of today stand in tests/walls/known.json, a list that may only
 * shrink. Types count: a type that points up is a room that knows too much.
 */
const DOORS = {
  engine: '^engine/(index|alone/index|solvers/index)\\.ts$',
  scoring: '^scoring/(index|node|node/index|browser)\\.ts$',
};
const BROWSER_PACKAGES = '^node_modules/(pixi\\.js|preact|@preact|idb|matter-js)/';

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
      from: { path: '^scoring/', pathNot: '^scoring/(node|lab|tools|cli|batch)(/|\\.ts)' },
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
