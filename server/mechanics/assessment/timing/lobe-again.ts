import { turned } from '../common/answers-of.ts';

/** What is done where the centreline of a lobe was read or told wrong. */
export const LOBE_AGAIN = turned(
  'read the lobe again at equal drop, coming up to the lift in running direction.',
);
