import { formatNumber, placesOf } from '../../shared/quantities/format.ts';
import { shortLength } from '../../shared/quantities/short-length.ts';
import { toSi } from '../../shared/quantities/units.ts';
import { FEATURE_WORDS, PART_FEATURES, PART_SIZES } from '../../shared/schemas/part-words.ts';
import { keysOf } from '../../shared/schemas/words.ts';
import type { FactsData } from '../../views/parts/facts.examples.ts';
import type { PartFamily } from '../records/catalogue/families.ts';

/** `.4375 in`: a catalogue size, with no more places than a caliper shows and no fewer than it is written with. */
export function sizeText(inches: number): string {
  return shortLength(toSi({ value: inches, unit: 'in' }));
}

export const ratioText = (ratio: number) =>
  formatNumber(ratio, Math.max(2, Math.min(4, placesOf(ratio) ?? 4)));

/** Everything the catalogue says of a family, with what it does not know named as such. */
export function familyFacts(family: PartFamily): FactsData['items'] {
  return [
    { label: 'Code', value: family.code },
    { label: 'Fits', value: family.fits || 'not said' },
    {
      label: 'Nominal ratio',
      value: family.nominalRatio === undefined ? 'not known' : ratioText(family.nominalRatio),
      note: 'as the catalogue has it; only a valve proves a ratio',
    },
    ...keysOf(PART_FEATURES).map((kind) => ({
      label: PART_FEATURES[kind],
      value: FEATURE_WORDS[kind][family.features[kind] ?? ''] ?? 'not known',
    })),
    ...keysOf(PART_SIZES).map((kind) => {
      const size = family.sizes[kind];
      return { label: PART_SIZES[kind], value: size === undefined ? 'not known' : sizeText(size) };
    }),
    ...(family.notes === '' ? [] : [{ label: 'Notes', value: family.notes }]),
    { label: 'Entered by', value: family.by },
  ];
}
