import model from '../../../seeds/identification-model.json' with { type: 'json' };
import {
  FEATURE_KINDS,
  type PartKind,
  SIZE_KINDS,
  type SizeKind,
} from '../../../server/mechanics/identify/kinds.ts';
import type { Family, PartReadings } from '../../../server/mechanics/identify/types.ts';
import type { Chance } from '../explain-readings/random.ts';

/**
 * A part and its readings drawn from the stated model, written from the seed table alone: it shares no function
 * with the ranking, so that the two can disagree.
 */
type Made = Pick<Family, 'sizes' | 'features'>;

function weighted<T extends { readonly share: number }>(chance: Chance, items: readonly T[]): T {
  let left = chance.between(
    0,
    items.reduce((sum, item) => sum + item.share, 0),
  );
  for (const item of items) {
    left -= item.share;
    if (left < 0) return item;
  }
  return chance.pick(items);
}

function unknownSize(chance: Chance, kind: SizeKind): number {
  const { nominals, elsewhere } = model.sizes[kind].unknown;
  const known = nominals.reduce((sum, each) => sum + each.share, 0);
  if (chance.between(0, known + elsewhere.share) < known) return weighted(chance, nominals).at;
  return elsewhere.mean + chance.normal(elsewhere.spread);
}

/** One reading of a size: what is wrong at the place, and what is wrong with this reading. */
export function simulatedReading(chance: Chance, kind: SizeKind, size: number): number {
  const error = weighted(chance, model.sizes[kind].errors);
  return size + error.bias + chance.normal(error.spread) + chance.normal(model.sizes[kind].repeat);
}

function simulatedWord(chance: Chance, kind: (typeof FEATURE_KINDS)[number], word: string): string {
  const feature = model.features[kind];
  if (!chance.happens(feature.misread)) return word;
  return chance.pick(feature.unknown.filter((each) => each.word !== word)).word;
}

function complete(chance: Chance, made: Made, same: number): Made {
  const kept = () => chance.happens(same);
  return {
    sizes: Object.fromEntries(
      SIZE_KINDS.map((kind) => {
        const size = made.sizes[kind];
        return [kind, size !== undefined && kept() ? size : unknownSize(chance, kind)];
      }),
    ),
    features: Object.fromEntries(
      FEATURE_KINDS.map((kind) => {
        const word = made.features[kind];
        return [
          kind,
          word !== undefined && kept() ? word : weighted(chance, model.features[kind].unknown).word,
        ];
      }),
    ),
  };
}

/** A family by its weight, or undefined with the prior of none of these. */
export function drawnFamily(chance: Chance, families: readonly Family[]): Family | undefined {
  if (chance.happens(model.noneOfThese.prior)) return undefined;
  return weighted(
    chance,
    families.map((family) => ({ share: family.weight, family })),
  ).family;
}

/** A part that is in no line of the catalogue. */
export function partFromElsewhere(chance: Chance, families: readonly Family[]): Made {
  const { share, same } = model.noneOfThese.relative;
  if (!chance.happens(share)) return complete(chance, { sizes: {}, features: {} }, 1);
  const relative = weighted(
    chance,
    families.map((family) => ({ share: family.weight, family })),
  ).family;
  return complete(chance, relative, same);
}

export function readingsOf(chance: Chance, made: Made, kinds: readonly PartKind[]): PartReadings {
  const whole = complete(chance, made, 1);
  return {
    sizes: Object.fromEntries(
      SIZE_KINDS.filter((kind) => kinds.includes(kind)).map((kind) => [
        kind,
        [{ value: simulatedReading(chance, kind, whole.sizes[kind] ?? 0) }],
      ]),
    ),
    features: Object.fromEntries(
      FEATURE_KINDS.filter((kind) => kinds.includes(kind)).map((kind) => [
        kind,
        [simulatedWord(chance, kind, whole.features[kind] ?? '')],
      ]),
    ),
  };
}
