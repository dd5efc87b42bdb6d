import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type StepBody } from '../../call/forms.ts';
import { headlineComponents } from '../../call/headline.ts';
import { oneAtATime, questionCards, questionsOf } from '../../call/question-form.ts';
import { listComponents } from '../../call/report-parts.ts';
import { againstNewest } from '../../call/spec/against-newest.ts';
import type { StepPageInput } from '../../call/step.ts';
import { isStopped } from '../../call/under-stop.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { notKnownLines } from '../../mechanics/assessment/change/not-known.ts';
import { turningCaution } from '../../mechanics/cam/caution.ts';
import { shortCaution } from '../../mechanics/consequences/cautions.ts';
import { cautionComponent, noticeComponent, tableComponent } from '../../web/components.ts';
import { blockComponent, keepForm } from './block.ts';
import { clearancesForm } from './clearances-form.ts';
import { gapForm } from './gap-form.ts';
import { changeHeadlines, worstFirst } from './judged.ts';
import { plansTables } from './plans-table.ts';
import { keptTable } from './striking-out.ts';

/** Nothing is known of any lobe: what the step waits for, and where the first of it is entered. */
function nothingYet({ base, assessment }: CallContext): StepBody {
  const needs = assessment.needs.filter(({ step, have }) => step === 'consequences' && !have);
  return {
    forms: [],
    slots: [
      {
        template: '/parts/empty',
        data: {
          id: 'no-lobe',
          title: 'There is nothing to calculate with yet',
          text: `It wants the lobe lift of the cam card, or a lobe that was read; then ${needs.map(({ what }) => what).join('; ')}.`,
          action: { label: 'Enter the cam card', kind: 'primary', href: `${base}/steps/cam` },
        },
      },
    ],
  };
}

const each = (
  details: readonly ChangeDetail[],
  of: (detail: ChangeDetail) => readonly string[],
): string[] => [...new Set(details.flatMap(of))];

/** Said by the stop itself while one stands; and then nobody turns it, by hand or otherwise. */
const UNDER_A_STOP: readonly string[] = [shortCaution, turningCaution];

/** What all of the blocks rest on, each once. */
const groundsComponents = (details: readonly ChangeDetail[], stopped: boolean): Component[] => [
  ...listComponents(
    'Adjusters',
    each(details, ({ adjusters }) => (adjusters === '' ? [] : [adjusters])),
  ),
  ...listComponents(
    'Assumptions',
    each(details, ({ assumptions }) => assumptions),
  ),
  ...each(details, ({ cautions }) => cautions)
    .filter((text) => !(stopped && UNDER_A_STOP.includes(text)))
    .map(cautionComponent),
];

/** All that is not known, one tap away: the headline has the count and the worst. */
function notKnownFold(details: readonly ChangeDetail[]): Component[] {
  const lines = notKnownLines(details);
  if (lines.length < 2) return [];
  const list = listComponents('Gap, and what it needs', lines);
  return [foldComponent('not-known', `All that is not known, ${lines.length} lines`, list)];
}

/** What was put on the tape: one tap away, with the way to strike it out. */
function keptFold(context: CallContext): Component[] {
  const kept = keptTable(context);
  return kept.length === 0 ? [] : [foldComponent('kept', 'Figures on the tape', kept)];
}

/** Blocks that stand open: of a whole engine the others are a tap away, and told in a line each above. */
const OPEN = { desk: 1, bench: 1 } as const;

/** What a ratio does on each valve: before and after, each gap against its limit, and what is still lacking. */
export function consequencesPage(_: unknown, { context, rejected: posted }: StepPageInput): StepBody {
  const { assessment } = context;
  const { rejected, other } = againstNewest(context, posted);
  const details = worstFirst(assessment);
  if (details.length === 0) return nothingYet(context);
  // What they are taken from has to be turned to top dead centre.
  const stopped = isStopped(context);
  const clearances = stopped ? [] : [clearancesForm(context, other)];
  const gaps = stopped ? [] : [gapForm(context, details[0]?.about)];
  const cards = questionCards(context, questionsOf(context, 'consequences'), posted);
  const blocks = details.map((detail, index) => ({ detail, keep: keepForm(context, detail, index === 0) }));
  return {
    forms: [...cards.forms, ...blocks.flatMap(({ keep }) => keep), ...gaps, ...clearances],
    slots: [
      ...headlineComponents(assessment, changeHeadlines(assessment)),
      ...notKnownFold(details),
      ...gaps.map((form) =>
        foldComponent(
          'gaps-fold',
          'Enter a gap that was measured',
          [
            formComponent(form, posted),
            noticeComponent('Of many valves they go faster into one table.', {
              link: { href: `${context.base}/steps/sheet`, label: 'The per-valve sheet' },
            }),
          ],
          posted?.typed.form === form.name,
        ),
      ),
      ...clearances.map((form) =>
        foldComponent(
          'clearances-fold',
          'Enter what the gaps are calculated from',
          [formComponent(form, rejected)],
          rejected?.typed.form === form.name,
        ),
      ),
      ...oneAtATime(cards),
      ...plansTables(details).map((table) => tableComponent(table)),
      ...blocks.map(({ detail, keep }, index) =>
        blockComponent(context, detail, keep, { open: index < OPEN[context.side], rejected }),
      ),
      ...keptFold(context),
      foldComponent('grounds', 'Adjusters, assumptions and cautions', groundsComponents(details, stopped)),
    ],
  };
}
