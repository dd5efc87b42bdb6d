import type { Again, PageForm } from '../../calls/pages/forms-on-page.ts';
import type { Sight } from '../../calls/pages/sight.ts';
import type { Registered } from '../../compute/registry.ts';
import { controlsOf } from '../../reference/form/controls-of.ts';
import { leavesOf } from '../../reference/form/leaves.ts';
import { formGroups } from '../../reference/form/slots-of.ts';
import { typedOf } from '../../reference/form/typed-of.ts';
import type { Chain } from './chain.ts';
import { PART_FORMS } from './forms/of-part.ts';
import type { PartName, WorkedStep } from './kinds.ts';
import { knownOf } from './known.ts';

/** The form of a part that computes: its own, or the one its schema makes. */
export function workingForm(
  sight: Sight,
  step: WorkedStep,
  part: PartName,
  each: Registered,
  chain: Chain,
  again: Again | undefined,
): PageForm {
  const common = {
    name: 'working',
    action: `${sight.base}/workings/${step}`,
  };
  const hidden = { computation: each.name, part };
  const own = PART_FORMS[part];
  if (own !== undefined) {
    const { pointerOff, ...initial } = own.initial(sight, chain);
    return {
      ...common,
      labels: own.labels,
      hidden: { ...hidden, ...(pointerOff === undefined ? {} : { pointerOff }) },
      initial,
      groups: (shown) => own.groups(shown, sight, chain),
      buttons: [{ label: own.button, kind: 'primary', key: 'k' }],
    };
  }
  const controls = controlsOf(each.input);
  const initial = typedOf(controls, knownOf(each.name, sight.build.spec));
  const labels = leavesOf(controls, again?.typed ?? initial).map((leaf) => [leaf.name, leaf.label] as const);
  return {
    ...common,
    labels: Object.fromEntries(labels),
    hidden,
    initial,
    // A long form comes in groups; after the first of them each is one tap away until it holds a fault.
    groups: (shown) =>
      formGroups(controls, shown).map((group, index) =>
        index === 0 || group.legend === undefined
          ? group
          : { ...group, fold: shown.faults.length > 0 ? ('open' as const) : ('shut' as const) },
      ),
    buttons: [{ label: 'Compute and keep', kind: 'primary', key: 'k' }],
  };
}
