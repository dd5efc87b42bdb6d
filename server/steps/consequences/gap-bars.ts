import { defined } from '../../../shared/defined.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { ChangeDetail, ChangeGap } from '../../mechanics/assessment/change/detail.ts';
import { bareInches, keyOf } from '../../mechanics/assessment/common/said.ts';
import { gapText } from './figure-text.ts';

const inches = (si: number): number => fromSi(si, 'in').value;
const inchesIf = (si: number | undefined) => (si === undefined ? undefined : inches(si));

function bar({ name, title, after, word, limit }: ChangeGap, key: string): Component[] {
  if (after === undefined || word === undefined) return [];
  return [
    {
      template: '/parts/gap-bar',
      data: {
        id: `gap-${key}-${name}`,
        label: title,
        text: gapText(after),
        unit: 'in',
        basis: after.basis,
        verdict: word,
        ...defined({
          point:
            after.value === undefined
              ? undefined
              : { at: inches(after.value), text: bareInches(after.value) },
          low: inchesIf(after.low),
          high: inchesIf(after.high),
        }),
        limit: { at: inches(limit.value), text: bareInches(limit.value), source: limit.source },
      },
    },
  ];
}

/** A bar for each gap that has a word, the worst first. */
export const gapBarComponents = ({ gaps, about }: ChangeDetail): Component[] =>
  gaps.flatMap((gap) => bar(gap, keyOf(about)));
