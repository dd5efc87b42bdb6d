import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** One file of ours: its path from the root, its text, and what it imports. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
  /** Files of ours as paths from the root, packages by name. */
  readonly imports: readonly string[];
}

const IMPORT = /(?:^|\n)\s*(?:import|export)[^'";]*?\sfrom\s+'([^']+)'|(?:^|[^.\w])import\s*\(?\s*'([^']+)'/g;

function importsOf(file: string, text: string): string[] {
  return [...text.matchAll(IMPORT)].map((match) => {
    const target = match[1] ?? match[2] ?? '';
    return target.startsWith('.') ? path.posix.join(path.posix.dirname(file), target) : target;
  });
}

/** Every file below a folder with one of the endings, of this working copy or of another. */
export async function sourceFiles(
  folder: string,
  endings: readonly string[],
  root = ROOT,
): Promise<SourceFile[]> {
  const entries = await readdir(path.join(root, folder), { recursive: true, withFileTypes: true });
  const files = entries
    .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
    .map((entry) => path.relative(root, path.join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
  return Promise.all(
    files.map(async (file) => {
      const text = await readFile(path.join(root, file), 'utf8');
      return { path: file, text, imports: importsOf(file, text) };
    }),
  );
}

export function rootFile(name: string): Promise<string> {
  return readFile(path.join(ROOT, name), 'utf8');
}

/** Source without its comments. */
export function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, ' ').replace(/(^|[^:])\/\/.*$/gm, '$1');
}
