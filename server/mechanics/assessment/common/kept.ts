import type { StepName } from '../../../../shared/steps.ts';
import type { Subject } from '../assessment.ts';
import type { Evidence, SetEvidence } from '../evidence.ts';
import { once } from './once.ts';

export const BUILD: Subject = { of: 'build' };

/** Where each is worked out. */
export const STEPS: Readonly<Record<SetEvidence['of'], StepName>> = {
  preload: 'adjuster',
  turns: 'adjuster',
  pushrod: 'geometry',
  stand: 'geometry',
  heat: 'adjuster',
  follower: 'geometry',
};

/** Something that was set or ordered by a sum, with the entry it was kept by. */
export interface KeptSet<Set extends SetEvidence = SetEvidence> {
  readonly id: string;
  readonly line: number;
  readonly set: Set;
}

type Of<Name extends SetEvidence['of']> = Extract<SetEvidence, { readonly of: Name }>;

const countingOf = once((workings: Evidence['workings']): readonly KeptSet[] =>
  workings
    .filter(({ onlyWorkedOut }) => onlyWorkedOut !== true)
    .flatMap(({ id, line, set }) => (set === undefined ? [] : [{ id, line, set }]))
    .toSorted((a, b) => a.line - b.line),
);

/** All that was kept and counts, as it was kept. */
export const keptSets = ({ workings }: Pick<Evidence, 'workings'>): readonly KeptSet[] =>
  countingOf(workings);

/** The record with the sums as well that no adjuster was turned by: a stop was raised by them. */
export const withAllSums = <Known extends Pick<Evidence, 'workings'>>(evidence: Known): Known => ({
  ...evidence,
  workings: evidence.workings.map(({ onlyWorkedOut: _, ...working }) => working),
});

/** All of one kind, the oldest first. */
export function allKept<Name extends SetEvidence['of']>(
  evidence: Pick<Evidence, 'workings'>,
  name: Name,
): KeptSet<Of<Name>>[] {
  const is = (kept: KeptSet): kept is KeptSet<Of<Name>> => kept.set.of === name;
  return keptSets(evidence).filter(is);
}

/** Of one kind the sum that was kept last: one that is worked out again takes the place of those before it. */
export const lastKept = <Name extends SetEvidence['of']>(
  evidence: Pick<Evidence, 'workings'>,
  name: Name,
): KeptSet<Of<Name>> | undefined => allKept(evidence, name).at(-1);
