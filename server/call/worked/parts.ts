/** The parts of each step that computes something, in the order they are worked through. */
export const PARTS = {
  geometry: ['marks', 'roller-sweep', 'linkage'],
  timing: ['top-dead-centre', 'centreline', 'events', 'cam-timing'],
  adjuster: ['adjuster', 'lash', 'lash-hot-cold'],
} as const;

export type WorkedStep = keyof typeof PARTS;
export type PartName = (typeof PARTS)[WorkedStep][number];

export const PART_TITLES: Readonly<Record<PartName, string>> = {
  marks: 'Mark on the stem’s end',
  'roller-sweep': 'Least sweep of this lift',
  linkage: 'Whole linkage',
  'top-dead-centre': 'Two readings at the stop',
  centreline: 'Centreline by equal drop',
  events: 'Opening and closing at .050',
  'cam-timing': 'Figures of a whole cam',
  adjuster: 'What the turns do',
  lash: 'Lash log',
  'lash-hot-cold': 'Lash hot and cold',
};

/** What each part computes with; the marks and the log are readings of their own. */
export const COMPUTED_BY: Readonly<Partial<Record<PartName, string>>> = {
  'roller-sweep': 'roller-sweep',
  linkage: 'linkage',
  'top-dead-centre': 'top-dead-centre',
  centreline: 'centreline',
  events: 'centreline',
  'cam-timing': 'cam-timing',
  adjuster: 'adjuster',
  'lash-hot-cold': 'lash-hot-cold',
};

/** The part of a step that a name stands for, if it has one of that name. */
export const partNamed = (step: WorkedStep, name: string | undefined): PartName | undefined =>
  PARTS[step].find((part) => part === name);
