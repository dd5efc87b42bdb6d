/** Said wherever turns of a nut on the stud are taken for preload. */
export const simpleRule =
  'A turn is often said to be one pitch of preload; that leaves out the lever of a nut on the stud, which presses the plunger 1 + 1/ratio times as far.';

/** Said wherever a gap is told as zero: how far it is past zero nobody can read. */
export const noGapFound =
  'A lash found at zero may be a valve held off its seat by more than that: make a gap first, and measure again.';

/** Said wherever a lash is worked to. */
export const sameHeat = 'Found and wanted lash are of one heat: cold against cold, or hot against hot.';

/** How zero lash was found, from where turns are counted. */
export const ZERO_FOUND_BY = ['up-and-down', 'spin', 'feeler'] as const;
type ZeroFoundBy = (typeof ZERO_FOUND_BY)[number];

/** Said of a hydraulic lifter wherever its turns are counted from zero. */
export const bledFirst =
  'Let the lifter bleed down first: one that is pumped up stands at the top of its travel or holds the valve open, and turns counted from there are not preload.';

/** What the way of finding zero leaves open; up-and-down play leaves nothing. */
export function zeroCautions(foundBy: ZeroFoundBy | undefined, lifter: 'hydraulic' | 'solid'): string[] {
  if (foundBy === 'spin')
    return [
      'Zero was found by spinning the pushrod: an oily one still spins under load, so zero may be past where it was called. Find it again by up-and-down play.',
    ];
  if (foundBy === 'feeler' && lifter === 'hydraulic')
    return [
      'Zero was found with a feeler: a hydraulic plunger gives way under it, so there is no gap to feel. Find it by up-and-down play.',
    ];
  return [];
}
