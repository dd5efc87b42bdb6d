import ts from 'typescript';
import { z } from 'zod';
import words from '../../seeds/words.json' with { type: 'json' };
import type { SourceFile } from './source-files.ts';

/*
 * Every text that a person may come to read, out of the files it is written in: the strings of the program, the
 * templates, and the tables. Keys, names and comments are left out.
 */

export interface ToldText {
  readonly path: string;
  readonly text: string;
}

function stringsOf({ path, text }: SourceFile): ToldText[] {
  const found: ToldText[] = [];
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isLiteralTypeNode(node)) return;
    if (
      ts.isStringLiteralLike(node) ||
      ts.isTemplateHead(node) ||
      ts.isTemplateMiddle(node) ||
      ts.isTemplateTail(node)
    )
      found.push({ path, text: node.text });
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

const textOf = ({ path, text }: SourceFile): ToldText => ({
  path,
  text: text.replace(/<%[\s\S]*?%>/g, ' ').replace(/<[^>]*>/g, ' '),
});

const LIST = 'seeds/words.json';

/** Texts of program files, of templates and of tables. */
export function toldTexts(files: readonly SourceFile[]): ToldText[] {
  return files
    .filter(({ path }) => path !== LIST)
    .flatMap((file) => (file.path.endsWith('.ts') ? stringsOf(file) : [textOf(file)]));
}

const never = z.array(z.object({ pattern: z.string(), instead: z.string() })).parse(words.never);
const NEVER = never.map(({ pattern, instead }) => ({ pattern: new RegExp(pattern, 'i'), instead }));

/** The words of a text that are never said, each with what is said in their place. */
export const neverSaid = (text: string): string[] =>
  NEVER.flatMap(({ pattern, instead }) => {
    const found = pattern.exec(text.replace(/\s+/g, ' '));
    return found === null ? [] : [`“${found[0]}”, say: ${instead}`];
  });
