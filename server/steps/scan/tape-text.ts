import { asTold } from '../../../shared/quantities/as-entered.ts';
import { tellEvents } from '../../call/tell-events.ts';
import { GAP_SCAN_EVENTS } from '../../records/gap-scans/events.ts';

const of = ({ cylinder, valve }: { cylinder: number; valve: string }) => `Scan ${cylinder} ${valve}`;

/** What the events of scans say on the tape. */
export const SCANS_TOLD = tellEvents(GAP_SCAN_EVENTS, {
  'gap-scan-kept': (data) => ({
    kind: 'reading',
    text: `${of(data)}${data.arms === 'before' ? ', arms before' : ''}`,
    value: asTold(data.readAs),
  }),
  'gap-scan-replaced': (data) => ({
    kind: 'reading',
    text: `${of(data)}, in place of ${data.replaces}: ${data.reason}`,
    value: asTold(data.readAs),
  }),
  'gap-scan-struck': (data) => ({
    kind: 'note',
    text: `${of(data)}: ${data.replaces} struck out, ${data.reason}`,
  }),
});
