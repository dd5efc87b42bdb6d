/** Sizes that are measured on a rocker in the hand, in the order in which they are cheapest to get. */
export const SIZE_KINDS = [
  'hole-across-trunnion',
  'width-across-trunnion',
  'roller-diameter',
  'body-width',
  'pivot-to-tip',
  'pivot-to-cup',
] as const;
export type SizeKind = (typeof SIZE_KINDS)[number];

/** What is seen rather than measured. */
export const FEATURE_KINDS = ['rings', 'tip', 'mount'] as const;
export type FeatureKind = (typeof FEATURE_KINDS)[number];

export type PartKind = SizeKind | FeatureKind;
