import { normalDensity } from '../explain-readings/normal.ts';
import type { Account } from './accounts.ts';
import { mixed } from './beliefs.ts';
import { FEATURE_KINDS, type FeatureKind, type PartKind, SIZE_KINDS, type SizeKind } from './kinds.ts';
import { featureChance } from './likelihood.ts';
import type { IdentificationModel } from './model.ts';
import { type Line, linesOf } from './spread-of-readings.ts';
import type { Offer, PartReadings } from './types.ts';

const xLog = (x: number) => (x > 0 ? x * Math.log2(x) : 0);

/** Accounts this unlikely change no offer in its second figure; leaving them out keeps the page quick. */
const TOO_SMALL = 1e-5;
const STEPS_PER_SPREAD = 2;
const REACH = 5;

interface Worth {
  readonly bits: number;
  readonly rightFirst: number;
}

type Believed = Account & { readonly p: number };

/** What one outcome adds; `chanceOf` is the chance (or density) of it under one account. */
function outcome(
  believed: readonly Believed[],
  sums: Float64Array,
  chanceOf: (a: Believed) => number,
): Worth {
  sums.fill(0);
  for (const account of believed) sums[account.of] = (sums[account.of] ?? 0) + account.p * chanceOf(account);
  let bits = 0;
  let all = 0;
  let rightFirst = 0;
  for (const sum of sums) {
    bits += xLog(sum);
    all += sum;
    rightFirst = Math.max(rightFirst, sum);
  }
  return { bits: bits - xLog(all), rightFirst };
}

const densityAt = (x: number, lines: readonly Line[]) =>
  lines.reduce((sum, line) => sum + line.weight * normalDensity(x - line.mean, line.spread), 0);

function worthOfSize(
  model: IdentificationModel,
  kind: SizeKind,
  believed: readonly Believed[],
  sums: Float64Array,
): Worth {
  // Accounts made for the same size are one column of the integral.
  const sizes = [...new Set([undefined, ...believed.map(({ made }) => made.sizes[kind])])];
  const columns = sizes.map((size) => linesOf(model.sizes[kind], size, 1));
  const columnOf = new Map(believed.map((account) => [account, sizes.indexOf(account.made.sizes[kind])]));
  const lines = columns.flat();
  const from = Math.min(...lines.map((line) => line.mean - REACH * line.spread));
  const to = Math.max(...lines.map((line) => line.mean + REACH * line.spread));
  const step = Math.min(...lines.map((line) => line.spread)) / STEPS_PER_SPREAD;
  let bits = 0;
  let rightFirst = 0;
  for (let x = from; x <= to; x += step) {
    const densities = columns.map((column) => densityAt(x, column));
    const unknown = densities[0] ?? 0;
    const at = outcome(believed, sums, (account) =>
      mixed(account, densities[columnOf.get(account) ?? 0] ?? 0, unknown),
    );
    bits += at.bits * step;
    rightFirst += at.rightFirst * step;
  }
  return { bits, rightFirst };
}

function worthOfFeature(
  model: IdentificationModel,
  kind: FeatureKind,
  believed: readonly Believed[],
  sums: Float64Array,
): Worth {
  const feature = model.features[kind];
  let bits = 0;
  let rightFirst = 0;
  for (const { word } of feature.unknown) {
    const at = outcome(believed, sums, (account) =>
      mixed(
        account,
        featureChance(feature, account.made.features[kind], word),
        featureChance(feature, undefined, word),
      ),
    );
    bits += at.bits;
    rightFirst += at.rightFirst;
  }
  return { bits, rightFirst };
}

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
 * @param readings what was read; kinds with a reading are not offered again
 * @returns one offer per kind not read, bits [bit] 0 or more, rightFirst [1] 0 to 1
 * Validity: one reading of each kind; accounts below one in a hundred thousand are left out.
 * Source: information theory (mutual information); derived here.
 */
export function nextMeasurements(
  model: IdentificationModel,
  accounts: readonly Account[],
  p: Float64Array,
  readings: PartReadings,
): Offer[] {
  const believed = accounts
    .map((account, index) => ({ ...account, p: p[index] ?? 0 }))
    .filter((account) => account.p > TOO_SMALL);
  const sums = new Float64Array(Math.max(...accounts.map(({ of }) => of)) + 1);
  const now = outcome(believed, sums, () => 1).bits;
  const offer = (kind: PartKind, worth: Worth): Offer => ({
    kind,
    bits: Math.max(0, worth.bits - now),
    rightFirst: Math.min(1, worth.rightFirst),
  });
  const offers = [
    ...SIZE_KINDS.filter((kind) => (readings.sizes[kind] ?? []).length === 0).map((kind) =>
      offer(kind, worthOfSize(model, kind, believed, sums)),
    ),
    ...FEATURE_KINDS.filter((kind) => (readings.features[kind] ?? []).length === 0).map((kind) =>
      offer(kind, worthOfFeature(model, kind, believed, sums)),
    ),
  ];
  return inOrder(model, offers);
}

function inOrder(model: IdentificationModel, offers: readonly Offer[]): Offer[] {
  const ease = (kind: PartKind) => ({ ...model.sizes, ...model.features })[kind].ease;
  const most = Math.max(0, ...offers.map((each) => each.bits));
  const near = (each: Offer) => each.bits >= most - SAME_BITS;
  return [...offers].sort((a, b) =>
    near(a) && near(b) ? ease(a.kind) - ease(b.kind) || b.bits - a.bits : b.bits - a.bits,
  );
}
