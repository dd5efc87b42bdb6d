/** What went into a sum, as it is said at the bench, where the name of its field says less. */
const LABELS: Readonly<Record<string, string>> = {
  liftersTravel: 'Travel of the plunger',
  zeroFoundBy: 'How zero lash was found',
  mount: 'Where the adjuster is',
  plunger: 'Band of the plunger',
  setAt: 'Set square at',
  lashFound: 'Lash as it was found',
  lashWanted: 'Lash that is wanted',
  preloadWanted: 'Preload that is wanted',
  checkerAtZero: 'Checker screwed together',
  add: 'Preload to add',
  less: 'Lash to take off',
  convention: 'How lengths are told',
  before: 'Wheel on the way up',
  after: 'Wheel on the way down',
  stopReadings: 'Wheel at the stop, after TDC and before it',
  pointerOff: 'Pointer, too much after TDC',
  card: 'Centreline of the card',
};

const WORDS: Readonly<Record<string, string>> = {
  'stud-nut': 'nut on the stud',
  'cup-screw': 'screw at the pushrod',
  'valve-end-screw': 'screw at the valve',
  'up-and-down': 'by up-and-down play',
  spin: 'by spinning the pushrod',
  feeler: 'with a feeler',
  'short-travel': 'short travel',
  'mid-lift': 'half lift',
  'full-lift': 'full lift',
  closed: 'valve shut',
  overall: 'end to end',
  effective: 'by a gauge with a .140 in hole',
};

export const inputLabel = (name: string, label: string): string => LABELS[name] ?? label;

export const inputWord = (value: string): string => WORDS[value] ?? value;
