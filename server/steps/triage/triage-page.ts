import { defined } from '../../../shared/defined.ts';
import { CONTACT, ENGINE_STATES } from '../../../shared/schemas/words.ts';
import type { CallContext } from '../../call/context.ts';
import { formComponent, type PageForm, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { notCoveredComponents } from '../../call/not-covered.ts';
import { questionCards, questionsOf } from '../../call/question-form.ts';
import { isStopped, wordsUnderStop } from '../../call/under-stop.ts';
import { cautionComponent } from '../../web/components.ts';
import { choiceField } from '../../web/forms/fields.ts';

const LABELS = { engineState: 'The engine', contact: 'Did anything hit, bend, come loose or turn tight?' };

const TURNING =
  'key out, battery negative off, neutral, wheels chocked, plugs out. Turn by hand at the crank bolt only. Any resistance: stop, back off, find out.';

const asked = ({ 'not-asked': _, ...words }: Readonly<Record<string, string>>) => words;

/** The first question of a call: what happened to the engine, and whether it may be turned at all. */
export function triagePage(context: CallContext, rejected: RejectedForm | undefined): StepBody {
  const { call } = context;
  const doubted = questionsOf(context, 'triage');
  const cards = questionCards(context, doubted, rejected);
  const form: PageForm = {
    name: 'triage',
    action: `${context.base}/triage`,
    labels: LABELS,
    // An answer that is doubted is not offered again by itself.
    initial: { engineState: call.engineState, contact: doubted.length > 0 ? '' : call.contact },
    groups: (shown) => [
      {
        slots: [
          choiceField(shown, 'engineState', LABELS.engineState, asked(ENGINE_STATES)),
          choiceField(shown, 'contact', LABELS.contact, asked(CONTACT), {
            hint: 'If anything did, nobody turns it from now on: photos only, until the desk lifts the stop.',
          }),
        ],
      },
    ],
    buttons: [{ label: 'Save this answer', kind: 'primary', key: 'k' }],
  };
  return {
    // Under a stop the first question was answered, and nothing of it is asked again.
    ...defined({ words: wordsUnderStop(context) }),
    forms: [form, ...cards.forms],
    slots: [
      ...(isStopped(context) ? [] : [cautionComponent(TURNING)]),
      ...cards.slots,
      formComponent(form, rejected),
      ...notCoveredComponents(context),
    ],
  };
}
