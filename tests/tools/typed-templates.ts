import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { createViews, VIEWS } from '../../views/engine.ts';

const eta = createViews();

/** Where the code of a template stands for the compiler: among the types that it is held to, never on disk. */
const PLACE = `${VIEWS}parts/`;

const HEAD = (data: string): string => `
import type { PieceName, Pieces } from '../parts/pieces.ts';
import type { LayoutData } from '../layout.ts';
import type { Pages } from '../pages/pages.ts';
declare const it: ${data};
declare function include<Name extends PieceName>(name: Name, data: Pieces[Name]): string;
declare function include(name: '/parts/hatches'): string;
declare const __eta: { readonly e: { figures(value: string | number): string } };
declare function out(value: string | number): void;
export function render() {
`;

/** A template as a program: what stands in its tags, in order; the text between them says nothing about types. */
export function programOf(source: string, data: string): string {
  const body = eta.parse(source).map((part) => {
    if (typeof part === 'string') return '';
    return part.t === 'e' ? `${part.val}\n` : `out(${part.val});\n`;
  });
  return `${HEAD(data)}${body.join('')}}\n`;
}

const OPTIONS: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2023,
  lib: ['lib.es2023.d.ts'],
  module: ts.ModuleKind.NodeNext,
  moduleResolution: ts.ModuleResolutionKind.NodeNext,
  allowImportingTsExtensions: true,
  strict: true,
  exactOptionalPropertyTypes: true,
  // Functions in a template leave their parameters untyped: it is no place to write types.
  noImplicitAny: false,
  noEmit: true,
  skipLibCheck: true,
  types: [],
};

/** What stands on disk is the same for every program: read once. */
const onDisk = new Map<string, ts.SourceFile>();

/** What the compiler has against programs, by their names; a name without faults is left out. */
export function typeFaults(programs: ReadonlyMap<string, string>): Map<string, string[]> {
  const host = ts.createCompilerHost(OPTIONS);
  const files = new Map([...programs].map(([name, text]) => [`${PLACE}${name}.template.ts`, { name, text }]));
  const { fileExists, readFile: read, getSourceFile } = host;
  host.fileExists = (file) => files.has(file) || fileExists(file);
  host.readFile = (file) => files.get(file)?.text ?? read(file);
  host.getSourceFile = (file, ...rest) => {
    const own = files.get(file);
    if (own !== undefined) return ts.createSourceFile(file, own.text, ts.ScriptTarget.ES2023);
    const known = onDisk.get(file) ?? getSourceFile(file, ...rest);
    if (known !== undefined) onDisk.set(file, known);
    return known;
  };
  const program = ts.createProgram([...files.keys()], OPTIONS, host);
  const faults = new Map<string, string[]>();
  for (const [file, { name }] of files) {
    const source = program.getSourceFile(file);
    const found =
      source === undefined
        ? []
        : [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)];
    const said = found.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
    if (source === undefined) said.push('the compiler did not read it');
    if (said.length > 0) faults.set(name, said);
  }
  return faults;
}

export const readTemplate = (name: string): Promise<string> =>
  readFile(fileURLToPath(new URL(`../../views${name}.eta`, import.meta.url)), 'utf8');
