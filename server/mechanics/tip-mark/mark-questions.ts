import { formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import { IN } from '../kit/si.ts';
import { alongRocker, nextLength } from './next-length.ts';
import type { Mark, MarkContext, MarkQuestion } from './types.ts';

/** Equal within a billionth of an inch: nobody measures that. */
const EQUAL = 1e-9 * IN;

const said = (si: number): string => formatQuantity(fromSi(si, 'in'), { places: 3 });

const AGAIN = 'same ink, light spring, two turns by hand; send width and place.';

function sidewaysQuestion({ side }: Mark): MarkQuestion[] {
  if (side !== 'sideways') return [];
  return [
    {
      code: 'mark-sideways',
      ask: 'Do the guide plate and the stud bring the rocker square over the stem?',
      size: 'Out of line sideways: no pushrod length mends that.',
      test: 'loosen the plate, line the roller up on the stem, tighten, and ink again.',
    },
  ];
}

function edgeQuestion({ width, off }: Mark, { stem }: MarkContext): MarkQuestion[] {
  if (stem === undefined || off + width / 2 <= stem / 2 + EQUAL) return [];
  return [
    {
      code: 'mark-at-the-edge',
      ask: 'Does the mark run off the edge of the stem?',
      size: `Its far side is ${said(off + width / 2)} from the middle; the stem ends at ${said(stem / 2)}.`,
      test: 'stop there. Look at the edge and at the guide; a qualified shop looks before it runs.',
    },
  ];
}

function narrowQuestion({ width }: Mark, leastSweep: number): MarkQuestion[] {
  if (width >= leastSweep - EQUAL) return [];
  return [
    {
      code: 'mark-narrower-than-least',
      ask: 'Was the whole tip inked, and turned two whole turns?',
      size: `The mark is ${said(width)}; a roller on this arm can’t sweep less than ${said(leastSweep)} at this lift.`,
      test: 'ink it again all over, two whole turns; and read arm and lift again.',
    },
  ];
}

/** The narrowest mark to compare with: of this valve at another length, or of a neighbour. */
function narrowestBeside(marks: readonly Mark[], beside: readonly Mark[]): number | undefined {
  const others = [...marks.slice(0, -1), ...beside].map(({ width }) => width);
  return others.length === 0 ? undefined : Math.min(...others);
}

function wideQuestion(marks: readonly Mark[], mark: Mark, context: MarkContext): MarkQuestion[] {
  const { leastSweep, overLeast, beside, mounting } = context;
  if (leastSweep === undefined || mark.width <= leastSweep + overLeast + EQUAL) return [];
  const narrowest = narrowestBeside(marks, beside);
  const centred = alongRocker(mark) === 0;
  const compared =
    narrowest === undefined
      ? 'An ink mark holds the contact line’s own width as well, so one mark alone can’t be called wide.'
      : `The narrowest one beside it is ${said(narrowest)}.`;
  const first =
    mounting === 'stud'
      ? 'try .050 longer and .050 shorter, ink both, and keep the narrower of the three even where it is off centre.'
      : 'set the height of the stand first, then ink again.';
  return [
    {
      code: 'mark-wide',
      ask: centred
        ? 'Centred, and still wide: is the height right for this lift?'
        : 'Is the mark wide because the height or the length is off?',
      size: `${said(mark.width)}: over the least of ${said(leastSweep)} by ${said(mark.width - leastSweep)}, where ${said(overLeast)} is allowed. ${compared}`,
      test: narrowest === undefined ? `ink a neighbour in the same way and compare. Then ${first}` : first,
    },
  ];
}

function onStuds(marks: readonly Mark[], mark: Mark): MarkQuestion[] {
  const short = mark.side === 'valley';
  const next = nextLength(marks);
  const size = `Toward the ${short ? 'valley: on a stud the pushrod is too short' : 'exhaust side: on a stud the pushrod is too long'}.`;
  if (next?.how === 'against')
    return [
      {
        code: 'length-moves-nothing',
        ask: 'Did anything but the length change between these marks?',
        size: 'A longer pushrod should carry the mark toward the exhaust side; here it did not.',
        test: `set both lengths again with a caliper, and ink each: ${AGAIN}`,
      },
    ];
  const way = short ? 'longer' : 'shorter';
  const ask =
    next === undefined
      ? `Would a pushrod .050 in ${way} bring the mark to the middle?`
      : `Would ${said(next.length)} bring the mark to the middle?${next.how === 'line' ? ' The marks so far point there.' : ` That is ${said(Math.abs(next.change))} ${way}.`}`;
  const test =
    next === undefined
      ? `measure this pushrod, change it by .050 in, ink again: ${AGAIN}`
      : `ink at that length: ${AGAIN}`;
  return [{ code: 'mark-off-centre', ask, size, test }];
}

function placeQuestion(marks: readonly Mark[], mark: Mark, { mounting }: MarkContext): MarkQuestion[] {
  if (mark.side !== 'valley' && mark.side !== 'exhaust') return [];
  if (mounting === 'stud') return onStuds(marks, mark);
  const toward = `Toward the ${mark.side === 'valley' ? 'valley' : 'exhaust side'}.`;
  if (mounting === undefined)
    return [
      {
        code: 'mark-off-centre',
        ask: 'How are the rockers mounted: on studs, pedestals or a shaft?',
        size: toward,
        test: 'say the mounting. On studs the length moves the mark; on a shaft the height of the stands does.',
      },
    ];
  return [
    {
      code: 'mark-off-centre',
      ask: `Is the height of the ${mounting === 'shaft' ? 'stands' : 'pedestal'} right?`,
      size: `${toward} On a ${mounting} the height sets the geometry; the pushrod’s length sets the adjustment.`,
      test: `change the shims under it by one, and ink again: ${AGAIN}`,
    },
  ];
}

/**
 * What is asked of the newest mark of a valve: sideways first, then its width, then its place, as the trade looks at
 * them; a centred wide mark is still asked about.
 */
export function markQuestions(marks: readonly Mark[], context: MarkContext): MarkQuestion[] {
  const mark = marks.at(-1);
  if (mark === undefined) return [];
  const { leastSweep } = context;
  return [
    ...edgeQuestion(mark, context),
    ...sidewaysQuestion(mark),
    ...(leastSweep === undefined ? [] : narrowQuestion(mark, leastSweep)),
    ...wideQuestion(marks, mark, context),
    ...placeQuestion(marks, mark, context),
  ];
}
