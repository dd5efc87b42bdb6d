import type { SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { valveName } from '../../call/context.ts';
import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';

function gapsOf({ gaps, found }: SetUpConsequences): TakeoverItem {
  const by = (basis: string | undefined) =>
    gaps.filter(({ after }) => after?.basis === basis).map(({ title }) => title.toLowerCase());
  const parts = [
    ['measured', by('measured')],
    ['calculated', by('calculated')],
    ['not known', by(undefined)],
  ] as const;
  const told = parts.flatMap(([word, names]) => (names.length === 0 ? [] : [`${word}: ${names.join(', ')}`]));
  return { card: 'of-goal', label: `Gaps on ${valveName(found.setUp)},`, text: told.join('; ') };
}

/** Which gaps are measured and which are calculated, and the limits in force. */
export function gapItems(all: readonly SetUpConsequences[]): TakeoverItem[] {
  if (all.length === 0) return [{ card: 'of-goal', label: 'Gaps measured or calculated:', text: NOT_YET }];
  const [judged] = all.flatMap(({ limits }) =>
    limits.length === 0
      ? []
      : [limits.map(({ title, value }) => `${title.toLowerCase()} ${value.readAs}`).join('; ')],
  );
  return [
    ...all.map(gapsOf),
    ...(judged === undefined ? [] : [{ card: 'limits' as const, label: 'Limits in force', text: judged }]),
  ];
}
