import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { MARK_FOUND, markSaidOf } from '../../../shared/schemas/tip-mark.ts';
import { valveSaid } from '../../../shared/schemas/words.ts';
import { tellEvents } from '../../call/tell-events.ts';
import { TIP_MARK_EVENTS } from '../../records/tip-marks/events.ts';

const of = ({ cylinder, valve }: { cylinder: number; valve: string }) =>
  `Tip mark ${cylinder} ${valveSaid(valve)}`;

const how = (found: keyof typeof MARK_FOUND): string =>
  found === 'not-said' ? '' : `, ${MARK_FOUND[found].toLowerCase()}`;

/** What the events of marks on stem ends say on the tape. */
export const MARKS_TOLD = tellEvents(TIP_MARK_EVENTS, {
  'tip-mark-kept': (data, { gear }) => ({
    kind: 'reading',
    text: `${of(data)}${how(data.found)}`,
    value: asEntered(markSaidOf(data.readAs, gear)),
  }),
  'tip-mark-replaced': (data, { gear }) => ({
    kind: 'reading',
    text: `${of(data)}${how(data.found)}, in place of ${data.replaces}: ${data.reason}`,
    value: asEntered(markSaidOf(data.readAs, gear)),
  }),
  'tip-mark-struck': (data) => ({
    kind: 'note',
    text: `${of(data)}: ${data.replaces} struck out, ${data.reason}`,
  }),
});
