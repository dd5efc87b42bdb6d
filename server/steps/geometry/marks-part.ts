import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { stepHeadlines } from '../../call/headline.ts';
import { questionCards, questionsNamed } from '../../call/question-form.ts';
import { isStopped } from '../../call/under-stop.ts';
import { arrangedComponents } from '../../call/worked/arranged.ts';
import { tipMarkAsked } from '../../drawings/tip-mark-asked.ts';
import { keyOf, valveSubject } from '../../mechanics/assessment/common/said.ts';
import type { MarkedValveDetail } from '../../mechanics/assessment/marks/detail.ts';
import { drawingComponent, noticeComponent, tableComponent } from '../../web/components.ts';
import { markForm } from './forms/mark.ts';
import { leastComponents } from './least-sweep.ts';
import { marksDrawing } from './mark-drawings.ts';
import { marksTable } from './marks-table.ts';

const widthFirst = noticeComponent(
  'Width first: a centred wide mark is still wrong. An ink mark holds the contact line’s own width too, so marks are compared with each other before one is called wide.',
);

/** Questions about the marks of a valve, in the order of its detail. */
export const questionsOf = (context: CallContext, { questionIds }: MarkedValveDetail) =>
  questionsNamed(context, questionIds);

const headlineOf = (context: CallContext, valve: MarkedValveDetail): Component[] =>
  stepHeadlines(context, 'geometry', keyOf(valveSubject(valve)));

/** What to change next; where nothing is asked, that it may stay is said by itself. */
const adviceOf = ({ advice, questionIds }: MarkedValveDetail): Component[] =>
  advice === undefined || questionIds.length > 0 ? [] : [noticeComponent(advice)];

const newestLine = ({ marks }: MarkedValveDetail): number => Math.max(...marks.map(({ line }) => line));

/** The marks of the step: how one is measured, its form, each valve against its least sweep, and all that was kept. */
export function marksPart(context: CallContext, rejected: RejectedForm | undefined): StepBody {
  const { record, assessment } = context;
  const form = markForm(
    context,
    record.tipMarks.findLast(({ struck }) => !struck),
  );
  const { gear } = assessment.details.gear;
  const stopped = isStopped(context);
  const valves = assessment.details.marks.valves.toSorted((a, b) => newestLine(b) - newestLine(a));
  const cards = questionCards(
    context,
    valves.flatMap((valve) => questionsOf(context, valve)),
    rejected,
  );
  const cardsOf = (valve: MarkedValveDetail): readonly Component[] => {
    const from = valves.slice(0, valves.indexOf(valve)).flatMap(({ questionIds }) => questionIds).length;
    return cards.slots.slice(from, from + valve.questionIds.length);
  };
  const [newest, ...others] = valves;
  return {
    forms: [form, ...cards.forms],
    slots: arrangedComponents({
      side: context.side,
      begun: newest !== undefined,
      drawingFirst: true,
      entry: [formComponent(form, rejected)],
      drawings: [
        drawingComponent(
          tipMarkAsked('asked-mark', { inked: stopped, follower: gear === 'finger-follower' }),
        ),
      ],
      top:
        newest === undefined ? [] : [...headlineOf(context, newest), ...cardsOf(newest), ...adviceOf(newest)],
      rest: [
        ...(newest === undefined ? [] : [drawingComponent(marksDrawing(newest, gear))]),
        foldComponent('least', 'Least sweep of this lift, and why the width comes first', [
          ...leastComponents(context),
          widthFirst,
        ]),
        ...others.flatMap((valve) => [
          ...headlineOf(context, valve),
          ...cardsOf(valve),
          ...adviceOf(valve),
          drawingComponent(marksDrawing(valve, gear)),
        ]),
        tableComponent(marksTable(context)),
      ],
    }),
  };
}
