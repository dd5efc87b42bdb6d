import { normalDensity } from '../explain-readings/normal.ts';
import type { SizeKind } from './kinds.ts';
import type { SizeModel } from './model.ts';
import { errorsBy, toolMeant, withinOf } from './tools.ts';
import type { ReadSize } from './types.ts';

/** A weighted normal over the size that a part is made for. Inches. */
interface Hump {
  readonly weight: number;
  readonly mean: number;
  readonly variance: number;
}

const product = (a: Hump, b: Hump): Hump => {
  const variance = a.variance + b.variance;
  return {
    weight: a.weight * b.weight * normalDensity(a.mean - b.mean, Math.sqrt(variance)),
    mean: (a.mean * b.variance + b.mean * a.variance) / variance,
    variance: (a.variance * b.variance) / variance,
  };
};

/** Readings by one tool, which are off together. */
function byTool(kind: SizeKind, readings: readonly ReadSize[]): ReadSize[][] {
  const groups = new Map<string, ReadSize[]>();
  for (const read of readings) {
    const key = `${toolMeant(read.tool)} ${withinOf(kind, read)}`;
    groups.set(key, [...(groups.get(key) ?? []), read]);
  }
  return [...groups.values()];
}

function humpsOf(model: SizeModel, kind: SizeKind, group: readonly ReadSize[]): Hump[] {
  const mean = group.reduce((sum, { value }) => sum + value, 0) / group.length;
  const [first] = group;
  if (first === undefined) return [];
  return errorsBy(model, kind, first).map(({ share, bias, spread }) => ({
    weight: share,
    mean: mean - bias,
    variance: spread ** 2 + model.repeat ** 2 / group.length,
  }));
}

/** Tools, or half-widths, told apart at one place; more are not read of one size. */
const MOST_TOOLS = 6;

/**
 * How well readings of one place fit each size, as a sum of normals over the size.
 *
 * Equation: f(s) = product over the tools of sum_lines share N(mean - bias - s; spread² + repeat²/n); readings by one
 * tool share its error, those by different tools do not. A product of two normals is one, N(m1 - m2; v1 + v2) high.
 *
 * @param model [in] the model of this kind of reading
 * @param kind what is read
 * @param readings [in] one or more, of one size
 * @returns a function: likelihood [1/inⁿ] of a part made for `nominal`, or of one whose size is not known
 * Validity: errors of different tools independent; no more than six tools, the others left out.
 * Source: product of normal densities, textbook; derived here.
 */
export function sizeCurve(
  model: SizeModel,
  kind: SizeKind,
  readings: readonly ReadSize[],
): (nominal: number | undefined) => number {
  const humps = byTool(kind, readings)
    .slice(0, MOST_TOOLS)
    .map((group) => humpsOf(model, kind, group))
    .reduce((before, next) => before.flatMap((a) => next.map((b) => product(a, b))));
  const at = (size: number, more = 0) =>
    humps.reduce(
      (sum, { weight, mean, variance }) =>
        sum + weight * normalDensity(mean - size, Math.sqrt(variance + more)),
      0,
    );
  const { nominals, elsewhere } = model.unknown;
  return (nominal) =>
    nominal === undefined
      ? nominals.reduce((sum, each) => sum + each.share * at(each.at), 0) +
        elsewhere.share * at(elsewhere.mean, elsewhere.spread ** 2)
      : at(nominal);
}
