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

/** What belongs to the part and is no part of it: measured as well, and in no line of the catalogue. */
export const PART_FITTINGS = {
  'stud-diameter': 'Stud or bolt, over its thread',
  'stud-pitch': 'Pitch of that thread',
  'stem-diameter': 'Valve stem',
} as const;

export const PART_KINDS = { ...PART_SIZES, ...PART_FEATURES, ...PART_FITTINGS, ...PART_MARKS } as const;

/** What a size is read with. A guess stays a guess. */
export const PART_TOOLS = {
  'not-said': 'Not said',
  caliper: 'Caliper',
  micrometer: 'Micrometer',
  rule: 'Rule or tape',
  'thread-gauge': 'Thread pitch gauge',
  guess: 'A guess, not measured',
} as const;
export type PartTool = keyof typeof PART_TOOLS;

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
export const isPartFitting = (kind: string): kind is keyof typeof PART_FITTINGS => has(PART_FITTINGS, kind);
/** Everything that has a length. */
export type PartMeasured = keyof typeof PART_SIZES | keyof typeof PART_FITTINGS;
export const isMeasured = (kind: string): boolean => isPartSize(kind) || isPartFitting(kind);
export const isPartTool = (tool: string): tool is PartTool => has(PART_TOOLS, tool);
