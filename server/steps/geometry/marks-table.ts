import { defined } from '../../../shared/defined.ts';
import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { siIf } from '../../../shared/schemas/entered.ts';
import { MARK_FOUND } from '../../../shared/schemas/tip-mark.ts';
import type { ValveGear } from '../../../shared/schemas/words.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import type { CallContext } from '../../call/context.ts';
import type { TipMark } from '../../records/tip-marks/tip-mark-table.ts';
import { momentText } from '../../web/dates.ts';
import { placeText } from './mark-drawings.ts';

const foundCell = (mark: TipMark): TableCell => ({
  text: MARK_FOUND[mark.found],
  why: `${mark.by}, ${momentText(mark.at)}`,
});

function markCell(context: CallContext, mark: TipMark): TableCell {
  if (mark.replacedBy === undefined && !mark.struck)
    return { text: asEntered(mark.width.readAs), href: `${context.base}/tip-marks/${mark.id}` };
  return {
    text: `${mark.struck ? 'struck: ' : 'replaced: '}${asEntered(mark.width.readAs)}`,
    ...(mark.reason === '' ? {} : { why: mark.reason }),
  };
}

const placeOf = ({ side, off }: TipMark, gear: ValveGear): string => {
  const si = siIf(off);
  return placeText({ side, ...defined({ off: si }) }, gear);
};

/** What it was made with; of a follower there is no such thing. */
const madeWith = ({ pushrod, shims }: TipMark): string =>
  asEntered(pushrod?.readAs ?? (shims === undefined ? 'not said' : `${shims.readAs} of shims`));

/** Every mark that was entered, each with the way to put it right. */
export function marksTable(context: CallContext): TableData {
  const { gear } = context.assessment.details.gear;
  const follower = gear === 'finger-follower';
  const stopped = context.assessment.stop.length > 0;
  return {
    caption: 'Marks kept',
    columns: [
      { label: 'Valve' },
      ...(follower ? [] : [{ label: 'Pushrod or shims', number: true }]),
      { label: 'Width', number: true },
      { label: 'Where' },
      { label: 'How, who, when' },
    ],
    rows: context.record.tipMarks.toReversed().map((mark) => ({
      cells: [
        `${mark.cylinder} ${mark.valve}`,
        ...(follower ? [] : [madeWith(mark)]),
        markCell(context, mark),
        placeOf(mark, gear),
        foundCell(mark),
      ],
    })),
    empty: stopped
      ? 'No mark kept yet.'
      : 'No mark kept yet. Ink the tip, light spring, two turns by hand, and measure the mark.',
    note: 'Nothing is overwritten: choose a width to put its mark right, with the reason.',
  };
}
