import { inSpoken } from '../../../shared/quantities/authored.ts';
import { GAP_KINDS, oneValve, SHEET_ARMS, SHEET_KINDS, TOOLS } from '../../../shared/schemas/sheet.ts';
import { LIFTERS, SPRINGS } from '../../../shared/schemas/words.ts';
import type { CallContext } from '../../call/context.ts';
import type { PageForm } from '../../call/forms.ts';
import { valveWords } from '../../call/valve-words.ts';
import type { Subject } from '../../mechanics/assessment/assessment.ts';
import { numberField, selectField } from '../../web/forms/fields.ts';
import { gaugedField } from '../../web/forms/gauged-field.ts';

const LABELS = {
  cylinder: 'Cylinder',
  valve: 'Valve',
  tool: 'Read with',
  spring: 'Spring on the valve',
  lifter: 'Lifter',
  arms: 'Arms',
};

const fieldOf = (kind: string): string => `figures.${kind}`;

/** The valve that what is next is about, or else the one that is told first. */
function valveOf({ assessment: { next } }: CallContext, first: Subject | undefined) {
  const about = next?.step === 'consequences' && next.about.of === 'valve' ? next.about : first;
  return about?.of === 'valve' ? { cylinder: String(about.cylinder), valve: about.valve } : {};
}

/** Gaps that were measured on the engine, of one valve: kept as the sheet keeps them. */
export function gapForm(context: CallContext, first: Subject | undefined): PageForm {
  const big = context.side === 'bench' ? { big: true } : {};
  const without: readonly string[] = context.assessment.details.gear.kinds;
  const kinds = GAP_KINDS.filter((kind) => !without.includes(kind));
  return {
    name: 'gap',
    action: `${context.base}/sheet`,
    labels: {
      ...LABELS,
      ...Object.fromEntries(kinds.map((kind) => [fieldOf(kind), SHEET_KINDS[kind]])),
    },
    schema: oneValve,
    hidden: { step: 'consequences' },
    initial: valveOf(context, first),
    groups: (shown) => [
      {
        columns: true,
        hint: inSpoken(
          'What is left empty is not read. Between two gauges: “more than .024, less than .028”.',
        ),
        slots: [
          numberField(shown, 'cylinder', LABELS.cylinder, { inputmode: 'numeric', ...big }),
          selectField(shown, 'valve', LABELS.valve, valveWords(context)),
          ...kinds.map((kind) =>
            gaugedField(shown, fieldOf(kind), SHEET_KINDS[kind], { optional: true, ...big }),
          ),
          selectField(shown, 'tool', LABELS.tool, TOOLS),
          selectField(shown, 'spring', LABELS.spring, SPRINGS),
          selectField(shown, 'lifter', LABELS.lifter, LIFTERS),
          selectField(shown, 'arms', LABELS.arms, SHEET_ARMS),
        ],
      },
    ],
    buttons: [{ label: 'Save these gaps', kind: 'plain' }],
  };
}
