import { defined } from '../../../shared/defined.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { Order } from '../../assessment/sheet/of-sheet.ts';
import { formComponent, type StepBody } from '../../call/forms.ts';
import { headlineComponents } from '../../call/headline.ts';
import { oneAtATime, questionCards, questionsOf } from '../../call/question-form.ts';
import { againstNewest } from '../../call/spec/against-newest.ts';
import type { StepPageInput } from '../../call/step.ts';
import type { SheetDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';
import { cylindersForm } from './cylinders-form.ts';
import { figuresComponents } from './figures.ts';
import { benchLayout, deskLayout, type Parts } from './layouts.ts';
import { lookedAt } from './looked.ts';
import { oneValveForm, pasteForm } from './sheet-forms.ts';
import { gridForm, gridSpring, toNextCell } from './sheet-grid.ts';
import { readingsComponents } from './sheet-tables.ts';

const orderOf = (text: string | undefined): Order => (text === 'bank' ? 'bank' : 'firing');

/** The per-valve sheet: what it says, what its rows are asked, the figures, and the forms that fill it. */
export function sheetPage(sheet: SheetDetail, { context, req, rejected }: StepPageInput): StepBody {
  const { assessment } = context;
  const order = orderOf(rejected?.typed.order ?? req.query.order);
  const looked = lookedAt(context, rejected);
  const bench = context.side === 'bench';
  const pasted = pasteForm(context, order, looked?.sound === true);
  const grid = bench ? undefined : gridForm(context, sheet, order);
  const one = oneValveForm(context, sheet, order, { first: !bench && grid === undefined });
  const cards = questionCards(context, questionsOf(context, 'sheet'), rejected);
  const newest = againstNewest(context, rejected);
  const cylinders = bench || grid !== undefined ? undefined : cylindersForm(context, newest.other);
  const pasting: Component = formComponent(pasted, rejected);
  const parts: Parts = {
    said: headlineComponents(
      assessment,
      assessment.headlines.filter(({ step }) => step === 'sheet'),
    ),
    asked: oneAtATime(cards),
    grid: grid === undefined ? undefined : formComponent(grid, rejected),
    cylinders: cylinders === undefined ? [] : [formComponent(cylinders, newest.rejected)],
    entry: formComponent(one, rejected),
    pasting: looked === undefined ? pasting : undefined,
    looked: looked === undefined ? [] : [...looked.components, pasting],
    figures: figuresComponents(context, sheet, order, grid === undefined ? undefined : gridSpring(context)),
    readings: readingsComponents(context),
  };
  const faulty = { one: rejected?.typed.form === one.name, paste: rejected?.typed.form === pasted.name };
  return {
    ...(grid === undefined ? {} : defined({ next: toNextCell(context, sheet, order) })),
    forms: [
      ...(grid === undefined ? [] : [grid]),
      ...(cylinders === undefined ? [] : [cylinders]),
      one,
      pasted,
      ...cards.forms,
    ],
    slots: bench ? benchLayout(parts, faulty) : deskLayout(parts, faulty),
  };
}
