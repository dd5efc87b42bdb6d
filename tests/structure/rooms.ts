/**
 * The rooms of the house, from the ground up. A file may import from its own room and from the rooms named in
 * `uses`; every one of these stands before it in the list, so that arrows go down only. DEVELOPERS.md shows this
 * table; tests/structure/rooms.test.ts holds every import to it.
 */
export interface Room {
  readonly name: string;
  /** Paths that begin so are in the room; the longest match counts. */
  readonly at: readonly string[];
  readonly holds: string;
  readonly uses: readonly string[];
  /** Each folder directly below is a room of its own: `apart` may not use one another, `downward` not in a circle. */
  readonly inside?: 'apart' | 'downward';
}

/** A room as it is written down: what it may use, or which of those above it may not. */
type Written = Omit<Room, 'uses'> &
  ({ readonly uses: readonly string[] } | { readonly but: readonly string[] });

const WRITTEN: readonly Written[] = [
  {
    name: 'seeds',
    at: ['seeds/'],
    holds: 'tables with their sources, and the invented demo, as data',
    uses: [],
  },
  {
    name: 'shared',
    at: ['shared/'],
    holds: 'quantities, their reading and writing, zod schemas, fault codes: for server, browser and tests',
    uses: [],
  },
  {
    name: 'views',
    at: ['views/'],
    holds: 'templates with the types of their data, style sheets, the browser’s script',
    uses: ['shared'],
  },
  {
    name: 'problems',
    at: ['server/problems/'],
    holds: 'what a client can be told of: codes, status, failures',
    uses: ['shared'],
  },
  { name: 'config', at: ['server/config/'], holds: 'the settings, checked at start', uses: ['shared'] },
  {
    name: 'database',
    at: ['server/database/'],
    holds: 'connecting, migrating, the service’s role, table types, the embedded server',
    uses: ['problems', 'shared'],
  },
  {
    name: 'mechanics',
    at: ['server/mechanics/'],
    holds: 'the computations and the assessment of a build: pure, SI inside',
    uses: ['shared', 'seeds'],
  },
  {
    name: 'compute',
    at: ['server/compute/'],
    holds: 'a computation made runnable from JSON: parsing, faults, units of the answer',
    uses: ['mechanics', 'shared'],
  },
  {
    name: 'work',
    at: ['server/work/'],
    holds: 'long computations, beside the thread that serves pages',
    uses: ['compute', 'problems', 'shared'],
  },
  {
    name: 'drawings',
    at: ['server/drawings/'],
    holds: 'numbers to SVG',
    uses: ['compute', 'mechanics', 'views', 'shared'],
  },
  {
    name: 'auth',
    at: ['server/auth/'],
    holds: 'principals, sessions, keys, links, passwords, and how often each may be tried',
    uses: ['database', 'problems', 'shared'],
  },
  {
    name: 'events',
    at: ['server/events/'],
    holds: 'the typed log of one build, its lock, and the hint that it has grown',
    uses: ['auth', 'database', 'problems', 'shared'],
  },
  {
    name: 'records',
    at: ['server/records/'],
    holds: 'each aggregate: rows to domain objects, SQL, commands, how JSON shows it',
    but: ['views', 'config', 'drawings'],
    inside: 'downward',
  },
  {
    name: 'assessment',
    at: ['server/assessment/'],
    holds: 'the evidence of a build out of its records, its assessment, and how JSON shows both',
    but: ['seeds', 'views', 'config', 'drawings'],
  },
  {
    name: 'web',
    at: ['server/web/'],
    holds: 'HTTP, forms, rendering; no word of the trade',
    but: ['seeds', 'mechanics', 'drawings', 'records', 'assessment'],
  },
  {
    name: 'live',
    at: ['server/live/'],
    holds: 'streams of events, and who is here',
    but: ['seeds', 'views', 'config', 'mechanics', 'compute', 'drawings'],
  },
  {
    name: 'compute-forms',
    at: ['server/compute-forms/'],
    holds: 'a computation as a form made from its schema, and its answer as components',
    uses: ['web', 'drawings', 'compute', 'mechanics', 'views', 'shared'],
  },
  {
    name: 'call',
    at: ['server/call/'],
    holds: 'what every step uses: the contract of a step, the call’s context, forms, corrections, layout',
    but: ['seeds', 'config', 'live'],
  },
  {
    name: 'steps',
    at: ['server/steps/'],
    holds: 'one step each: what it shows, asks, keeps, prints',
    but: ['seeds', 'config', 'live'],
    inside: 'apart',
  },
  {
    name: 'call-pages',
    at: ['server/call-pages/'],
    holds: 'the frame of a call, timeline, report, takeover, worksheet: made from the list of steps',
    but: ['seeds', 'config', 'live', 'compute-forms', 'steps'],
  },
  {
    name: 'desk',
    at: ['server/desk/'],
    holds: 'pages of the desk outside a call: list, catalogue, limits, people, sign-in',
    but: ['seeds', 'config', 'compute', 'live', 'compute-forms', 'steps', 'call-pages'],
  },
  {
    name: 'reference',
    at: ['server/reference/'],
    holds: 'the reference: computations with forms, the API, problems, parts',
    uses: ['compute-forms', 'web', 'drawings', 'compute', 'mechanics', 'problems', 'views', 'shared'],
  },
  {
    name: 'api',
    at: ['server/api/'],
    holds: 'the JSON routes',
    uses: [
      'web',
      'assessment',
      'records',
      'events',
      'auth',
      'work',
      'compute',
      'mechanics',
      'database',
      'problems',
      'shared',
    ],
  },
  {
    name: 'start',
    at: ['server/start/'],
    holds: 'what the process does before it listens and when it ends: the demo, the first link',
    uses: [
      'web',
      'records',
      'assessment',
      'events',
      'auth',
      'compute',
      'database',
      'config',
      'problems',
      'shared',
      'seeds',
    ],
  },
  {
    name: 'backup',
    at: ['server/backup/'],
    holds: 'all shops into a folder of files and back, as commands of the terminal',
    uses: ['config', 'database', 'shared'],
  },
  {
    name: 'process',
    at: ['server/main.ts', 'server/app.ts', 'server/routes.ts'],
    holds: 'the process, and the list of what it serves',
    but: ['seeds', 'mechanics', 'drawings', 'records', 'compute-forms'],
  },
];

export const ROOMS: readonly Room[] = WRITTEN.map((room, index) => {
  if ('uses' in room) return room;
  const { but, ...rest } = room;
  const above = WRITTEN.slice(0, index).map(({ name }) => name);
  return { ...rest, uses: above.filter((name) => !but.includes(name)) };
});

export function roomOf(path: string): Room | undefined {
  let found: { room: Room; length: number } | undefined;
  for (const room of ROOMS)
    for (const at of room.at)
      if (path.startsWith(at) && at.length > (found?.length ?? 0)) found = { room, length: at.length };
  return found?.room;
}
