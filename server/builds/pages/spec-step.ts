import type { Again, StepBody } from '../../calls/pages/forms-on-page.ts';
import { formSlot } from '../../calls/pages/forms-on-page.ts';
import { momentText } from '../../calls/pages/moments.ts';
import type { Sight } from '../../calls/pages/sight.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import { type Revision, specAt } from '../revisions.ts';
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
  readonly again: Again;
  readonly other: OtherSide | undefined;
}

/**
 * A form that was read at an older revision comes back with both sides: what its writer changed as typed, what
 * they left alone as it stands now, and beside each the entry of the newer revision where they differ.
 */
export async function againstNewer(
  tx: Tx,
  sight: Sight,
  newest: Revision | undefined,
  again: Again,
): Promise<Stale> {
  const read = Number(again.typed.revision);
  const { revision, spec } = sight.build;
  if (!Number.isInteger(read) || read === revision || newest === undefined)
    return { again, other: undefined };
  const then = await specAt(tx, sight.caller.shopId, sight.build.id, read);
  const typed: Record<string, string> = { ...again.typed };
  const fields = new Set<string>();
  for (const path of Object.keys(again.typed).filter((name) => name.includes('.'))) {
    const now = specText(spec, path);
    if (typed[path] === specText(then, path)) typed[path] = now;
    else if (typed[path] !== now && now !== specText(then, path)) fields.add(path);
  }
  return {
    again: { ...again, typed },
    other: { who: newest.by, when: momentText(newest.at), spec, fields },
  };
}

/** Where the screens beside this one are; the first and the last lead on to the steps beside this one. */
function screensOf(sight: Sight, step: SpecStep, part: number): NonNullable<StepBody['screens']> {
  const groups = GROUPS[step];
  const link = (to: number) => {
    const group = groups[to - 1];
    return group && { href: `${sight.base}/steps/${step}?part=${to}`, label: group.legend };
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
export function specStep(sight: Sight, given: PageRequest, step: SpecStep, stale: Partial<Stale>): StepBody {
  const bench = sight.side === 'bench';
  const part = partOf(step, stale.again?.typed.part ?? given.query.part);
  const groups = bench ? GROUPS[step].slice(part - 1, part) : GROUPS[step];
  const form = specForm({
    name: step,
    action: `${sight.base}/spec/${step}`,
    groups,
    spec: sight.build.spec,
    revision: sight.build.revision,
    other: stale.other,
    bench,
    alone: true,
    part: bench ? String(part) : '',
  });
  return {
    forms: [form],
    slots: [formSlot(form, stale.again)],
    ...(bench ? { screens: screensOf(sight, step, part) } : {}),
  };
}
