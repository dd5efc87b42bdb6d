import { ROOMS, type Room } from './rooms.ts';

/*
 * The map of DEVELOPERS.md, made from the table of rooms: `node --import tsx tests/structure/room-table.ts` prints it.
 */

const MANY = 6;

/** A room that may use nearly all below it is told by what it may not. */
function usesText(room: Room, index: number): string {
  const below = ROOMS.slice(0, index).map(({ name }) => name);
  const without = below.filter((name) => !room.uses.includes(name));
  if (room.uses.length === 0) return 'nothing';
  if (without.length === 0) return 'all above';
  if (room.uses.length > MANY && without.length <= room.uses.length)
    return `all above but ${without.map((name) => `\`${name}\``).join(', ')}`;
  return room.uses.map((name) => `\`${name}\``).join(', ');
}

const INSIDE = {
  apart: '; its folders know nothing of one another',
  downward: '; no circle between its folders',
};

const row = (room: Room, index: number): string =>
  `| ${room.at.map((at) => `\`${at}\``).join(', ')} | ${room.holds}${room.inside === undefined ? '' : INSIDE[room.inside]} | ${usesText(room, index)} |`;

/** From the ground up: each room with what it holds and what it may use. */
export const roomTable = (): string =>
  ['| at | holds | may use |', '| --- | --- | --- |', ...ROOMS.map(row)].join('\n');

if (process.argv[1]?.endsWith('room-table.ts') === true) process.stdout.write(`${roomTable()}\n`);
