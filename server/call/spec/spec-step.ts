import { specAt } from '../../records/builds/revisions.ts';
import { momentText } from '../../web/dates.ts';
import type { PageRequest } from '../../web/page-route.ts';
import type { CallContext } from '../context.ts';
import type { RejectedForm, StepBody } from '../forms.ts';
import { formComponent } from '../forms.ts';
import { BUILD_GROUPS, CAM_GROUPS, type SpecGroup } from './spec-fields.ts';
import { type OtherSide, specForm } from './spec-form.ts';
import { specText } from './spec-texts.ts';

export type SpecStep = 'build' | 'cam';
export const GROUPS: Readonly<Record<SpecStep, readonly SpecGroup[]>> = {
  build: BUILD_GROUPS,
  cam: CAM_GROUPS,
};

/** At the bench a group is a screen; `?part=` says which. */
export function partOf(step: SpecStep, asked: string | undefined): number {
  const part = Number(asked ?? '1');
  return Number.isInteger(part) && part >= 1 && part <= GROUPS[step].length ? part : 1;
}

export interface Stale {
  readonly rejected: RejectedForm;
  readonly other: OtherSide | undefined;
}

/**
 * A form that was read at an older revision comes back with both sides: what its writer changed as typed, what
 * they left alone as it stands now, and beside each the entry of the newer revision where they differ.
 */
export function againstNewer({ build, record }: CallContext, rejected: RejectedForm): Stale {
  const read = Number(rejected.typed.revision);
  const { revision, spec } = build;
  const newest = record.revisions.at(-1);
  if (!Number.isInteger(read) || read === revision || newest === undefined)
    return { rejected, other: undefined };
  const then = specAt(record.revisions, read);
  const typed: Record<string, string> = { ...rejected.typed };
  const fields = new Set<string>();
  for (const path of Object.keys(rejected.typed).filter((name) => name.includes('.'))) {
    const now = specText(spec, path);
    if (typed[path] === specText(then, path)) typed[path] = now;
    else if (typed[path] !== now && now !== specText(then, path)) fields.add(path);
  }
  return {
    rejected: { ...rejected, typed },
    other: { who: newest.by, when: momentText(newest.at), spec, fields },
  };
}

/** Where the screens beside this one are; the first and the last lead on to the steps beside this one. */
function screensOf(context: CallContext, step: SpecStep, part: number): NonNullable<StepBody['screens']> {
  const groups = GROUPS[step];
  const link = (to: number) => {
    const group = groups[to - 1];
    return group && { href: `${context.base}/steps/${step}?part=${to}`, label: group.legend };
  };
  const previous = link(part - 1);
  const next = link(part + 1);
  return {
    position: `${part} of ${groups.length}`,
    ...(previous === undefined ? {} : { previous }),
    ...(next === undefined ? {} : { next }),
  };
}

/** Engine and springs, or the cam card: all of it at the desk, one group on a screen at the bench. */
export function specStep(
  context: CallContext,
  req: PageRequest,
  step: SpecStep,
  stale: Partial<Stale>,
): StepBody {
  const bench = context.side === 'bench';
  const part = partOf(step, stale.rejected?.typed.part ?? req.query.part);
  const groups = bench ? GROUPS[step].slice(part - 1, part) : GROUPS[step];
  const form = specForm({
    name: step,
    action: `${context.base}/spec/${step}`,
    groups,
    spec: context.build.spec,
    revision: context.build.revision,
    other: stale.other,
    bench,
    alone: true,
    part: bench ? String(part) : '',
  });
  return {
    forms: [form],
    slots: [formComponent(form, stale.rejected)],
    ...(bench ? { screens: screensOf(context, step, part) } : {}),
  };
}
