import { normalDensity } from '../explain-readings/normal.ts';
import type { Account } from './accounts.ts';
import { alike, type Worth, worthOfOutcome } from './columns.ts';
import { FEATURE_KINDS, type FeatureKind, type PartKind, SIZE_KINDS, type SizeKind } from './kinds.ts';
import { featureChance } from './likelihood.ts';
import type { IdentificationModel } from './model.ts';
import { type Line, linesOf } from './spread-of-readings.ts';
import { excessOf } from './tools.ts';
import type { Offer, PartReadings } from './types.ts';

const STEPS_PER_SPREAD = 2;
const REACH = 5;

interface Believed {
  readonly accounts: readonly Account[];
  readonly p: Float64Array;
  /** Index of none of these. */
  readonly none: number;
}

/** Density of a reading; a line that is further off than its reach adds nothing that could be seen. */
function densityAt(x: number, lines: readonly Line[]): number {
  let sum = 0;
  for (const { weight, mean, spread } of lines) {
    const distance = x - mean;
    if (Math.abs(distance) <= REACH * spread) sum += weight * normalDensity(distance, spread);
  }
  return sum;
}

function worthOfSize(model: IdentificationModel, kind: SizeKind, { accounts, p, none }: Believed): Worth {
  const columns = alike(accounts, p, none, ({ made }) => made.sizes[kind]);
  const spreads = columns.map(({ value }) => linesOf(model.sizes[kind], value, 1));
  const lines = spreads.flat();
  const from = lines.reduce(
    (least, line) => Math.min(least, line.mean - REACH * line.spread),
    Number.POSITIVE_INFINITY,
  );
  const to = lines.reduce(
    (most, line) => Math.max(most, line.mean + REACH * line.spread),
    Number.NEGATIVE_INFINITY,
  );
  const step =
    lines.reduce((least, line) => Math.min(least, line.spread), Number.POSITIVE_INFINITY) / STEPS_PER_SPREAD;
  const densities = new Float64Array(columns.length);
  let bits = 0;
  let rightFirst = 0;
  for (let x = from; x <= to; x += step) {
    spreads.forEach((own, index) => {
      densities[index] = densityAt(x, own);
    });
    const at = worthOfOutcome(columns, densities);
    bits += at.bits * step;
    rightFirst += at.rightFirst * step;
  }
  return { bits, rightFirst };
}

function worthOfFeature(
  model: IdentificationModel,
  kind: FeatureKind,
  { accounts, p, none }: Believed,
): Worth {
  const feature = model.features[kind];
  const columns = alike(accounts, p, none, ({ made }) => made.features[kind]);
  const outcomes = feature.unknown.map(({ word }) =>
    worthOfOutcome(
      columns,
      columns.map(({ value }) => featureChance(feature, value, word)),
    ),
  );
  return {
    bits: outcomes.reduce((sum, each) => sum + each.bits, 0),
    rightFirst: outcomes.reduce((sum, each) => sum + each.rightFirst, 0),
  };
}

/** Nothing was read of it, or only with tools that leave more open than the band a caliper agrees in. */
const onlyCoarse = (model: IdentificationModel, kind: SizeKind, { sizes }: PartReadings): boolean =>
  (sizes[kind] ?? []).every((read) => excessOf(kind, read) > model.sizes[kind].agrees.below);

/** Two offers this close in worth are the same: the one that is less trouble goes first. */
const SAME_BITS = 0.05;

/**
 * What each measurement not taken yet is worth, the one that settles most first.
 *
 * Equation: bits = H(family) - E[H(family | reading)] = integral of sum_c q_c log2(q_c / sum q) less
 * sum_c p_c log2 p_c, with q_c(x) the joint density of family c and reading x; right first = integral of
 * max_c q_c. Rectangle rule with half the smallest spread as its step; a sum for what is only seen.
 *
 * @param model [in] the measurement model
 * @param accounts [1] as from `accountsOf`
 * @param p [1] as from `beliefs`
 * @param readings what was read; kinds with a reading are not offered again, but those that were guessed or ruled
 * @returns one offer per kind not read, bits [bit] 0 or more, rightFirst [1] 0 to 1
 * Validity: one reading of each kind.
 * Source: information theory (mutual information); derived here.
 */
export function nextMeasurements(
  model: IdentificationModel,
  accounts: readonly Account[],
  p: Float64Array,
  readings: PartReadings,
): Offer[] {
  const none = accounts.reduce((most, { of }) => Math.max(most, of), 0);
  const believed = { accounts, p, none };
  const now = worthOfOutcome(
    alike(accounts, p, none, () => undefined),
    [1],
  ).bits;
  const offer = (kind: PartKind, worth: Worth): Offer => ({
    kind,
    bits: Math.max(0, worth.bits - now),
    rightFirst: Math.min(1, worth.rightFirst),
  });
  return inOrder(model, [
    ...SIZE_KINDS.filter((kind) => onlyCoarse(model, kind, readings)).map((kind) =>
      offer(kind, worthOfSize(model, kind, believed)),
    ),
    ...FEATURE_KINDS.filter((kind) => (readings.features[kind] ?? []).length === 0).map((kind) =>
      offer(kind, worthOfFeature(model, kind, believed)),
    ),
  ]);
}

function inOrder(model: IdentificationModel, offers: readonly Offer[]): Offer[] {
  const ease = (kind: PartKind) => ({ ...model.sizes, ...model.features })[kind].ease;
  const most = Math.max(0, ...offers.map((each) => each.bits));
  const near = (each: Offer) => each.bits >= most - SAME_BITS;
  return [...offers].sort((a, b) =>
    near(a) && near(b) ? ease(a.kind) - ease(b.kind) || b.bits - a.bits : b.bits - a.bits,
  );
}
