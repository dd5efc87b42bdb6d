import type { PartName } from './parts.ts';

/** What is asked at the desk and how it is done at the bench, part by part. */
export const PART_WORDS: Readonly<Record<PartName, { readonly say: string; readonly how: string }>> = {
  marks: {
    say: 'Is it sideways or along the rocker? How wide is it? Then, where does its middle sit: toward the valley or the exhaust side? Fresh ink, or found after running?',
    how: 'Ink the tip, light spring, two turns by hand. Measure the width of the mark first, then where its middle sits.',
  },
  'roller-sweep': {
    say: 'How long is the arm, from the middle of the trunnion to the middle of the roller? And what is the net lift?',
    how: 'Measure the arm from the middle of the trunnion to the middle of the roller.',
  },
  linkage: {
    say: 'Are there lengths and angles of the whole train, from a drawing?',
    how: 'This needs a drawing of the engine. Without one, leave it.',
  },
  'top-dead-centre': {
    say: 'What does the wheel read at the stop, turned one way, and turned the other?',
    how: 'Positive stop in, plugs out. Turn gently by hand to contact, one way and the other; never the starter. Take the stop out again.',
  },
  centreline: {
    say: 'Indicator on the lifter: what does the wheel read .050 under the peak going up, and .050 under it going down?',
    how: 'Indicator on the lifter, zero at full lift. Turn in running direction, read the wheel at the same drop on either side.',
  },
  events: {
    say: 'Lifter at .050: where does it open, before or after which dead centre? And where does it close?',
    how: 'Turn in running direction until the lifter is at .050 and read the wheel; go on over the peak to .050 again.',
  },
  'cam-timing': {
    say: 'What does the card give for both lobes: events, or duration and centreline?',
    how: 'Copy both lobes from the card, all at the same lift.',
  },
  adjuster: {
    say: 'Which thread is on the adjuster, and how far was it turned from zero lash?',
    how: 'On the base circle. Find zero lash by up-and-down play, not by spinning the pushrod; then count the turns.',
  },
  lash: {
    say: 'Did the nut move? What is the gap, hot or cold, and what was it last set to, when and by whom?',
    how: 'Look at the nut before you touch it. On the base circle, feeler between roller and stem. Say hot or cold.',
  },
  'lash-hot-cold': {
    say: 'Which lash is wanted hot, and what are block, head, pushrod and valve made of?',
    how: 'A first figure only: the best way is to read one pair cold and hot.',
  },
};
