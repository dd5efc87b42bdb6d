import type { Component } from '../../../views/parts/components.ts';
import type { SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { chosenFor } from '../../call/chosen-set-up.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { formComponent, type PageForm, type StepBody } from '../../call/forms.ts';
import { listComponents } from '../../call/report-parts.ts';
import { againstNewest } from '../../call/spec/against-newest.ts';
import type { StepPageInput } from '../../call/step.ts';
import { shortCaution } from '../../mechanics/consequences/consequences.ts';
import {
  cautionComponent,
  drawingComponent,
  factsComponent,
  noticeComponent,
  tableComponent,
} from '../../web/components.ts';
import { clearancesForm } from './clearances-form.ts';
import { figuresTable, gapReasons, gapsTable, ratioFacts, STOP } from './figures-tables.ts';
import { gapBarComponents } from './gap-bars.ts';
import type { ConsequencesBySetUp } from './load.ts';
import { marginsDrawing } from './margins-drawing.ts';
import { otherSetUpsComponents } from './other-set-ups.ts';

function keepForm(context: CallContext, found: SetUpConsequences): PageForm {
  return {
    name: 'keep-consequences',
    action: `${context.base}/consequences`,
    labels: {},
    hidden: { setUpId: found.found.setUp.id },
    groups: () => [{ slots: [] }],
    buttons: [{ label: 'Put these figures on the tape', kind: 'primary', key: 'k' }],
  };
}

function nothingYet(context: CallContext): StepBody {
  return {
    forms: [],
    slots: [
      {
        template: '/parts/empty',
        data: {
          id: 'no-ratio',
          title: 'No ratio is measured yet',
          text: 'What a ratio does is calculated from a measured one. Read it on the engine first.',
          action: { label: 'Read the ratio', kind: 'primary', href: `${context.base}/steps/ratio` },
        },
      },
    ],
  };
}

/** Said in full at the head of the page. */
const shownBelow = ({ cautions }: SetUpConsequences): string[] =>
  cautions.filter((text) => text !== shortCaution);

function groundsComponents(found: SetUpConsequences): Component[] {
  return [
    ...found.notes.map((text) => noticeComponent(text)),
    { template: '/pages/call/list', data: { title: 'Assumptions', items: found.assumptions } },
    ...shownBelow(found).map(cautionComponent),
  ];
}

/** What is asked first of all: the two ratios, each gap against its limit, and why a gap is no better. */
function answerComponents(found: SetUpConsequences): Component[] {
  const { setUp } = found.found;
  const reasons = gapReasons(found);
  const drawing = marginsDrawing(found);
  return [
    ...(found.stop ? [cautionComponent(STOP)] : []),
    factsComponent({
      block: true,
      items: [
        { label: 'Valve', value: valveName(setUp) },
        ...ratioFacts(found),
        { label: 'Build revision', value: String(setUp.revision) },
      ],
    }),
    tableComponent(gapsTable(found)),
    ...listComponents('Why not clear', reasons),
    ...gapBarComponents(found.gaps),
    tableComponent(figuresTable(found)),
    ...(drawing === undefined ? [] : [drawingComponent(drawing)]),
    noticeComponent(found.adjusters),
  ];
}

/** What the measured ratio does: before and after, each gap against its limit, and what is still lacking. */
export function consequencesPage(
  bySetUp: ConsequencesBySetUp,
  { context, req, rejected: posted }: StepPageInput,
): StepBody {
  const { rejected, other } = againstNewest(context, posted);
  const chosen = chosenFor(context, req.query['set-up'] ?? rejected?.typed.setUpId);
  const found = chosen === undefined ? undefined : bySetUp.get(chosen.setUp.id);
  if (chosen === undefined || found === undefined) return nothingYet(context);
  const keep = keepForm(context, found);
  const clearances = clearancesForm(context, chosen.setUp.valve, other);
  return {
    forms: [keep, clearances],
    slots: [
      ...answerComponents(found),
      ...(found.input.after === undefined ? [] : [formComponent(keep, rejected)]),
      formComponent(clearances, rejected),
      ...groundsComponents(found),
      ...otherSetUpsComponents(context, chosen),
    ],
  };
}
