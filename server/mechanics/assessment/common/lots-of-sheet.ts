import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { LotRead } from '../../valve-sheet/read-twice.ts';
import type { Evidence, Spring, ValvePlace } from '../evidence.ts';
import { placeOf } from './said.ts';

/** Valve lifts of one side on one spring are read in one way; a sheet has the lash out, as its set-ups have. */
export const wayOf = ({ valve }: ValvePlace, spring: Spring, lash = 'out'): string =>
  [sideOfValve(valve), spring, lash].join('|');

/** Valve lifts of the sheet that were read with a named arm, each by itself. */
export const lotsOfSheet = ({ sheet }: Evidence): LotRead[] =>
  sheet.flatMap((each) =>
    each.standing &&
    each.arms === 'these' &&
    each.kind === 'valve-lift' &&
    each.armId !== undefined &&
    each.reading.value !== undefined
      ? [{ armId: each.armId, place: placeOf(each), way: wayOf(each, each.spring), lift: each.reading.value }]
      : [],
  );
