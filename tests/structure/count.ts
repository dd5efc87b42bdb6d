import { resolve } from 'node:path';
import { arrows, circles, circlesInside, folderOf, strays } from './arrows.ts';

/*
 * Counts the imports of a working copy, this one or another: `node --import tsx tests/structure/count.ts [folder]`.
 * Folders are counted alike whatever the copy calls its rooms, so that two states of the project can be compared.
 */

const root = resolve(process.argv[2] ?? '.');
const all = await arrows(root);

const folders = all
  .map(({ from, to }) => [folderOf(from), folderOf(to)] as const)
  .filter(([from, to]) => from !== to);
const pairs = [...new Set(folders.map((pair) => pair.join(' ')))].map((pair) => pair.split(' '));
const lumps = circles(folders);
const inLump = (name: string | undefined) =>
  lumps.findIndex((lump) => name !== undefined && lump.includes(name));
const within = pairs.filter(([from, to]) => inLump(from) >= 0 && inLump(from) === inLump(to));

const lines = [
  ['imports between files', all.length],
  ['folders', new Set(folders.flat()).size],
  ['arrows between folders', pairs.length],
  ['circles of folders', lumps.length],
  ['folders in the largest circle', Math.max(0, ...lumps.map(({ length }) => length))],
  ['arrows between folders that reach each other', within.length],
  ['imports that the table of rooms does not allow', strays(all).length],
  ['circles inside of rooms', circlesInside(all).length],
] as const;
for (const [what, count] of lines) process.stdout.write(`${String(count).padStart(6)}  ${what}\n`);
for (const lump of lumps) process.stdout.write(`circle: ${lump.join(' ')}\n`);
