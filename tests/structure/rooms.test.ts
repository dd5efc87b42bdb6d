import { describe, expect, it } from 'vitest';
import { rootFile, sourceFiles } from '../tools/source-files.ts';
import { arrows, circles, circlesInside, folderOf, strays } from './arrows.ts';
import { roomTable } from './room-table.ts';
import { ROOMS, roomOf } from './rooms.ts';

const all = await arrows();

describe('rooms', () => {
  it('every import is one that the table allows', () => {
    expect(all.length).toBeGreaterThan(1_000);
    expect(strays(all)).toEqual([]);
  });

  it('the table itself goes down only: each room uses rooms that stand before it', () => {
    const order = ROOMS.map(({ name }) => name);
    expect(new Set(order).size).toBe(order.length);
    for (const [index, { name, uses }] of ROOMS.entries())
      for (const used of uses) expect([name, used, order.slice(0, index)]).toSatisfy(isBefore);
  });

  it('folders reach one another in no circle, nor do those inside of a room that wants none', () => {
    expect(circles(all.map(({ from, to }) => [folderOf(from), folderOf(to)] as const))).toEqual([]);
    expect(circlesInside(all)).toEqual([]);
  });

  it('nor do the parts of the assessment, nor the folders in one of them', () => {
    const inside = all.flatMap(({ from, to }) => {
      const [own, other] = [partOf(from), partOf(to)];
      return own === undefined || other === undefined ? [] : [[own, other] as const];
    });
    expect(inside.length).toBeGreaterThan(500);
    expect(circles(inside)).toEqual([]);
    expect(
      circles(inside.map(([own, other]) => [own.split('/')[0] ?? '', other.split('/')[0] ?? ''])),
    ).toEqual([]);
  });

  it('no room is empty, and every file below server is in one', async () => {
    const paths = (await sourceFiles('server', ['.ts'])).map(({ path }) => path);
    expect(paths.filter((path) => roomOf(path) === undefined)).toEqual([]);
    const used = new Set(all.flatMap(({ from, to }) => [roomOf(from)?.name, roomOf(to)?.name]));
    expect(ROOMS.filter(({ name }) => !used.has(name)).map(({ name }) => name)).toEqual([]);
  });

  it('DEVELOPERS.md has the table as it is', async () => {
    const cells = (text: string) => text.replace(/[ \t]+/g, ' ').replace(/-+/g, '-');
    expect(cells(await rootFile('DEVELOPERS.md'))).toContain(cells(roomTable()));
  });
});

const ASSESSMENT = 'server/mechanics/assessment/';

/** The part of the assessment that a file is in, with its folder there; what stands beside the parts puts them together. */
function partOf(path: string): string | undefined {
  if (!path.startsWith(ASSESSMENT)) return undefined;
  const folders = path.slice(ASSESSMENT.length).split('/').slice(0, -1);
  return folders.length === 0 ? undefined : folders.slice(0, 2).join('/');
}

const isBefore = ([, used, before]: unknown[]): boolean => Array.isArray(before) && before.includes(used);

describe('the check of the rooms finds', () => {
  it('an arrow up, one between two steps, and a file in no room', () => {
    expect(
      strays([
        { from: 'server/records/notes/notes.ts', to: 'server/call/context.ts' },
        { from: 'server/steps/ratio/step.ts', to: 'server/steps/sheet/step.ts' },
        { from: 'server/elsewhere/x.ts', to: 'shared/defined.ts' },
        { from: 'server/call/context.ts', to: 'server/records/notes/notes.ts' },
      ]),
    ).toHaveLength(3);
  });

  it('a circle of three', () => {
    expect(
      circles([
        ['a', 'b'],
        ['b', 'c'],
        ['c', 'a'],
        ['c', 'd'],
      ]),
    ).toEqual([['a', 'b', 'c']]);
  });
});
