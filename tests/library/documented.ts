import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** The ways into the library, as sources. */
export const WAYS_IN = [
  'engine/index.ts',
  'engine/solvers/index.ts',
  'scoring/index.ts',
  'scoring/node/index.ts',
] as const;

/** What a way in hands out, with the methods of its interfaces and classes, and whether each has a docstring. */
export interface Export {
  name: string;
  documented: boolean;
}

/**
 * Every public export of some files, by way in.
 * @param files paths from the root of the repository
 * @param overlay texts to take instead of those on the disk, by path
 */
export function exportsOf(
  files: readonly string[],
  overlay: ReadonlyMap<string, string> = new Map(),
): Map<string, Export[]> {
  const options: ts.CompilerOptions = {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    allowImportingTsExtensions: true,
    noEmit: true,
    types: ['node'],
  };
  const host = ts.createCompilerHost(options);
  const read = host.readFile.bind(host);
  host.readFile = (path) => overlay.get(path.slice(ROOT.length)) ?? read(path);
  const program = ts.createProgram(
    files.map((path) => join(ROOT, path)),
    options,
    host,
  );
  const checker = program.getTypeChecker();
  const has = (symbol: ts.Symbol): boolean => symbol.getDocumentationComment(checker).length > 0;
  const found = new Map<string, Export[]>();
  for (const path of files) {
    const module = checker.getSymbolAtLocation(program.getSourceFile(join(ROOT, path))!)!;
    const out: Export[] = [];
    for (const exported of checker.getExportsOfModule(module)) {
      const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
      out.push({ name: exported.name, documented: has(symbol) });
      for (const [name, member] of symbol.members ?? []) {
        if (!(member.flags & ts.SymbolFlags.Method) || isPrivate(member)) continue;
        out.push({ name: `${exported.name}.${String(name)}`, documented: has(member) });
      }
    }
    found.set(path, out);
  }
  return found;
}

function isPrivate(member: ts.Symbol): boolean {
  const [first] = member.declarations ?? [];
  return (
    member.name.startsWith('__#') ||
    (first !== undefined && (ts.getCombinedModifierFlags(first) & ts.ModifierFlags.Private) !== 0)
  );
}
