import type { Component } from '../../../views/parts/part.ts';
import type { SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { chosenFor } from '../../call/chosen-set-up.ts';
import type { CallContext } from '../../call/context.ts';
import { formComponent, type PageForm, type StepBody } from '../../call/forms.ts';
import { againstNewest } from '../../call/spec/against-newest.ts';
import type { StepPageInput } from '../../call/step.ts';
import { clearancesForm } from './clearances-form.ts';
import { figuresTable, gapsTable, ratiosFacts, reasonsList } from './figures-tables.ts';
import { gapBars } from './gap-bars.ts';
import type { ConsequencesBySetUp } from './load.ts';
import { marginsDrawing } from './margins-drawing.ts';
import { otherSetUps } from './other-set-ups.ts';

const notice = (text: string, kind?: 'caution'): Component => ({
  template: '/parts/notice',
  data: { text, ...(kind === undefined ? {} : { kind }) },
});

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

function grounds(found: SetUpConsequences): Component[] {
  return [
    ...found.notes.map((text) => notice(text)),
    { template: '/pages/call/list', data: { title: 'Assumptions', items: found.assumptions } },
    ...found.cautions.slice(found.stop ? 1 : 0).map((text) => notice(text, 'caution')),
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
      ...(found.stop
        ? [
            notice(
              'a gap is short of its limit. Stop: do not run it so, and have a qualified shop look.',
              'caution',
            ),
          ]
        : []),
      ratiosFacts(found),
      gapsTable(found),
      ...reasonsList(found),
      ...gapBars(found.gaps),
      figuresTable(found),
      ...marginsDrawing(found),
      notice(found.adjusters),
      ...(found.input.after === undefined ? [] : [formComponent(keep, rejected)]),
      formComponent(clearances, rejected),
      ...grounds(found),
      ...otherSetUps(context, chosen),
    ],
  };
}
