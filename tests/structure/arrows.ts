import { sourceFiles } from '../tools/source-files.ts';
import { ROOMS, roomOf } from './rooms.ts';

/** One import from a file to another file of the project. */
export interface Arrow {
  readonly from: string;
  readonly to: string;
}

const OURS = /^(server|shared|views|seeds)\//;

/** Every import between files of the project, of this working copy or of another. */
export async function arrows(root?: string): Promise<Arrow[]> {
  const folders = await Promise.all(
    ['server', 'shared', 'views'].map((folder) => sourceFiles(folder, ['.ts'], root)),
  );
  return folders
    .flat()
    .flatMap((file) =>
      file.imports.filter((target) => OURS.test(target)).map((to) => ({ from: file.path, to })),
    );
}

/** Groups of names that reach each other, larger than one: circles. By Tarjan's algorithm (SIAM J. Comput. 1, 1972). */
export function circles(edges: readonly (readonly [string, string])[]): string[][] {
  const next = new Map<string, Set<string>>();
  for (const [from, to] of edges) {
    if (!next.has(from)) next.set(from, new Set());
    if (!next.has(to)) next.set(to, new Set());
    if (from !== to) next.get(from)?.add(to);
  }
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const found: string[][] = [];
  const visit = (name: string): void => {
    index.set(name, index.size);
    low.set(name, index.get(name) ?? 0);
    stack.push(name);
    for (const other of next.get(name) ?? []) {
      if (!index.has(other)) visit(other);
      if (stack.includes(other)) low.set(name, Math.min(low.get(name) ?? 0, low.get(other) ?? 0));
    }
    if (low.get(name) !== index.get(name)) return;
    const group = stack.splice(stack.indexOf(name));
    if (group.length > 1) found.push(group.sort());
  };
  for (const name of next.keys()) if (!index.has(name)) visit(name);
  return found;
}

/**
 * The folder two levels down that a file is in: what a reader takes for a room where nobody says otherwise. Views are
 * one: a component may hold any other, so that their types are of one piece.
 */
export const folderOf = (path: string): string => {
  const folders = path.split('/').slice(0, -1);
  return folders.slice(0, folders[0] === 'views' ? 1 : 2).join('/') || path;
};

/** Each import that the table does not allow, in words. */
export function strays(all: readonly Arrow[]): string[] {
  return all.flatMap(({ from, to }) => {
    const [room, other] = [roomOf(from), roomOf(to)];
    if (room === undefined) return [`${from} is in no room`];
    if (other === undefined) return [`${to} is in no room`];
    if (room === other) return insideStray(room, from, to);
    return room.uses.includes(other.name) ? [] : [`${from} (${room.name}) imports ${to} (${other.name})`];
  });
}

const below = (at: readonly string[], path: string): string => {
  const start = at.find((each) => path.startsWith(each)) ?? '';
  const rest = path.slice(start.length).split('/');
  return rest.length > 1 ? (rest[0] ?? '') : '';
};

function insideStray(room: (typeof ROOMS)[number], from: string, to: string): string[] {
  if (room.inside !== 'apart') return [];
  const [one, other] = [below(room.at, from), below(room.at, to)];
  return one === other || one === ''
    ? []
    : [`${from} imports ${to}: ${room.name} know nothing of one another`];
}

/** Circles between the folders of a room that wants none. */
export function circlesInside(all: readonly Arrow[]): string[][] {
  return ROOMS.filter((room) => room.inside !== undefined).flatMap((room) => {
    const own = all.filter(({ from, to }) => roomOf(from) === room && roomOf(to) === room);
    return circles(own.map(({ from, to }) => [below(room.at, from), below(room.at, to)] as const)).map(
      (circle) => circle.map((name) => `${room.name}/${name}`),
    );
  });
}
