import { inSpoken } from '../../../../shared/quantities/authored.ts';
import { ENGINE_HEAT, LASH_MOMENTS, NUT_STATES, typedLashLine } from '../../../../shared/schemas/lash-log.ts';
import type { CallContext } from '../../../call/context.ts';
import type { PageForm } from '../../../call/forms.ts';
import { isStopped } from '../../../call/under-stop.ts';
import { valveWords } from '../../../call/valve-words.ts';
import { upperFirst } from '../../../mechanics/assessment/common/said.ts';
import { ADJUSTER_WORDS } from '../../../mechanics/lash/adjuster-words.ts';
import type { LoggedLash } from '../../../records/lash-log/lash-log.ts';
import {
  choiceField,
  type FormState,
  numberField,
  quantityField,
  selectField,
  textField,
} from '../../../web/forms/fields.ts';
import { gaugedField } from '../../../web/forms/gauged-field.ts';

const LABELS = {
  cylinder: 'Cylinder',
  valve: 'Valve',
  lash: 'Lash',
  moment: 'This is how it was',
  engine: 'Engine',
  shim: 'Shim that is in',
  readOn: 'Day, if it was not today',
  doneBy: 'Who read or set it, if it was somebody else',
};

const dayIsWrong = ({ faults }: FormState): boolean =>
  faults.some(({ field }) => field === 'readOn' || field === 'doneBy');

/**
 * The next line is likely of the same valve as the last. What growth is judged on, heat, moment and lock, is asked of each:
 * nothing of it is ticked beforehand. Under a stop it is one of an earlier day: what was found
 * or set then takes no turning.
 */
export function lashForm(
  context: CallContext,
  last: LoggedLash | undefined,
  part: 'lash' | 'shims',
): PageForm {
  const bench = context.side === 'bench';
  const stopped = isStopped(context);
  const { adjuster } = context.assessment.details.lash;
  const bucket = adjuster === 'bucket';
  const labels = { ...LABELS, nut: upperFirst(ADJUSTER_WORDS[adjuster].part) };
  return {
    name: 'lash',
    action: `${context.base}/lash`,
    labels,
    schema: typedLashLine,
    // It stands on two parts of the step: it comes back to the one that it was sent from.
    hidden: { part },
    ...(stopped ? { title: 'What was found or set on an earlier day' } : {}),
    initial: {
      cylinder: last === undefined ? '' : String(last.reading.cylinder),
      valve: last?.reading.valve ?? '',
    },
    groups: (shown) => [
      {
        columns: true,
        slots: [
          numberField(shown, 'cylinder', LABELS.cylinder, {
            inputmode: 'numeric',
            ...(bench ? { big: true } : {}),
          }),
          selectField(shown, 'valve', LABELS.valve, valveWords(context), { first: 'Not said' }),
          gaugedField(shown, 'lash', LABELS.lash, {
            hint: inSpoken(
              `${stopped ? '' : 'On the base circle. '}Between two feelers: “more than .018, less than .020”.`,
            ),
            ...(bench ? { big: true } : last === undefined ? {} : { autofocus: true }),
          }),
          selectField(shown, 'engine', LABELS.engine, ENGINE_HEAT),
        ],
      },
      {
        columns: true,
        slots: [
          choiceField(shown, 'moment', LABELS.moment, LASH_MOMENTS),
          // A follower has a screw at its pivot, or a shim over the stem.
          ...(bucket || adjuster === 'follower'
            ? [
                quantityField(shown, 'shim', LABELS.shim, 'length', {
                  optional: true,
                  hint: 'Measured itself, as 2.60 mm: its marking is not its thickness.',
                }),
              ]
            : []),
          ...(bucket ? [] : [choiceField(shown, 'nut', labels.nut, NUT_STATES)]),
        ],
      },
      {
        legend: 'From another day, or by somebody else',
        ...(stopped ? {} : { fold: dayIsWrong(shown) ? ('open' as const) : ('shut' as const) }),
        columns: true,
        slots: [
          textField(shown, 'readOn', stopped ? 'Day' : LABELS.readOn, {
            hint: 'As 2026-03-14.',
            optional: !stopped,
          }),
          textField(shown, 'doneBy', LABELS.doneBy, { optional: true }),
        ],
      },
    ],
    buttons: [{ label: 'Save the lash', kind: 'primary', key: 'k' }],
  };
}
