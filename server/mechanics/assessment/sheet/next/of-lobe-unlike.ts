import { placeOf, valveSubject } from '../../common/said.ts';
import type { SheetRowDetail, SheetSideDetail } from '../detail.ts';
import { lobesUnlikeOf } from '../lobe-unlike.ts';
import type { Said } from './said.ts';

const TWICE = 2;

/** A lobe that does not go with its valve is read a second time. */
export const ofLobeUnlike = (sides: readonly SheetSideDetail[], rows: readonly SheetRowDetail[]): Said[] =>
  sides.flatMap(lobesUnlikeOf).flatMap((each) => {
    const read = rows
      .filter((row) => placeOf(row) === placeOf(each))
      .flatMap(({ cells }) => cells.filter(({ kind }) => kind === 'lobe-lift'));
    return read.some(({ passes }) => passes >= TWICE)
      ? []
      : [
          {
            action: 'read-lobe-again',
            about: valveSubject(each),
            sentence: `Read the lobe of ${placeOf(each)} at the lifter once more; no part has to move for that.`,
            reason: `It lies off the other lobes, and the valve lift of ${placeOf(each)} does not.`,
          },
        ];
  });
