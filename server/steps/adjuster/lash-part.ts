import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import type { CallContext } from '../../call/context.ts';
import { formComponent, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { stepHeadlines } from '../../call/headline.ts';
import { oneAtATime, questionCards, questionsNamed } from '../../call/question-form.ts';
import { isStopped } from '../../call/under-stop.ts';
import { arrangedComponents } from '../../call/worked/arranged.ts';
import { rulerOf } from '../../drawings/drawing.ts';
import { lashGap } from '../../drawings/lash-gap.ts';
import { drawingComponent, tableComponent } from '../../web/components.ts';
import { lashForm } from './forms/lash.ts';
import { standingLines } from './lash-text.ts';
import { growthTable, logTable } from './log-tables.ts';

/** The lash log: how the gap is read, the line that comes next, what the growth raises, and every line so far. */
export function lashPart(context: CallContext, rejected: RejectedForm | undefined): StepBody {
  const { details } = context.assessment;
  const stopped = isStopped(context);
  const lines = standingLines(context);
  const form = lashForm(context, lines.toSorted((a, b) => a.reading.seq - b.reading.seq).at(-1), 'lash');
  const cards = questionCards(context, questionsNamed(context, details.lash.questionIds), rejected);
  return {
    forms: [form, ...cards.forms],
    slots: arrangedComponents({
      side: context.side,
      begun: lines.length > 0,
      entry: [formComponent(form, rejected)],
      drawings:
        stopped || details.gear.gear === 'bucket'
          ? []
          : [drawingComponent(lashGap({}, { id: 'asked-lash', ruler: rulerOf(spokenUnits()) }))],
      top: [...stepHeadlines(context, 'adjuster'), ...oneAtATime(cards)],
      rest: [...growthTable(context), logTable(context)].map(tableComponent),
    }),
  };
}
