import { defined } from '../../../shared/defined.ts';
import { isObject, memberOf } from '../../../shared/member.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { FactsData } from '../../../views/parts/facts.examples.ts';
import type { GapBarData } from '../../../views/parts/gap-bar.examples.ts';
import type { ResultData } from '../../../views/parts/result.examples.ts';
import type { VerdictData } from '../../../views/parts/verdict.examples.ts';
import type { Answer, Registered } from '../../compute/registry.ts';
import { factsComponent } from '../../web/components.ts';
import { answerParts, type Scalar } from './answer-parts.ts';
import { headlineOf } from './headline.ts';
import { figureAndUnit, shownValue } from './value-text.ts';

const VERDICTS = ['agrees', 'differs', 'cannot-tell', 'clear', 'close', 'short'] as const;
const GAPS = ['clear', 'close', 'short'] as const;

const oneOf = <Word extends string>(words: readonly Word[], value: unknown): Word | undefined =>
  words.find((word) => word === value);

function amount(value: unknown): number | undefined {
  const inside: unknown = isObject(value) ? memberOf(value, 'value') : value;
  return typeof inside === 'number' ? inside : undefined;
}

/** The gap against its limit, where the answer has both and a verdict. */
function gapComponent(scalars: readonly Scalar[], half: number, source: string): Component | undefined {
  const named = (name: string) => scalars.find((scalar) => scalar.name === name)?.value;
  const verdict = oneOf(GAPS, named('verdict'));
  const gap = amount(named('margin'));
  const limit = amount(named('limit'));
  if (verdict === undefined || gap === undefined || limit === undefined) return undefined;
  const { figure, unit = '' } = figureAndUnit(named('margin'));
  const data: GapBarData = {
    id: 'gap',
    label: 'Gap left, against its limit',
    text: half === 0 ? figure : `${figure} ± ${figureAndUnit({ value: half, unit }).figure}`,
    unit,
    basis: 'calculated',
    verdict,
    point: { at: gap, text: figure },
    low: gap - half,
    high: gap + half,
    limit: { at: limit, text: figureAndUnit(named('limit')).figure, source },
  };
  return { template: '/parts/gap-bar', data };
}

function leadingComponent(
  each: Registered,
  body: unknown,
  scalars: readonly Scalar[],
): Component | undefined {
  const leading = headlineOf(each, body, scalars);
  if (leading === undefined) return undefined;
  const word = oneOf(VERDICTS, scalars.find((scalar) => scalar.name === 'verdict')?.value);
  const verdict: VerdictData | undefined = word === undefined ? undefined : { word };
  const { of, figure, spread, unit } = leading;
  const data: ResultData = {
    id: 'answer-leading',
    label: of.label,
    value: figure,
    ...defined({ spread, unit, verdict }),
    ...(of.about === '' ? {} : { basis: of.about }),
  };
  return { template: '/parts/result', data };
}

/** What an answer shows: the figure that leads, the gap against its limit, every other value, and its lists. */
export function answerComponents(
  each: Registered,
  { body, answer }: { readonly body: unknown; readonly answer: Answer },
  given: { readonly uncertainty: number; readonly limitSource: string },
): readonly Component[] {
  const { scalars, tables } = answerParts(each.output, answer.result);
  const gap = gapComponent(scalars, given.uncertainty, given.limitSource);
  const leading = gap ?? leadingComponent(each, body, scalars);
  const facts: FactsData = {
    items: scalars.map(({ label, about, value }) => ({
      label,
      value: shownValue(value),
      ...(about === '' ? {} : { note: about }),
    })),
  };
  return [
    ...(leading === undefined ? [] : [leading]),
    ...(scalars.length === 0 ? [] : [factsComponent(facts)]),
    ...tables.map((data): Component => ({ template: '/pages/reference/list', data })),
  ];
}
