import { defined } from '../../../shared/defined.ts';
import { formatFigure, formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { ButtonData } from '../../../views/parts/button.examples.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { answerForm } from '../../call/answer-form.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { formComponent, type PageForm, type RejectedForm } from '../../call/forms.ts';
import { type ShownSetUp, shownSetUps } from '../../call/shown-set-up.ts';
import type { NextAction } from '../../mechanics/assessment/assessment.ts';
import { nominalSaid } from '../../mechanics/assessment/common/said.ts';
import type { ExplanationResult } from '../../mechanics/assessment/ratio/compared/explanation.ts';
import { saidOfSetUp } from '../../mechanics/assessment/ratio/read/said-of-set-up.ts';
import { chanceText } from '../../mechanics/explain-readings/words.ts';
import { noticeComponent, tableComponent } from '../../web/components.ts';
import { causeText } from './cause-words.ts';
import { leadOf } from './lead.ts';

type Next = NonNullable<ExplanationResult['nextReading']>;

const READ_BACK = [
  { code: 'not-found', label: 'As they were entered' },
  { code: 'found', label: 'Wrong somewhere' },
];

const readBackForm = (context: CallContext, setUpId: string, ask: string): PageForm =>
  answerForm(context, {
    name: 'read-back',
    ask,
    code: 'read-back',
    step: 'ratio',
    answers: READ_BACK,
    setUpId,
  });

function showsText({ expected, plusMinus, chanceFound }: Next['outcomes'][number]): string {
  if (expected !== undefined) {
    const lift = formatQuantity(fromSi(expected, 'in'), { places: 3 });
    return `${lift} ± ${formatFigure(fromSi(plusMinus ?? 0, 'in'), { places: 3 })}`;
  }
  return chanceFound === undefined ? '' : `asking finds it in ${chanceText(chanceFound)}`;
}

function outcomesTable({ outcomes }: Next): TableData {
  return {
    caption: 'What each outcome would mean',
    columns: [{ label: 'If' }, { label: 'It would show', number: true }],
    rows: outcomes.map((outcome) => {
      const name = outcome.nominal === undefined ? '' : ` and it is a ${nominalSaid(outcome.nominal)}`;
      return { cells: [`${causeText(outcome.cause)}${name}`, showsText(outcome)] };
    }),
  };
}

export interface NextReading {
  /** The way to it, beside what is next. */
  readonly lead?: ButtonData;
  /** What it asks for on the spot. */
  readonly slots: readonly Component[];
  /** Why, and what each outcome of it would mean. */
  readonly outcomes: readonly Component[];
  readonly forms: readonly PageForm[];
}

const NOTHING: NextReading = { slots: [], outcomes: [], forms: [] };

/** The set-up that the reading is of: this one, or else the newest of the valve or arm it is about. */
function targetOf(context: CallContext, { about }: NextAction, shown: ShownSetUp): ShownSetUp {
  const all = [...shownSetUps(context), shown];
  if (about.of === 'set-up') return all.findLast(({ setUp }) => setUp.id === about.setUpId) ?? shown;
  if (about.of !== 'valve') return shown;
  return all.findLast(({ setUp }) => valveName(setUp) === valveName(about)) ?? shown;
}

/** The way to the set-up that the next pass is read in, from a form that starts another. */
export function toPasses(context: CallContext): ButtonData | undefined {
  const { next } = context.assessment;
  const newest = shownSetUps(context).at(-1);
  if (next?.step !== 'ratio' || next.reads === undefined || newest === undefined) return undefined;
  const { setUp } = targetOf(context, next, newest);
  return {
    label: `Set-up ${setUp.number}: ${valveName(setUp)}`,
    href: `${context.base}/steps/ratio?set-up=${setUp.id}`,
    kind: 'plain',
    ...(context.side === 'desk' ? { key: 'n' } : {}),
  };
}

const minutesOf = ({ minutes }: NextAction): string =>
  minutes === undefined ? '' : ` About ${minutes} min.`;

/** The reading worth most now, where it is one of this step, and what each outcome of it would mean. */
export function nextReading(
  context: CallContext,
  shown: ShownSetUp,
  rejected: RejectedForm | undefined,
): NextReading {
  const { next } = context.assessment;
  if (next === undefined || next.step !== 'ratio') return NOTHING;
  const target = targetOf(context, next, shown);
  const { setUp, detail } = target;
  const { explanation } = saidOfSetUp(context.assessment, detail);
  const told = explanation?.chances === 'told' ? explanation.result?.nextReading : undefined;
  const outcomes = told?.action === next.action ? [tableComponent(outcomesTable(told))] : [];
  const why = noticeComponent(`${next.reason}${minutesOf(next)}`);
  // What is missing names the valve that it is missing of behind its own name.
  if (next.action.split(':')[0] === 'read-back') {
    const form = readBackForm(context, setUp.id, next.sentence);
    return { slots: [formComponent(form, rejected)], outcomes: [why, ...outcomes], forms: [form] };
  }
  const other = setUp.id !== shown.setUp.id;
  const lead =
    leadOf(context, setUp.id, next.action) ??
    (other
      ? {
          label: `Set-up ${setUp.number}: ${valveName(setUp)}`,
          href: `${context.base}/steps/ratio?set-up=${setUp.id}`,
        }
      : undefined);
  return { slots: [], outcomes: [why, ...outcomes], forms: [], ...defined({ lead }) };
}
