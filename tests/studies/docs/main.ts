/** `npm run docs`: quotes the examples in the readmes as they stand and builds the pages of the library in dist/docs from its docstrings. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Application, ReflectionKind } from 'typedoc';
import { WAYS_IN } from '../../library/documented.ts';
import { refreshQuotes } from '../../library/quotes.ts';
import { galleryPage, instructorsPage } from './pages.ts';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
const OUT = join(ROOT, 'dist', 'docs');
const PAGES = join(ROOT, 'dist', 'docs-pages');

refreshQuotes();
mkdirSync(PAGES, { recursive: true });
writeFileSync(join(PAGES, 'for-instructors.md'), instructorsPage());
writeFileSync(join(PAGES, 'gallery.md'), galleryPage());
const app = await Application.bootstrap({
  name: 'Toehold',
  entryPoints: WAYS_IN.map((path) => join(ROOT, path)),
  tsconfig: join(ROOT, 'tsconfig.lib.json'),
  readme: 'none',
  projectDocuments: [join(PAGES, 'for-instructors.md'), join(PAGES, 'gallery.md')],
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
