import { IN } from '../kit/si.ts';
import { type Advice, adviceOf } from './advice.ts';
import { inchesSaid as said, settingSaid } from './advice-said.ts';
import type { Mark, MarkContext, Mounting } from './types.ts';

const EQUAL = 1e-9 * IN;

const WHERE: Readonly<Record<Mark['side'], string>> = {
  centred: 'in the middle',
  valley: 'toward the valley',
  exhaust: 'toward the exhaust side',
  sideways: 'out of line sideways',
};

/** `.085 in wide, toward the exhaust side.` */
export const seenSaid = ({ width, side }: Mark): string => `${said(width)} wide, ${WHERE[side]}.`;

/** How its width stands against what this lift sweeps on this arm. */
function widthSaid({ width }: Mark, leastSweep: number, overLeast: number): string {
  const most = leastSweep + overLeast;
  if (width > most + EQUAL) return `That is over the ${said(most)} that is ordinary for this lift.`;
  return width < leastSweep - EQUAL
    ? `A roller can’t sweep less than ${said(leastSweep)} at this lift: the ink, the arm or the lift is off.`
    : `That is ordinary for this lift: from ${said(leastSweep)}, and up to ${said(most)}.`;
}

function keptSaid(at: number | undefined, mounting: Mounting, isOver: boolean): string {
  if (mounting !== 'stud') return 'The height may stay.';
  if (at === undefined) return 'The pushrod may stay.';
  return isOver ? `It is narrowest at ${said(at)}.` : `${said(at)} is the length.`;
}

function adviceFound(advice: Advice, mark: Mark, context: MarkContext): string {
  const { mounting = 'stud', leastSweep, overLeast } = context;
  switch (advice.how) {
    case 'keep':
      return keptSaid(
        advice.at,
        mounting,
        leastSweep !== undefined && mark.width > leastSweep + overLeast + EQUAL,
      );
    case 'contradict':
      return 'The marks contradict each other.';
    case 'none-narrow':
      return `None that was tried makes it narrow: it is least near ${settingSaid(advice.at, mounting) ?? 'the lowest'}.`;
    case 'both-ways':
      return mark.side === 'centred'
        ? 'In the middle and still wide is not right yet.'
        : 'Which way to go one mark can’t tell.';
    case 'change': {
      if (advice.from === 'place')
        return `On a stud the pushrod is too ${advice.way === 'up' ? 'short' : 'long'}.`;
      if (advice.found === 'least' && advice.to !== undefined)
        return `The widths are least near ${settingSaid(advice.to, mounting) ?? 'the lowest'}.`;
      const longer = mounting === 'stud' ? ['longer', 'shorter'] : ['higher', 'lower'];
      return `They get narrower the ${advice.way === 'up' ? longer[0] : longer[1]} it is.`;
    }
  }
}

/** What the marks of a valve come to, the judged one last: its width, then its place, in sentences to read aloud. */
export function findingSaid(marks: readonly Mark[], context: MarkContext): string {
  const mark = marks.at(-1);
  if (mark === undefined) return '';
  const { leastSweep, overLeast } = context;
  const width = leastSweep === undefined ? [] : [widthSaid(mark, leastSweep, overLeast)];
  const isWhole = leastSweep === undefined || mark.width >= leastSweep - EQUAL;
  const asked = isWhole ? adviceOf(marks, context) : undefined;
  // That it may stay is said once its width is known to be ordinary.
  const advice = asked?.how === 'keep' && leastSweep === undefined ? undefined : asked;
  const found =
    mark.side === 'sideways'
      ? ['No pushrod length mends that: the plate or the stud is out of line.']
      : advice === undefined
        ? []
        : [adviceFound(advice, mark, context)];
  return [seenSaid(mark), ...width, ...found].join(' ');
}
