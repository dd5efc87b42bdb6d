import { readFile } from 'node:fs/promises';
import { STYLE_SHEETS } from './order.ts';

/** All style sheets joined in order, as the one file that pages link to. */
export async function readStyles(): Promise<string> {
  const sheets = STYLE_SHEETS.map((name) => readFile(new URL(name, import.meta.url), 'utf8'));
  return (await Promise.all(sheets)).join('\n');
}
