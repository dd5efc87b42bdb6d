import { readFile } from 'node:fs/promises';
import { STYLE_SHEETS } from './order.ts';

/** Comments and the room at the head of lines are for whoever reads the sources. */
const asSent = (css: string): string => css.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s+/gm, '');

/** All style sheets joined in order, as the one file that pages link to. */
export async function readStyles(): Promise<string> {
  const sheets = STYLE_SHEETS.map((name) => readFile(new URL(name, import.meta.url), 'utf8'));
  return asSent((await Promise.all(sheets)).join('\n'));
}
