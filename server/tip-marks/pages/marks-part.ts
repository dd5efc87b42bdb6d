import { MARK_FOUND } from '../../../shared/schemas/tip-mark.ts';
import type { Slot } from '../../../views/parts/part.ts';
import type { TableCell } from '../../../views/parts/table.examples.ts';
import { type Again, formSlot, type StepBody } from '../../calls/pages/forms-on-page.ts';
import { momentText } from '../../calls/pages/moments.ts';
import type { Sight } from '../../calls/pages/sight.ts';
import { tipMarkAsked } from '../../drawings/tip-mark.ts';
import { arranged } from '../../workings/pages/neutral.ts';
import type { JudgedMarks, MarkedValve } from '../judged.ts';
import type { LeastSweep } from '../least-sweep.ts';
import type { TipMark } from '../tip-mark-table.ts';
import { inchText, marksDrawing, placeText } from './mark-drawings.ts';
import { markForm } from './mark-form.ts';

const cap = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What the width is set against, and in whose words; or what is missing for it, with the way to it. */
function leastSlot(sight: Sight, side: string, least: LeastSweep, judged: JudgedMarks): Slot {
  const over = judged.limit.value.readAs;
  const link = { href: `${sight.base}/steps/geometry?of=roller-sweep`, label: 'Work it out' };
  const text =
    least.value === undefined
      ? `The least sweep on the ${side} is not known yet; missing: ${least.missing.join(', ')}.`
      : `Least sweep on the ${side}: ${inchText(least.value)} (${least.from.join('; ')}). Looked at again over ${over} more (${judged.limit.source}).`;
  return { template: '/parts/notice', data: { text, ...(least.value === undefined ? { link } : {}) } };
}

function questionCards(valve: MarkedValve): Slot[] {
  return valve.questions.map(
    (question, index): Slot => ({
      template: question.code === 'mark-at-the-edge' ? '/parts/notice' : '/parts/question',
      data:
        question.code === 'mark-at-the-edge'
          ? {
              kind: 'caution',
              text: `${question.ask.replace(/\?$/, '.')} ${question.size ?? ''} ${cap(question.test)}`,
            }
          : {
              id: `mark-${valve.cylinder}-${valve.valve}-${index}`,
              about: `${valve.cylinder} ${valve.valve}`,
              words: question.ask,
              ...(question.size === undefined ? {} : { size: question.size }),
              test: question.test,
              answers: [],
            },
    }),
  );
}

const widthFirst: Slot = {
  template: '/parts/notice',
  data: {
    text: 'Width first: a centred wide mark is still wrong. An ink mark holds the contact line’s own width too, so marks are compared with each other before one is called wide.',
  },
};

const drawingOf = (valve: MarkedValve): Slot => ({ template: '/parts/drawing', data: marksDrawing(valve) });

const found = (mark: TipMark): TableCell => ({
  text: MARK_FOUND[mark.found],
  why: `${mark.by}, ${momentText(mark.at)}`,
});

function markCell(sight: Sight, mark: TipMark): TableCell {
  if (mark.replacedBy === undefined && !mark.struck)
    return { text: mark.width.readAs, href: `${sight.base}/tip-marks/${mark.id}` };
  return {
    text: `${mark.struck ? 'struck: ' : 'replaced: '}${mark.width.readAs}`,
    ...(mark.reason === '' ? {} : { why: mark.reason }),
  };
}

/** Every mark that was entered, each with the way to put it right. */
function marksTable(sight: Sight, { marks }: JudgedMarks): Slot {
  return {
    template: '/parts/table',
    data: {
      caption: 'Marks kept',
      columns: [
        { label: 'Valve' },
        { label: 'Pushrod', number: true },
        { label: 'Width', number: true },
        { label: 'Where' },
        { label: 'How, who, when' },
      ],
      rows: marks.toReversed().map((mark) => ({
        cells: [
          `${mark.cylinder} ${mark.valve}`,
          mark.pushrod?.readAs ?? 'not said',
          markCell(sight, mark),
          placeText(mark),
          found(mark),
        ],
      })),
      empty: 'No mark kept yet. Ink the tip, light spring, two turns by hand, and measure the mark.',
      note: 'Nothing is overwritten: choose a width to put its mark right, with the reason.',
    },
  };
}

const SIDES = ['intake', 'exhaust'] as const;

/** The least sweep of each side that has a mark; before there is any, of both. */
function leastSlots(sight: Sight, judged: JudgedMarks): Slot[] {
  const marked = SIDES.filter((side) => judged.valves.some(({ valve }) => valve === side));
  return (marked.length === 0 ? SIDES : marked).map((side) =>
    leastSlot(sight, side, judged.least[side], judged),
  );
}

/** The marks of the step: how one is measured, its form, each valve against its least sweep, and all that was kept. */
export function marksPart(sight: Sight, judged: JudgedMarks, again: Again | undefined): StepBody {
  const form = markForm(
    sight,
    judged.marks.findLast(({ struck }) => !struck),
  );
  const seqOf = ({ marks }: MarkedValve) => marks.at(-1)?.seq ?? 0;
  const [newest, ...others] = judged.valves.toSorted((a, b) => seqOf(b) - seqOf(a));
  return {
    forms: sight.call.held ? [] : [form],
    slots: arranged(sight, {
      begun: newest !== undefined,
      entry: sight.call.held ? [] : [formSlot(form, again)],
      drawings: [{ template: '/parts/drawing', data: tipMarkAsked('asked-mark') }],
      top: newest === undefined ? [] : questionCards(newest),
      rest: [
        ...(newest === undefined ? [] : [drawingOf(newest)]),
        ...leastSlots(sight, judged),
        widthFirst,
        ...others.flatMap((valve) => [...questionCards(valve), drawingOf(valve)]),
        marksTable(sight, judged),
      ],
    }),
  };
}
