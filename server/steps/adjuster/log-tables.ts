import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { formatFigure, formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { partSaid } from '../../mechanics/lash/adjuster-words.ts';
import { growthTold } from '../../mechanics/lash/growth.ts';
import type { LashGrowth } from '../../mechanics/lash/types.ts';
import type { LoggedLash } from '../../records/lash-log/lash-log.ts';
import { pickedDayText } from '../../web/dates.ts';
import { standingLines } from './lash-text.ts';

const inches = (si: number): string => formatQuantity(fromSi(si, 'in'), { places: 3 });

function growthText(growth: LashGrowth): string {
  const { low, high } = growth;
  const signed = (si: number | undefined) =>
    si === undefined ? 'open' : `${si > 0 ? '+' : ''}${inches(si)}`;
  const figures = low === high ? signed(low) : `${signed(low)} to ${signed(high)}`;
  switch (growthTold(growth)) {
    case 'not-compared':
      return growth.heatDiffers ? 'hot against cold: not compared' : 'not known';
    case 'cannot-tell':
      return `${figures}: within the steps of the feelers, can’t be told`;
    default:
      return figures;
  }
}

/** `.018 in`, or the feelers it lies between: `.024 to .026 in`. */
function gapText({ reading }: LoggedLash['reading']): string {
  const { low, high, readAs, unit } = reading;
  if (low === undefined || high === undefined) return asEntered(readAs);
  const from = formatFigure({ value: low, unit }, { places: 3 });
  return `${from} to ${formatQuantity({ value: high, unit }, { places: 3 })}`;
}

function lineCells(context: CallContext, line: LoggedLash): (string | TableCell)[] {
  const { reading, engine, moment, nut, on, doneBy, shim } = line;
  const by = doneBy === '' ? reading.by : `${doneBy}; entered by ${reading.by}`;
  const how = `${moment === 'set' ? 'set' : 'found'}${engine === 'not-said' ? '' : `, ${engine}`}`;
  return [
    valveName(reading),
    { text: pickedDayText(on, reading.at), why: by },
    {
      text: how,
      // A shim that was measured was looked at.
      why:
        shim === undefined
          ? partSaid(context.assessment.details.lash.adjuster, nut)
          : `with a shim of ${asEntered(shim.readAs)}`,
    },
    { text: gapText(reading), href: `${context.base}/sheet/readings/${reading.id}` },
  ];
}

export function logTable(context: CallContext): TableData {
  const { limit } = context.assessment.details.lash;
  return {
    caption: 'Lash log, newest day first',
    columns: [{ label: 'Valve' }, { label: 'Day, who' }, { label: 'How' }, { label: 'Lash', number: true }],
    rows: standingLines(context)
      .toReversed()
      .map((line) => ({ cells: lineCells(context, line) })),
    empty: 'No lash kept yet. The first line: what it was found at, before anything is turned.',
    note: `Growth over ${inches(limit.value)} on one valve is asked about (${limit.source}). Hot and cold are not set against each other.`,
  };
}

/** How far each gap grew; nothing where no valve has two lines to set against each other. */
export function growthTable({ assessment }: CallContext): TableData[] {
  const grown = assessment.details.lash.valves.filter(({ growth }) => growth !== undefined);
  if (grown.length === 0) return [];
  return [
    {
      caption: 'Growth since it was last set',
      columns: [{ label: 'Valve' }, { label: 'Growth', number: true }],
      rows: grown.map(({ growth, ...place }) => ({
        cells: [valveName(place), growth === undefined ? '' : growthText(growth)],
      })),
    },
  ];
}
