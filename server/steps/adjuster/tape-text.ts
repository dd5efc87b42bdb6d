import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { valveSaid } from '../../../shared/schemas/words.ts';
import { tellEvents } from '../../call/tell-events.ts';
import { partSaid } from '../../mechanics/lash/adjuster-words.ts';
import { LASH_EVENTS } from '../../records/lash-log/events.ts';
import { pickedDayText } from '../../web/dates.ts';

/** What the events of the lash log say on the tape; corrections are the sheet's. */
export const LASH_TOLD = tellEvents(LASH_EVENTS, {
  'lash-kept': ({ cylinder, valve, moment, engine, nut, readOn, doneBy, readAs, shim }, { adjuster }) => {
    const parts = [
      `Lash ${cylinder} ${valveSaid(valve)} ${moment}`,
      ...(engine === 'not-said' ? [] : [engine]),
      ...(readOn === '' ? [] : [`on ${pickedDayText(readOn, new Date())}`]),
      ...(doneBy === '' ? [] : [`by ${doneBy}`]),
      ...(shim === '' ? [] : [`with a shim of ${asEntered(shim)}`]),
      ...(nut === 'not-looked' ? [] : [partSaid(adjuster, nut)]),
    ];
    return { kind: 'reading', text: parts.join(', '), value: asEntered(readAs) };
  },
});
