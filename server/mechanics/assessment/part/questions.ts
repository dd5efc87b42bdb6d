import { formatQuantity } from '../../../../shared/quantities/format.ts';
import { isPartSize, PART_MARKS, PART_SIZES } from '../../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../../shared/schemas/words.ts';
import { standTogether } from '../../identify/likelihood.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import { defaultLimit } from '../../kit/limits.ts';
import { IN } from '../../kit/si.ts';
import type { Doubt } from '../common/asked.ts';
import { byId } from '../common/said.ts';
import type { PartEvidence } from '../evidence.ts';

type Found = Omit<Doubt, 'weight'>;

const of = (readings: readonly PartEvidence[], kind: string) => readings.filter((each) => each.kind === kind);
const idsOf = (readings: readonly PartEvidence[]): string[] => readings.map(({ id }) => id);

function ringsAndWidth(readings: readonly PartEvidence[]): Found[] {
  const rings = of(readings, 'rings');
  return of(readings, 'width-across-trunnion').flatMap((width) => {
    if (width.size === undefined) return [];
    const wide = width.size >= defaultLimit('wide-assembly-from');
    const narrow = width.size <= defaultLimit('narrow-assembly-up-to');
    const against = rings.filter(({ word }) => (wide && word === 'none') || (narrow && word === 'visible'));
    if (against.length === 0) return [];
    return [
      {
        code: 'rings-against-width',
        ask: `Rings and width do not go together: ${width.readAs} across is ${wide ? 'a wide assembly, and those show rings' : 'a narrow assembly, and those have bearings flush with the body'}. Which of the two was misread?`,
        test: 'a photograph of the trunnion’s end, and the width again over both ends',
        restsOn: idsOf([width, ...against]),
      },
    ];
  });
}

const stampWithoutDot = (readings: readonly PartEvidence[]): Found[] =>
  of(readings, 'ratio-stamp')
    .filter(({ typed }) => /^\d{1,3}$/.test(typed.trim()))
    .map(({ id, typed }) => ({
      code: 'stamp-without-dot',
      ask: `“${typed.trim()}” has no dot: is it a ratio, or a lot number? It stays undecided.`,
      test: 'the ratio on the engine; no mark proves a ratio, only the valve does',
      restsOn: [id],
    }));

function sameTextTwice(readings: readonly PartEvidence[]): Found[] {
  const kinds = keysOf(PART_MARKS);
  return kinds.flatMap((one, index) =>
    kinds.slice(index + 1).flatMap((other) =>
      of(readings, one).flatMap((first) => {
        const twin = of(readings, other).find(({ typed }) => typed.trim() === first.typed.trim());
        if (twin === undefined) return [];
        return [
          {
            code: 'same-text-twice',
            ask: `“${first.typed.trim()}” stands under “${PART_MARKS[one]}” and under “${PART_MARKS[other]}”. Are there two marks, or was one entered twice?`,
            test: 'point at each mark on the part, and read the box by itself',
            restsOn: idsOf([first, twin]),
          },
        ];
      }),
    ),
  );
}

function mixedLots(readings: readonly PartEvidence[]): Found[] {
  const marks = of(readings, 'other-number');
  const texts = [...new Set(marks.map(({ typed }) => typed.trim()))].sort();
  if (texts.length < 2) return [];
  return [
    {
      code: 'different-numbers',
      ask: `There are different numbers, ${texts.map((text) => `“${text}”`).join(' and ')}. Are they on one arm, or is the set of mixed lots?`,
      test: 'look at every arm of the set, and give each arm its own number',
      restsOn: idsOf(marks),
    },
  ];
}

const WHY: Readonly<Record<string, string>> = {
  'hole-across-trunnion': 'oval, burred or cocked jaws',
  'roller-diameter': 'a flat on the roller',
};

/** Readings of one size that are further apart than reading alone explains. */
function twoSizes(readings: readonly PartEvidence[]): Found[] {
  return keysOf(PART_SIZES).flatMap((kind) => {
    const own = of(readings, kind).filter(({ size }) => size !== undefined);
    const sizes = own.flatMap(({ size }) => (size === undefined ? [] : [size / IN]));
    if (!isPartSize(kind) || sizes.length < 2) return [];
    const model = IDENTIFICATION_MODEL.sizes[kind];
    if (standTogether(model, sizes)) return [];
    const text = (value: number) =>
      formatQuantity({ value: Number(value.toPrecision(12)), unit: 'in' }, { places: 4 });
    return [
      {
        code: 'two-sizes',
        ask: `${PART_SIZES[kind]}: the readings are ${text(Math.max(...sizes) - Math.min(...sizes))} apart, more than ${text(model.apart)}. Is it ${WHY[kind] ?? 'a tilted caliper, or not the same place'}? Both are kept, and neither is averaged away.`,
        test:
          kind === 'hole-across-trunnion'
            ? 'a stud or a drill shank of the size in question, slid through by hand'
            : 'the same size again, turned a quarter turn, twice each way',
        restsOn: idsOf(own),
      },
    ];
  });
}

/** What does not go together among the readings of the part: asked, and no entry is changed. */
export function partDoubts(part: readonly PartEvidence[]): Doubt[] {
  const readings = part.toSorted(byId);
  return [twoSizes, ringsAndWidth, stampWithoutDot, sameTextTwice, mixedLots]
    .flatMap((doubt) => doubt(readings))
    .map((found) => ({ ...found, weight: 'weak' }));
}
