import { MARK_FOUND } from '../../../shared/schemas/tip-mark.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import type { JudgedMarks, MarkedValve } from '../../assessment/tip-marks/judged.ts';
import type { LeastSweep } from '../../assessment/tip-marks/least-sweep.ts';
import type { CallContext } from '../../call/context.ts';
import { formComponent, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { arrangedComponents } from '../../call/worked/arranged.ts';
import { tipMarkAsked } from '../../drawings/tip-mark.ts';
import type { TipMark } from '../../records/tip-marks/tip-mark-table.ts';
import { cautionComponent, tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import { inchText, marksDrawing, placeText } from './mark-drawings.ts';
import { markForm } from './mark-form.ts';

const cap = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What the width is set against, and in whose words; or what is missing for it, with the way to it. */
function leastComponent(
  context: CallContext,
  side: string,
  least: LeastSweep,
  judged: JudgedMarks,
): Component {
  const over = judged.limit.value.readAs;
  const link = { href: `${context.base}/steps/geometry?of=roller-sweep`, label: 'Work it out' };
  const text =
    least.value === undefined
      ? `The least sweep on the ${side} is not known yet; missing: ${least.missing.join(', ')}.`
      : `Least sweep on the ${side}: ${inchText(least.value)} (${least.from.join('; ')}). Looked at again over ${over} more (${judged.limit.source}).`;
  return { template: '/parts/notice', data: { text, ...(least.value === undefined ? { link } : {}) } };
}

function questionComponents(valve: MarkedValve): Component[] {
  return valve.questions.map((question, index): Component => {
    // A mark at the edge is no question any more: it is to be stopped for.
    if (question.code === 'mark-at-the-edge')
      return cautionComponent(
        `${question.ask.replace(/\?$/, '.')} ${question.size ?? ''} ${cap(question.test)}`,
      );
    return {
      template: '/parts/question',
      data: {
        id: `mark-${valve.cylinder}-${valve.valve}-${index}`,
        about: `${valve.cylinder} ${valve.valve}`,
        words: question.ask,
        ...(question.size === undefined ? {} : { size: question.size }),
        test: question.test,
        answers: [],
      },
    };
  });
}

const widthFirst: Component = {
  template: '/parts/notice',
  data: {
    text: 'Width first: a centred wide mark is still wrong. An ink mark holds the contact line’s own width too, so marks are compared with each other before one is called wide.',
  },
};

const drawingOf = (valve: MarkedValve): Component => ({
  template: '/parts/drawing',
  data: marksDrawing(valve),
});

const found = (mark: TipMark): TableCell => ({
  text: MARK_FOUND[mark.found],
  why: `${mark.by}, ${momentText(mark.at)}`,
});

function markCell(context: CallContext, mark: TipMark): TableCell {
  if (mark.replacedBy === undefined && !mark.struck)
    return { text: mark.width.readAs, href: `${context.base}/tip-marks/${mark.id}` };
  return {
    text: `${mark.struck ? 'struck: ' : 'replaced: '}${mark.width.readAs}`,
    ...(mark.reason === '' ? {} : { why: mark.reason }),
  };
}

/** Every mark that was entered, each with the way to put it right. */
function marksTable(context: CallContext, { marks }: JudgedMarks): TableData {
  return {
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
        markCell(context, mark),
        placeText(mark),
        found(mark),
      ],
    })),
    empty: 'No mark kept yet. Ink the tip, light spring, two turns by hand, and measure the mark.',
    note: 'Nothing is overwritten: choose a width to put its mark right, with the reason.',
  };
}

const SIDES = ['intake', 'exhaust'] as const;

/** The least sweep of each side that has a mark; before there is any, of both. */
function leastComponents(context: CallContext, judged: JudgedMarks): Component[] {
  const marked = SIDES.filter((side) => judged.valves.some(({ valve }) => valve === side));
  return (marked.length === 0 ? SIDES : marked).map((side) =>
    leastComponent(context, side, judged.least[side], judged),
  );
}

/** The marks of the step: how one is measured, its form, each valve against its least sweep, and all that was kept. */
export function marksPart(
  context: CallContext,
  judged: JudgedMarks,
  rejected: RejectedForm | undefined,
): StepBody {
  const form = markForm(
    context,
    judged.marks.findLast(({ struck }) => !struck),
  );
  const seqOf = ({ marks }: MarkedValve) => marks.at(-1)?.seq ?? 0;
  const [newest, ...others] = judged.valves.toSorted((a, b) => seqOf(b) - seqOf(a));
  return {
    forms: context.call.held ? [] : [form],
    slots: arrangedComponents(context, {
      begun: newest !== undefined,
      entry: context.call.held ? [] : [formComponent(form, rejected)],
      drawings: [{ template: '/parts/drawing', data: tipMarkAsked('asked-mark') }],
      top: newest === undefined ? [] : questionComponents(newest),
      rest: [
        ...(newest === undefined ? [] : [drawingOf(newest)]),
        ...leastComponents(context, judged),
        widthFirst,
        ...others.flatMap((valve) => [...questionComponents(valve), drawingOf(valve)]),
        tableComponent(marksTable(context, judged)),
      ],
    }),
  };
}
