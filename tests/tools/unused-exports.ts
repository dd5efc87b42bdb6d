import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/**
 * Lists what is exported of the service and imported by nothing of it: by tests alone, or by nobody.
 * `node --import tsx tests/tools/unused-exports.ts`
 */
const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const OWN = ['server', 'shared', 'views'];
/** Loaded by the name of their folder or file and not by an import. */
const LOADED_BY_NAME = /^server\/(?:.*\/)?computations\/|^server\/main\.ts$|^views\/browser\//;

/** The statements of a file that take something from others, and what it gives. */
interface Module {
  readonly text: string;
  readonly takes: readonly (readonly [file: string, name: string])[];
  readonly gives: readonly string[];
}

const isExported = (node: ts.Statement): boolean =>
  ts.canHaveModifiers(node) &&
  (ts.getModifiers(node) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);

function declared(node: ts.Statement): string[] {
  if (ts.isVariableStatement(node))
    return node.declarationList.declarations.flatMap(({ name }) =>
      ts.isIdentifier(name) ? [name.text] : [],
    );
  const named =
    ts.isFunctionDeclaration(node) ||
    ts.isClassDeclaration(node) ||
    ts.isInterfaceDeclaration(node) ||
    ts.isTypeAliasDeclaration(node) ||
    ts.isEnumDeclaration(node);
  return named && node.name !== undefined ? [node.name.text] : [];
}

/** The names of an import or a re-export; `*` where it takes everything. */
function namesOf(node: ts.ImportDeclaration | ts.ExportDeclaration): string[] {
  const bindings = ts.isImportDeclaration(node) ? node.importClause?.namedBindings : node.exportClause;
  if (bindings === undefined || ts.isNamespaceImport(bindings) || ts.isNamespaceExport(bindings))
    return ['*'];
  return bindings.elements.map(({ name, propertyName }) => (propertyName ?? name).text);
}

function read(file: string, text: string): Module {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ESNext, true);
  const at = (specifier: string) => path.posix.join(path.posix.dirname(file), specifier);
  const takes: [string, string][] = [];
  const gives: string[] = [];
  for (const node of source.statements) {
    if (isExported(node)) gives.push(...declared(node));
    if (!ts.isImportDeclaration(node) && !ts.isExportDeclaration(node)) continue;
    if (node.moduleSpecifier === undefined || !ts.isStringLiteral(node.moduleSpecifier)) continue;
    const from = at(node.moduleSpecifier.text);
    takes.push(...namesOf(node).map((name): [string, string] => [from, name]));
  }
  // An import in the middle of the code takes everything.
  for (const [, specifier = ''] of text.matchAll(/\bimport\(\s*'(\.[^']+)'\s*\)/g))
    takes.push([at(specifier), '*']);
  return { text, takes, gives };
}

async function modulesIn(folder: string): Promise<Map<string, Module>> {
  const names = await readdir(path.join(ROOT, folder), { recursive: true });
  const files = names.filter((name) => name.endsWith('.ts')).map((name) => path.posix.join(folder, name));
  return new Map(
    await Promise.all(
      files.map(async (file) => [file, read(file, await readFile(path.join(ROOT, file), 'utf8'))] as const),
    ),
  );
}

const own = new Map((await Promise.all(OWN.map(modulesIn))).flatMap((modules) => [...modules]));
const tests = await modulesIn('tests');
const takersIn = (modules: Map<string, Module>, file: string, name: string): string[] =>
  [...modules].flatMap(([taker, { takes }]) =>
    takes.some(([from, what]) => from === file && (what === name || what === '*')) ? [taker] : [],
  );

const TITLES = {
  dead: 'Used nowhere at all',
  tested: 'Used by tests alone',
  inside: 'Imported by tests alone, and used in its own file too',
  local: 'Used in its own file alone: need not be exported',
} as const;

function titleOf(text: string, name: string, tested: boolean): keyof typeof TITLES {
  const inside =
    (text.match(new RegExp(`(?<![\\w$])${name.replace('$', '\\$')}(?![\\w$])`, 'g')) ?? []).length > 1;
  if (tested) return inside ? 'inside' : 'tested';
  return inside ? 'local' : 'dead';
}

const found: Record<keyof typeof TITLES, string[]> = { dead: [], tested: [], inside: [], local: [] };
for (const [file, { gives, text }] of [...own].filter(([name]) => !LOADED_BY_NAME.test(name))) {
  for (const name of gives.filter((each) => takersIn(own, file, each).length === 0)) {
    const takers = takersIn(tests, file, name);
    found[titleOf(text, name, takers.length > 0)].push(`${file} ${name}  ${takers.join(', ')}`.trim());
  }
}
const KINDS = ['dead', 'tested', 'inside', 'local'] as const;
for (const kind of KINDS) {
  const lines = found[kind];
  process.stdout.write(`\n${TITLES[kind]}: ${lines.length}\n${lines.join('\n')}\n`);
}
