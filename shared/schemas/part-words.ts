/** What is read of a rocker in the hand, with the words it is shown in. */
export const PART_SIZES = {
  'hole-across-trunnion': 'Hole across the trunnion',
  'width-across-trunnion': 'Width across the trunnion',
  'roller-diameter': 'Roller diameter',
  'body-width': 'Body width at the pivot',
  'pivot-to-tip': 'Pivot to tip',
  'pivot-to-cup': 'Pivot to cup',
} as const;

export const PART_FEATURES = {
  rings: 'Retaining rings',
  tip: 'Tip',
  mount: 'Mount',
} as const;

/** Three different things, each kept word for word; nothing is ever copied from one to another. */
export const PART_MARKS = {
  'ratio-stamp': 'What looks like a ratio on the part',
  'other-number': 'Every other number or letter on the part',
  'box-label': 'What the box or invoice says',
} as const;

export const PART_KINDS = { ...PART_SIZES, ...PART_FEATURES, ...PART_MARKS } as const;

export const RINGS = { visible: 'Rings visible', none: 'No rings, bearings flush' } as const;
export const TIPS = { roller: 'Roller tip', shoe: 'Shoe tip' } as const;
export const MOUNTS = { stud: 'Stud', pedestal: 'Pedestal', shaft: 'Shaft' } as const;

/** The words that each feature is answered with. */
export const FEATURE_WORDS: Readonly<Record<keyof typeof PART_FEATURES, Readonly<Record<string, string>>>> = {
  rings: RINGS,
  tip: TIPS,
  mount: MOUNTS,
};

const has = <T extends object>(words: T, kind: string): kind is Extract<keyof T, string> =>
  Object.hasOwn(words, kind);
export const isPartSize = (kind: string): kind is keyof typeof PART_SIZES => has(PART_SIZES, kind);
export const isPartFeature = (kind: string): kind is keyof typeof PART_FEATURES => has(PART_FEATURES, kind);
export const isPartMark = (kind: string): kind is keyof typeof PART_MARKS => has(PART_MARKS, kind);
