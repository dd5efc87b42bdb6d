import { defined } from '../../../shared/defined.ts';
import type { ButtonData } from '../../../views/parts/button.examples.ts';
import type { CallContext } from '../context.ts';
import { formComponent, type StepBody } from '../forms.ts';
import type { StepPageInput } from '../step.ts';
import type { Destination } from '../step-form.ts';
import { againstNewest } from './against-newest.ts';
import { groupsFor, type SpecGroup } from './spec-fields.ts';
import { specForm } from './spec-form.ts';
import { specText } from './spec-texts.ts';

/** A step that is one form over groups of the specification. */
export interface SpecStep {
  readonly name: string;
  readonly groups: readonly SpecGroup[];
}

/** At the bench a group is a screen; `?part=` says which. */
function partOf({ groups }: SpecStep, asked: string | undefined): number {
  const part = Number(asked ?? '1');
  return Number.isInteger(part) && part >= 1 && part <= groups.length ? part : 1;
}

/** The screen that has the field of what is next. */
function partAsked({ assessment: { next } }: CallContext, { name, groups }: SpecStep): string | undefined {
  const field = next?.step === name ? next.at?.field : undefined;
  const at = groups.findIndex(({ fields }) => fields.some(({ path }) => path === field));
  return at < 0 ? undefined : String(at + 1);
}

/** Where a kept form leads: the next screen of the step at the bench, and after the last to what is next. */
export function afterSpec(step: SpecStep, shown: string | undefined): Destination {
  if (shown === undefined || shown === '') return { step: step.name };
  const part = partOf(step, String(Number(shown) + 1));
  return part === 1 ? { page: '' } : { step: `${step.name}?part=${part}` };
}

/** Where the screens beside this one are; the first and the last lead on to the steps beside this one. */
function screensOf(context: CallContext, { name, groups }: SpecStep, part: number): StepBody['screens'] {
  const link = (to: number) => {
    const group = groups[to - 1];
    return group && { href: `${context.base}/steps/${name}?part=${to}`, label: group.legend };
  };
  const [previous, next] = [link(part - 1), link(part + 1)];
  return {
    position: `${part} of ${groups.length}`,
    ...defined({ previous, next }),
  };
}

/** The way to the screen that has the field of what is next. */
const toPart = ({ base }: CallContext, { name, groups }: SpecStep, part: string): ButtonData => ({
  label: groups[Number(part) - 1]?.legend ?? 'Enter it',
  href: `${base}/steps/${name}?part=${part}`,
  kind: 'plain',
});

/** All of it at the desk, one group on a screen at the bench. */
export function specPage(step: SpecStep, { context, req, rejected }: StepPageInput): StepBody {
  const bench = context.side === 'bench';
  const now = againstNewest(context, rejected);
  const { spec } = context.build;
  const groups = groupsFor(
    step.groups,
    spec,
    (path) => specText(spec, path) || (now.rejected?.typed[path] ?? ''),
  );
  const part = partOf(step, now.rejected?.typed.part ?? req.query.part ?? partAsked(context, step));
  const form = specForm({
    name: step.name,
    action: `${context.base}/spec/${step.name}`,
    groups: bench ? groups.slice(part - 1, part) : groups,
    spec,
    revision: context.build.revision,
    other: now.other,
    bench,
    alone: true,
    part: bench ? String(part) : '',
  });
  const screens = bench ? screensOf(context, step, part) : undefined;
  const asked = bench ? partAsked(context, step) : undefined;
  const next = asked === undefined || asked === String(part) ? undefined : toPart(context, step, asked);
  return {
    forms: [form],
    slots: [formComponent(form, now.rejected)],
    ...defined({ screens, next }),
  };
}
