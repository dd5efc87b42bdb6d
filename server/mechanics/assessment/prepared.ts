import { withPutOnLater } from './change/put-on-later.ts';
import type { Evidence } from './evidence.ts';
import { withMountingAnswered } from './marks/mounting.ts';
import { withOwnBoxes } from './part/arm-in-box.ts';
import { withPartMarks } from './part/arm-marks.ts';
import { withMovedArms } from './read-since/moved-arms.ts';
import { withReadSince } from './read-since/read-since.ts';
import { withOnlyWorkedOut } from './workings/too-far.ts';

/**
 * What is known of a build as all that is said of it is made from: with what was answered of it, and without what an
 * answer found wrong and somebody read again. Whoever says less than the whole of it starts here too.
 */
export const prepared = (evidence: Evidence): Evidence =>
  withOnlyWorkedOut(
    withReadSince(
      withPutOnLater(withOwnBoxes(withPartMarks(withMountingAnswered(withMovedArms(evidence))))),
    ),
  );
