import { defined } from '../../../../shared/defined.ts';
import { DEFAULT_ASSUMPTIONS } from '../../explain-readings/assumptions.ts';
import { byText } from '../../kit/by-text.ts';
import type { NextAction } from '../assessment.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { GroupExplained } from '../ratio/compared/explain.ts';
import type { PassKind } from '../ratio/read/detail.ts';
import { askFor, type Telling } from '../ratio/told/ratio-said.ts';
import { readingWorthTaking } from '../ratio/told/would-tell.ts';

const chance = ({ result }: GroupExplained): number =>
  Math.max(0, ...(result?.nominals ?? []).map(({ probability }) => probability));

const MINUTES: Readonly<Partial<Record<Telling, number>>> = {
  'lobe-at-lifter': DEFAULT_ASSUMPTIONS.minutesLobeAtLifter,
  'one-more-pass': DEFAULT_ASSUMPTIONS.minutesOneMorePass,
  'rocker-on-another-valve': DEFAULT_ASSUMPTIONS.minutesOtherValve,
};

/** What its pass is of, where it is one of a set-up that is there. */
const READS: Readonly<Partial<Record<Telling, PassKind>>> = {
  'lobe-at-lifter': 'lobe-lift',
  'one-more-pass': 'valve-lift',
};

/** The reading that tells most for its minutes, of the arm that is settled least. */
export function readingNext(explained: readonly GroupExplained[]): NextAction | undefined {
  const open = explained
    .flatMap((each) => {
      const action = readingWorthTaking(each);
      return action === undefined ? [] : [{ each, action }];
    })
    .toSorted((a, b) => chance(a.each) - chance(b.each) || byText(a.each.group.key, b.each.group.key))[0];
  if (open === undefined) return undefined;
  const { each, action } = open;
  const weighed = each.result?.nextReading;
  const minutes = weighed?.action === action ? weighed.minutes : MINUTES[action];
  return {
    id: `next:reading:${each.group.key}:${action}`,
    action,
    step: 'ratio',
    about: valveSubject(each.group),
    sentence: `${placeOf(each.group)}: ${askFor(action)}`,
    reason: 'It tells most about the ratio for the time it takes.',
    ...defined({ minutes, reads: READS[action] }),
    turns: action !== 'read-back',
  };
}
