import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { intervalFigures } from '../../../shared/quantities/format.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { FactsData } from '../../../views/parts/facts.examples.ts';
import type { GapBarData } from '../../../views/parts/gap-bar.examples.ts';
import type { ResultData } from '../../../views/parts/result.examples.ts';
import type { VerdictData } from '../../../views/parts/verdict.examples.ts';
import type { Answer, Registered } from '../../compute/registry.ts';
import { factsComponent } from '../../web/components.ts';
import { answerParts, type Scalar } from './answer-parts.ts';
import { leadingName } from './leading.ts';
import { figureAndUnit, shownValue } from './value-text.ts';

const VERDICTS = ['agrees', 'differs', 'cannot-tell', 'clear', 'close', 'short'] as const;
const GAPS = ['clear', 'close', 'short'] as const;

const oneOf = <Word extends string>(words: readonly Word[], value: unknown): Word | undefined =>
  words.find((word) => word === value);

function amount(value: unknown): number | undefined {
  const inside: unknown = typeof value === 'object' && value !== null ? Reflect.get(value, 'value') : value;
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

const bounds = z.tuple([z.number(), z.number()]);

/** The half-width of a 95 % interval that lies evenly about the figure that leads. */
function spreadOf(value: unknown, scalars: readonly Scalar[]): number | undefined {
  const told = bounds.safeParse(scalars.find(({ name }) => /(^|\.)interval95$/.test(name))?.value);
  if (!told.success || typeof value !== 'number') return undefined;
  const [low, high] = told.data;
  const half = (high - low) / 2;
  return half > 0 && Math.abs((low + high) / 2 - value) <= 1e-9 * half ? half : undefined;
}

function leadingComponent(each: Registered, scalars: readonly Scalar[]): Component | undefined {
  const name = leadingName(
    each.name,
    scalars.map((scalar) => scalar.name),
  );
  const leading = scalars.find((scalar) => scalar.name === name);
  if (leading === undefined) return undefined;
  const word = oneOf(VERDICTS, scalars.find((scalar) => scalar.name === 'verdict')?.value);
  const verdict: VerdictData | undefined = word === undefined ? undefined : { word };
  const { unit } = figureAndUnit(leading.value);
  const half = spreadOf(leading.value, scalars);
  const interval =
    half === undefined || typeof leading.value !== 'number'
      ? undefined
      : intervalFigures(leading.value, half);
  const data: ResultData = {
    id: 'answer-leading',
    label: leading.label,
    value: interval?.value ?? figureAndUnit(leading.value).figure,
    ...(interval === undefined ? {} : { spread: interval.spread }),
    ...defined({ unit, verdict }),
    ...(leading.about === '' ? {} : { basis: leading.about }),
  };
  return { template: '/parts/result', data };
}

/** What an answer shows: the figure that leads, the gap against its limit, every other value, and its lists. */
export function answerComponents(
  each: Registered,
  answer: Answer,
  given: { readonly uncertainty: number; readonly limitSource: string },
): readonly Component[] {
  const { scalars, tables } = answerParts(each.output, answer.result);
  const gap = gapComponent(scalars, given.uncertainty, given.limitSource);
  const leading = gap ?? leadingComponent(each, scalars);
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
