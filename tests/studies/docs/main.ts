/** `npm run docs`: quotes the examples in the readmes as they stand and builds the pages of the library in dist/docs from its docstrings. */
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Application, ReflectionKind } from 'typedoc';
import { WAYS_IN } from '../../library/documented.ts';
import { refreshQuotes } from '../../library/quotes.ts';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
const OUT = join(ROOT, 'dist', 'docs');

refreshQuotes();
const app = await Application.bootstrap({
  name: 'Toehold',
  entryPoints: WAYS_IN.map((path) => join(ROOT, path)),
  tsconfig: join(ROOT, 'tsconfig.lib.json'),
  readme: 'none',
  out: OUT,
  excludePrivate: true,
  disableSources: true,
  validation: { notDocumented: true, notExported: false, invalidLink: true },
  requiredToBeDocumented: ['Function', 'Class', 'Interface', 'TypeAlias', 'Variable', 'Enum'],
  // Members that Error and the like bring along say nothing here.
  excludeExternals: true,
});
const project = await app.convert();
if (project === undefined) process.exit(1);
app.validate(project);
if (app.logger.hasErrors() || app.logger.hasWarnings()) process.exit(1);
await app.generateDocs(project, OUT);
const pages = project.getReflectionsByKind(ReflectionKind.SomeModule | ReflectionKind.SomeExport).length;
process.stdout.write(`${pages} pages in dist/docs; open dist/docs/index.html\n`);
