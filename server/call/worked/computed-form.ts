import { defined } from '../../../shared/defined.ts';
import type { Registered } from '../../compute/registry.ts';
import { controlsOf } from '../../compute-forms/form/controls-of.ts';
import { formGroups } from '../../compute-forms/form/fields-of.ts';
import { leavesOf } from '../../compute-forms/form/leaves.ts';
import { typedOf } from '../../compute-forms/form/typed-of.ts';
import { objectOf } from '../../compute-forms/form/words.ts';
import type { Working } from '../../records/workings/workings.ts';
import type { PageForm } from '../forms.ts';
import { knownOf } from './known-inputs.ts';
import type { PartView } from './part.ts';
import type { PartForm } from './part-form.ts';

/** The form of a part that computes: its own, or the one its schema makes. */
export function computedForm(
  part: string,
  each: Registered,
  own: PartForm | undefined,
  workings: readonly Working[],
  { context, rejected, step }: PartView,
): PageForm {
  const common = { name: 'working', action: `${context.base}/workings/${step}` };
  const hidden = { computation: each.name, part };
  if (own !== undefined) {
    const { pointerOff, ...initial } = own.initial(context, workings);
    return {
      ...common,
      labels: own.labels,
      ...defined({ schema: objectOf(each.input) }),
      hidden: { ...hidden, ...defined({ pointerOff }) },
      initial,
      groups: (shown) => own.groups(shown, context, workings),
      buttons: [{ label: own.button, kind: 'primary', key: 'k' }],
    };
  }
  const controls = controlsOf(each.input);
  const initial = typedOf(controls, knownOf(each.name, context.build.spec));
  const labels = leavesOf(controls, rejected?.typed ?? initial).map(
    (leaf) => [leaf.name, leaf.label] as const,
  );
  return {
    ...common,
    labels: Object.fromEntries(labels),
    ...defined({ schema: objectOf(each.input) }),
    hidden,
    initial,
    // A long form comes in groups; after the first of them each is one tap away until it holds a fault.
    groups: (shown) =>
      formGroups(controls, shown).map((group, index) =>
        index === 0 || group.legend === undefined
          ? group
          : { ...group, fold: shown.faults.length > 0 ? ('open' as const) : ('shut' as const) },
      ),
    buttons: [{ label: 'Compute and save', kind: 'primary', key: 'k' }],
  };
}
