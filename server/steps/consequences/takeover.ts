import { asTold } from '../../../shared/quantities/as-entered.ts';
import { limitsUsed } from '../../assessment/consequences/of-valve.ts';
import type { CallContext } from '../../call/context.ts';
import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { titleOf } from './judged.ts';

function gapsOf(detail: ChangeDetail, assessment: Assessment): TakeoverItem {
  const { gaps } = detail;
  const by = (basis: string | undefined) =>
    gaps.filter(({ after }) => after?.basis === basis).map(({ title }) => title.toLowerCase());
  const parts = [
    ['measured', by('measured')],
    ['calculated', by('calculated')],
    ['not known', by(undefined)],
  ] as const;
  const told = parts.flatMap(([word, names]) => (names.length === 0 ? [] : [`${word}: ${names.join(', ')}`]));
  return { card: 'of-goal', label: `Gaps on ${titleOf(detail, assessment)},`, text: told.join('; ') };
}

/** Which gaps are measured and which are calculated, and the limits in force. */
export function gapItems({ record, assessment }: CallContext): TakeoverItem[] {
  const { change } = assessment.details;
  if (change.length === 0) return [{ card: 'of-goal', label: 'Gaps measured or calculated:', text: NOT_YET }];
  const limits = change.flatMap((detail) => limitsUsed(record, detail));
  const told = new Set(limits.map(({ title, value }) => `${title.toLowerCase()} ${asTold(value.readAs)}`));
  return [
    ...change.map((detail) => gapsOf(detail, assessment)),
    { card: 'limits', label: 'Limits in force', text: [...told].join('; ') },
  ];
}
