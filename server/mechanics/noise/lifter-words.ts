import type { ValveGear } from '../../../shared/schemas/words.ts';

/** What takes up the gap, or has one, as it is asked after. */
interface LifterWords {
  readonly thing: string;
  readonly ask: string;
}

/** Source: how each valve gear is made, general knowledge from memory, no published source. */
export const LIFTER_WORDS: Readonly<Record<ValveGear, LifterWords>> = {
  pushrod: {
    thing: 'whether the lifters are hydraulic or solid',
    ask: 'Are the lifters hydraulic or solid?',
  },
  bucket: {
    thing: 'whether the buckets are hydraulic or solid',
    ask: 'Are the buckets hydraulic or solid?',
  },
  'finger-follower': {
    thing: 'whether the followers have hydraulic pivots, or a lash that is set',
    ask: 'Are the followers on hydraulic pivots, or is their lash set?',
  },
  'cam-rocker': {
    thing: 'whether the lash is set by a screw, or a hydraulic part takes it up',
    ask: 'Is the lash set by a screw, or does a hydraulic part take it up? It is entered as a solid or a hydraulic lifter.',
  },
};
