import type { Slot } from '../../../views/parts/part.ts';
import type { OtherSide } from '../../builds/pages/spec-form.ts';
import { type Again, formSlot, type PageForm, type StepBody } from '../../calls/pages/forms-on-page.ts';
import type { Sight } from '../../calls/pages/sight.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import { consequencesOf, type SetUpConsequences } from '../consequences.ts';
import { chosenFor, otherSetUps } from './chosen.ts';
import { clearancesForm } from './clearances-form.ts';
import { figuresTable, gapsTable, ratiosFacts, reasonsList } from './figures-tables.ts';
import { gapBars } from './gap-bars.ts';
import { marginsDrawing } from './margins-drawing.ts';

const notice = (text: string, kind?: 'caution'): Slot => ({
  template: '/parts/notice',
  data: { text, ...(kind === undefined ? {} : { kind }) },
});

function keepForm(sight: Sight, found: SetUpConsequences): PageForm {
  return {
    name: 'keep-consequences',
    action: `${sight.base}/consequences`,
    labels: {},
    hidden: { setUpId: found.found.setUp.id },
    groups: () => [{ slots: [] }],
    buttons: [{ label: 'Put these figures on the tape', kind: 'primary', key: 'k' }],
  };
}

function nothingYet(sight: Sight): StepBody {
  return {
    forms: [],
    slots: [
      {
        template: '/parts/empty',
        data: {
          id: 'no-ratio',
          title: 'No ratio is measured yet',
          text: 'What a ratio does is reckoned from a measured one. Read it on the engine first.',
          action: { label: 'Read the ratio', kind: 'primary', href: `${sight.base}/steps/ratio` },
        },
      },
    ],
  };
}

function grounds(found: SetUpConsequences): Slot[] {
  return [
    ...found.notes.map((text) => notice(text)),
    { template: '/pages/call/list', data: { title: 'Taken for granted', items: found.assumptions } },
    ...found.cautions.slice(found.stop ? 1 : 0).map((text) => notice(text, 'caution')),
  ];
}

/** What the measured ratio does: before and after, each gap against its limit, and what is still lacking. */
export async function consequencesStep(
  tx: Tx,
  sight: Sight,
  given: PageRequest,
  again: Again | undefined,
  other?: OtherSide,
): Promise<StepBody> {
  const chosen = chosenFor(sight, given.query['set-up'] ?? again?.typed.setUpId);
  if (chosen === undefined) return nothingYet(sight);
  const found = await consequencesOf(tx, sight.caller, sight.build.id, chosen.setUp.id);
  const keep = keepForm(sight, found);
  const clearances = clearancesForm(sight, chosen.setUp.valve, other);
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
      ...(found.input.after === undefined ? [] : [formSlot(keep, again)]),
      formSlot(clearances, again),
      ...grounds(found),
      ...otherSetUps(sight, chosen),
    ],
  };
}
