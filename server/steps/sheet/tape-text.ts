import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { SHEET_KINDS, type SheetKind } from '../../../shared/schemas/sheet.ts';
import { valveSaid } from '../../../shared/schemas/words.ts';
import { tellEvents } from '../../call/tell-events.ts';
import { SHEET_EVENTS } from '../../records/sheet/events.ts';

const one = ({ kind, cylinder, valve }: { kind: SheetKind; cylinder: number; valve: string }) =>
  `${SHEET_KINDS[kind]} ${cylinder} ${valveSaid(valve)}`;

/** As many readings of one entry as the tape spells out each with its valve. */
const SPELT = 4;
/** As many as it reads back by what they are of; a longer sheet is told by its count. */
const READ_BACK = 16;

interface Told {
  readonly kind: SheetKind;
  readonly cylinder: number;
  readonly valve: string;
  readonly readAs: string;
}

/** `Lobe lift, intake: 1 .350 in, 2 .350 in; Valve lift, intake: 1 .525 in` */
function readBack(readings: readonly Told[]): string {
  const nameOf = ({ kind, valve }: Told) => `${SHEET_KINDS[kind]}, ${valveSaid(valve)}`;
  return [...new Set(readings.map(nameOf))]
    .map((of) => {
      const own = readings.filter((each) => nameOf(each) === of);
      return `${of}: ${own.map(({ cylinder, readAs }) => `${cylinder} ${asEntered(readAs)}`).join(', ')}`;
    })
    .join('; ');
}

function sheetSaid(readings: readonly Told[]): string {
  if (readings.length > READ_BACK) return `${readings.length} readings on the per-valve sheet`;
  if (readings.length > SPELT) return `Sheet, ${readings.length} readings: ${readBack(readings)}`;
  return `Sheet: ${readings.map((each) => `${one(each)} ${asEntered(each.readAs)}`).join('; ')}`;
}

/** What the events of the sheet say on the tape. */
export const SHEET_TOLD = tellEvents(SHEET_EVENTS, {
  'sheet-readings-kept': ({ readings }) => ({
    kind: 'reading',
    text: sheetSaid(readings),
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
