import { CONTACT, ENGINE_STATES } from '../../../shared/schemas/words.ts';
import { choiceField } from '../../forms/fields.ts';
import { type Again, formSlot, type PageForm, type StepBody } from './forms-on-page.ts';
import type { Sight } from './sight.ts';

const LABELS = { engineState: 'The engine', contact: 'Did anything hit, bend, come loose or turn tight?' };

const asked = ({ 'not-asked': _, ...words }: Readonly<Record<string, string>>) => words;

/** The first question of a call: what happened to the engine, and whether it may be turned at all. */
export function triageStep(sight: Sight, again: Again | undefined): StepBody {
  const { call } = sight;
  const form: PageForm = {
    name: 'triage',
    action: `${sight.base}/triage`,
    labels: LABELS,
    initial: { engineState: call.engineState, contact: call.contact },
    groups: (shown) => [
      {
        slots: [
          choiceField(shown, 'engineState', LABELS.engineState, asked(ENGINE_STATES)),
          choiceField(shown, 'contact', LABELS.contact, asked(CONTACT), {
            hint: 'If anything did, nobody turns it from now on: photos only, until the desk lifts the hold.',
          }),
        ],
      },
    ],
    buttons: [{ label: 'Keep this answer', kind: 'primary', key: 'k' }],
  };
  return {
    forms: [form],
    slots: [
      {
        template: '/parts/notice',
        data: {
          kind: 'caution',
          text: 'key out, battery negative off, neutral, wheels chocked, plugs out. Turn by hand at the crank bolt only. Any resistance: stop, back off, find out.',
        },
      },
      formSlot(form, again),
    ],
  };
}
