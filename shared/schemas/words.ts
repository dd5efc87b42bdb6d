/** Fixed lists of words that calls and builds are described by, with the sentence each is shown as. */
export const GOALS = {
  identify: 'Find out what a part is',
  'verify-ratio': 'Verify a ratio',
  'choose-ratio': 'Choose a ratio',
  'clearances-after-a-change': 'Clearances after a change',
  geometry: 'Tip mark and geometry',
  'cam-timing': 'Cam timing',
  adjuster: 'Adjusters and lash',
  'one-valve-differs': 'One valve differs',
  'noise-or-failure': 'Noise or failure',
  'returned-part': 'Returned part',
} as const;
export const ENGINE_STATES = {
  'not-asked': 'Not asked yet',
  runs: 'It runs now',
  'has-run': 'It has run, it stands',
  apart: 'It is apart',
  'never-run': 'It has never run',
} as const;
export const CONTACT = {
  'not-asked': 'Not asked yet',
  none: 'Nothing hit, bent, tight or loose',
  something: 'Something hit, bent, came loose or turns tight',
} as const;
export const CALLER_ROLES = {
  '': 'Not said',
  owner: 'Owner',
  builder: 'Engine builder',
  shop: 'Shop',
} as const;
/** What stands between the cam and the valve. */
export const VALVE_GEARS = {
  pushrod: 'Pushrods and rockers',
  bucket: 'Overhead cam on buckets',
  'finger-follower': 'Overhead cam on finger followers',
  'cam-rocker': 'Overhead cam on rockers',
} as const;
export type ValveGear = keyof typeof VALVE_GEARS;
/** Valves of a cylinder. Where there is more than one of a kind, the first keeps the plain name. */
export const VALVES = {
  intake: 'Intake',
  exhaust: 'Exhaust',
  'intake-2': 'Intake 2',
  'intake-3': 'Intake 3',
  'exhaust-2': 'Exhaust 2',
  'exhaust-3': 'Exhaust 3',
} as const;
export type ValveName = keyof typeof VALVES;
export const SIDES = { intake: 'Intake', exhaust: 'Exhaust' } as const;
/** `intake`, `intake 2`: a valve as it is said. */
export const valveSaid = (valve: string): string => valve.replace('-', ' ');
/** Whether a valve is an intake or an exhaust, whichever of its kind in the cylinder it is. */
export const sideOfValve = (valve: ValveName): keyof typeof SIDES =>
  valve.startsWith('exhaust') ? 'exhaust' : 'intake';
export const SPRINGS = {
  'not-said': 'Not said',
  light: 'Light checking spring',
  running: 'Running spring',
} as const;
export const LIFTERS = {
  'not-said': 'Not said',
  solid: 'Solid lifter',
  locked: 'Hydraulic, locked solid at the same seat height',
  hydraulic: 'Hydraulic, not locked',
} as const;
export const LASH_STATES = {
  'not-said': 'Not said',
  zero: 'Taken up to zero',
  set: 'Set to its running lash',
} as const;
export const RESTS_ON = {
  'not-said': 'Not said',
  'retainer-flat': 'Flat face of the retainer',
  'retainer-edge': 'Step, slope or lock of the retainer',
  'valve-tip': 'Valve tip',
  'spring-seat': 'Somewhere else',
} as const;
export const ALIGNMENTS = {
  'not-said': 'Not said',
  parallel: 'Parallel to the stem, seen from front and side',
  leaning: 'Leaning',
} as const;
/** What a lift is read with. A guess stays a guess. */
export const LIFT_TOOLS = {
  indicator: 'Dial indicator',
  caliper: 'Caliper, with its depth bar',
  feeler: 'Feeler stack',
  rule: 'Rule',
  guess: 'A guess, not measured',
} as const;
export type LiftTool = keyof typeof LIFT_TOOLS;
export const LOBE_SOURCES = {
  card: 'The cam card',
  indicator: 'Dial indicator at the lifter',
  caliper: 'Caliper on the loose cam',
  'depth-bar': 'Caliper’s depth bar at the lifter',
  feeler: 'Feeler stack at the lifter',
  rule: 'Rule at the lifter',
  guess: 'A guess, not measured',
} as const;
/** A stated lift is a number somebody uses or says; it is kept, set against the passes, never computed with. */
/** What the calls about a build are spoken in. */
export const UNIT_SYSTEMS = {
  inch: 'Inches and pounds',
  metric: 'Millimetres and newtons',
} as const;

export const READING_KINDS = {
  'valve-lift': 'Valve lift',
  'lobe-lift': 'Lobe lift',
  'valve-lift-at': 'Valve lift part of the way up',
  'stated-valve-lift': 'Valve lift used in a hand calculation',
  'stated-lobe-lift': 'Lobe lift used in a hand calculation',
} as const;

type Words<T> = readonly [Extract<keyof T, string>, ...Extract<keyof T, string>[]];

/** The keys of a word list in the shape that a zod enum takes. */
export function keysOf<const T extends Record<string, string>>(words: T): Words<T> {
  const keys = Object.keys(words).filter((key): key is Extract<keyof T, string> => Object.hasOwn(words, key));
  const [first, ...rest] = keys;
  if (first === undefined) throw new Error('a word list needs a word');
  return [first, ...rest];
}

/** A stored word of a list; the lists only grow, so that one it does not have is a fault of the program. */
export function storedWord<const T extends Record<string, string>>(
  words: T,
  text: string,
): Extract<keyof T, string> {
  const found = keysOf(words).find((word) => word === text);
  if (found === undefined) throw new Error(`a stored entry has the unknown word ${text}`);
  return found;
}

/** A key of a word list as its sentence; a key that is not in the list as it is. */
export function sentence(words: Readonly<Record<string, string>>, key: string): string {
  return words[key] ?? key;
}

/** How the length of a pushrod was come by: with a tool, or as somebody says it. */
export const PUSHROD_TAKEN = {
  caliper: 'Caliper',
  micrometer: 'Micrometer',
  rule: 'Rule or tape',
  guess: 'A guess, not measured',
  stamped: 'Stamped on it',
  told: 'As it was told or ordered',
} as const;
export type PushrodTaken = keyof typeof PUSHROD_TAKEN;
