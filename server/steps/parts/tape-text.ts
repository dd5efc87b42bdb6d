import { valveSaid } from '../../../shared/schemas/words.ts';
import { ifSaid, tellEvents } from '../../call/tell-events.ts';
import { ARM_EVENTS } from '../../records/arms/events.ts';

const marked = (label: string, mark: string) => `${label} ${mark === '' ? 'not said' : `“${mark}”`}`;

/** What the events of arms say on the tape. */
export const ARMS_TOLD = tellEvents(ARM_EVENTS, {
  'arm-added': ({ name, ratioStamp, otherNumber, boxLabel }) => {
    const marks = [
      marked('ratio stamp', ratioStamp),
      marked('other number', otherNumber),
      marked('box label', boxLabel),
    ];
    return { kind: 'note', text: `${name}: ${marks.join(', ')}` };
  },
  'arm-marked': ({ arm, ratioStamp, otherNumber, boxLabel, reason }) => {
    const marks = [
      marked('ratio stamp', ratioStamp),
      marked('other number', otherNumber),
      marked('box label', boxLabel),
    ];
    return { kind: 'note', text: `${arm}, read again: ${marks.join(', ')}${ifSaid(': ', reason)}` };
  },
  'arm-placed': ({ arm, cylinder, valve, reason }) => ({
    kind: 'note',
    text: `${arm} sits on ${cylinder} ${valveSaid(valve)} now${ifSaid(': ', reason)}`,
  }),
});
