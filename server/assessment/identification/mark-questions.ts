import { formatQuantity } from '../../../shared/quantities/format.ts';
import { inches } from '../../../shared/schemas/entered.ts';
import { PART_MARKS, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import type { Apart } from '../../mechanics/identify/types.ts';
import { defaultLimit } from '../../mechanics/kit/limits.ts';
import { IN } from '../../mechanics/kit/si.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';

/** Something that does not go together: asked, with what settles it; no entry is changed. */
export interface PartQuestion {
  readonly code: string;
  readonly ask: string;
  readonly test: string;
}

const textsOf = (readings: readonly PartReading[], kind: string) =>
  readings.filter((reading) => reading.kind === kind).map((reading) => reading.typed.trim());

function ringsAndWidth(readings: readonly PartReading[]): PartQuestion[] {
  const rings = readings.filter((reading) => reading.kind === 'rings').at(-1)?.word;
  const width = readings.filter((reading) => reading.kind === 'width-across-trunnion').at(-1);
  if (rings === undefined || width?.size === undefined) return [];
  const across = inches(width.size);
  const wide = across >= defaultLimit('wide-assembly-from') / IN;
  const narrow = across <= defaultLimit('narrow-assembly-up-to') / IN;
  if (!(wide && rings === 'none') && !(narrow && rings === 'visible')) return [];
  return [
    {
      code: 'rings-against-width',
      ask: `Rings and width do not go together: ${width.readAs} across is ${wide ? 'a wide assembly, and those show rings' : 'a narrow assembly, and those have bearings flush with the body'}. Which of the two was misread?`,
      test: 'a photograph of the trunnion’s end, and the width again over both ends',
    },
  ];
}

function stampWithoutDot(readings: readonly PartReading[]): PartQuestion[] {
  return textsOf(readings, 'ratio-stamp')
    .filter((text) => /^\d{1,3}$/.test(text))
    .map((text) => ({
      code: 'stamp-without-dot',
      ask: `“${text}” has no dot: is it a ratio, or a lot number? It stays undecided.`,
      test: 'the ratio on the engine; no mark proves a ratio, only the valve does',
    }));
}

function sameTextTwice(readings: readonly PartReading[]): PartQuestion[] {
  const kinds = keysOf(PART_MARKS);
  return kinds.flatMap((one, index) =>
    kinds.slice(index + 1).flatMap((other) =>
      textsOf(readings, one)
        .filter((text) => textsOf(readings, other).includes(text))
        .map((text) => ({
          code: 'same-text-twice',
          ask: `“${text}” stands under “${PART_MARKS[one]}” and under “${PART_MARKS[other]}”. Are there two marks, or was one entered twice?`,
          test: 'point at each mark on the part, and read the box by itself',
        })),
    ),
  );
}

function mixedLots(readings: readonly PartReading[]): PartQuestion[] {
  const texts = [...new Set(textsOf(readings, 'other-number'))];
  if (texts.length < 2) return [];
  return [
    {
      code: 'different-numbers',
      ask: `There are different numbers, ${texts.map((text) => `“${text}”`).join(' and ')}. Are they on one arm, or is the set of mixed lots?`,
      test: 'look at every arm of the set, and give each arm its own number',
    },
  ];
}

function twoSizes(apart: readonly Apart[]): PartQuestion[] {
  return apart.map(({ kind, readings, allowed }) => {
    const spread = Math.max(...readings) - Math.min(...readings);
    const text = (value: number) => formatQuantity({ value, unit: 'in' }, { places: 4 });
    const why =
      kind === 'hole-across-trunnion'
        ? 'oval, burred or cocked jaws'
        : kind === 'roller-diameter'
          ? 'a flat on the roller'
          : 'a tilted caliper, or not the same place';
    return {
      code: 'two-sizes',
      ask: `${PART_SIZES[kind]}: the readings are ${text(spread)} apart, more than ${text(allowed)}. Is it ${why}? Both are kept, and neither is averaged away.`,
      test:
        kind === 'hole-across-trunnion'
          ? 'a stud or a drill shank of the size in question, slid through by hand'
          : 'the same size again, turned a quarter turn, twice each way',
    };
  });
}

/** What does not go together among the readings of the part. */
export function partQuestions(readings: readonly PartReading[], apart: readonly Apart[]): PartQuestion[] {
  return [
    ...twoSizes(apart),
    ...ringsAndWidth(readings),
    ...stampWithoutDot(readings),
    ...sameTextTwice(readings),
    ...mixedLots(readings),
  ];
}
