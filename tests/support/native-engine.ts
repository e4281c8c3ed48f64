/**
 * Test settings by which Node itself loads the engine, through tsx, instead of the test runner: the runner turns every imported name into a
 * property with a getter, which in the engine's loops costs two to five times the work. The rest of the product stays with the runner, which
 * can put doubles into it.
 */
export const nativeEngine = {
  execArgv: ['--import', 'tsx/esm'],
  server: { deps: { external: [/\/engine\/.*\.ts$/] } },
};
