import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';

/*
 * What the played calls make known, and what is told of it, is written down in tests/assessment-told/: a sentence that
 * changes is seen in review. `npm run told` writes it.
 */

const FOLDER = fileURLToPath(new URL('../../assessment-told/', import.meta.url));
export const AGAIN = 'not as it was written down: once it was looked at, `npm run told` writes it';

/** It is written and not compared. */
export const isWriting = process.env.WRITE_TOLD !== undefined;

const at = (name: string): string => path.join(FOLDER, name);

export const isThere = (name: string): boolean => existsSync(at(name));
export const readTold = (name: string): string => readFileSync(at(name), 'utf8');

export function writeTold(name: string, text: string): void {
  mkdirSync(path.dirname(at(name)), { recursive: true });
  writeFileSync(at(name), text);
}

/** Names in a folder, without their ending. */
export const namesIn = (folder: string, ending: string): string[] =>
  existsSync(at(folder))
    ? readdirSync(at(folder))
        .filter((name) => name.endsWith(ending))
        .map((name) => name.slice(0, -ending.length))
        .sort()
    : [];

/** Takes away what is of no call any more. */
export function keepOnly(folder: string, names: readonly string[]): void {
  for (const ending of ['.json', '.txt'])
    for (const name of namesIn(folder, ending))
      if (!names.includes(name)) rmSync(at(`${folder}/${name}${ending}`));
}

/** The name of a file out of what was said. */
export const fileName = (said: string): string =>
  said
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 80)
    .replace(/-$/, '');

const USUAL = 'usual.json';

/** What is known of a call that was only opened: the limits in force, and lists with nothing in them. */
export function usualEvidence(): Evidence {
  const evidence: Evidence = JSON.parse(readTold(USUAL));
  return evidence;
}

export const writeUsual = (evidence: Evidence): void =>
  writeTold(USUAL, `${JSON.stringify(evidence, undefined, 1)}\n`);
