/** Said wherever turns of a nut on the stud are taken for preload. */
export const simpleRule =
  'A turn is often said to be one pitch of preload; that leaves out the lever of a nut on the stud, which presses the plunger 1 + 1/ratio times as far.';

/** Said wherever a gap is told as zero: how far it is past zero nobody can read. */
export const noGapFound =
  'A lash found at zero may be a valve held off its seat by more than that: make a gap first, and measure again.';

/** Said wherever a lash is worked to. */
export const sameHeat = 'Found and wanted lash are of one heat: cold against cold, or hot against hot.';
