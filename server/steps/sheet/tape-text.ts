import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { SHEET_KINDS, type SheetKind } from '../../../shared/schemas/sheet.ts';
import { valveSaid } from '../../../shared/schemas/words.ts';
import { tellEvents } from '../../call/tell-events.ts';
import { SHEET_EVENTS } from '../../records/sheet/events.ts';

const one = ({ kind, cylinder, valve }: { kind: SheetKind; cylinder: number; valve: string }) =>
  `${SHEET_KINDS[kind]} ${cylinder} ${valveSaid(valve)}`;

/** How many readings of one entry the tape spells out; a whole sheet is told by its count. */
const SPELT = 4;

/** What the events of the sheet say on the tape. */
export const SHEET_TOLD = tellEvents(SHEET_EVENTS, {
  'sheet-readings-kept': ({ readings }) => ({
    kind: 'reading',
    text:
      readings.length > SPELT
        ? `${readings.length} readings on the per-valve sheet`
        : `Sheet: ${readings.map((each) => `${one(each)} ${asEntered(each.readAs)}`).join('; ')}`,
  }),
  'sheet-reading-replaced': (data) => ({
    kind: 'reading',
    text: `${one(data)}, in place of ${data.replaces}: ${data.reason}`,
    value: asEntered(data.readAs),
  }),
  'sheet-reading-struck': (data) => ({
    kind: 'note',
    text: `${one(data)}: ${data.replaces} struck out, ${data.reason}`,
  }),
});
