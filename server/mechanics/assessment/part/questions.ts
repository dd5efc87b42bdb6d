import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { formatQuantity } from '../../../../shared/quantities/format.ts';
import { isPartSize, PART_MARKS, PART_SIZES } from '../../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../../shared/schemas/words.ts';
import { standTogether } from '../../identify/likelihood.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import { defaultLimit } from '../../kit/limits.ts';
import { nominalSaid } from '../common/said.ts';
import { ratiosIn } from '../common/stamp-read.ts';
import { numberChoices, numberChosen, TWO_NUMBERS, twoNumbersAsk } from '../common/two-numbers.ts';
import { AS_READ, amongOf, type CountedReading, choice, type PartDoubt, sized, without } from './doubts.ts';
import { asReadSize } from './read-size.ts';
import { eitherSaid } from './size-said.ts';
import { sizesNear } from './sizes-near.ts';

const of = (readings: readonly CountedReading[], kind: string) =>
  readings.filter((each) => each.kind === kind);
const idsOf = (readings: readonly CountedReading[]): string[] => readings.map(({ id }) => id);

const BOTH_LOOKED = { ...AS_READ, label: 'Both looked at again: they are as they were read' };

export function ringsAndWidth(readings: readonly CountedReading[]): PartDoubt[] {
  const rings = of(readings, 'rings');
  return sized(readings, 'width-across-trunnion').flatMap((width): PartDoubt[] => {
    const wide = width.size >= defaultLimit('wide-assembly-from');
    const narrow = width.size <= defaultLimit('narrow-assembly-up-to');
    const against = rings.filter(({ word }) => (wide && word === 'none') || (narrow && word === 'visible'));
    if (against.length === 0) return [];
    return [
      {
        code: 'rings-against-width',
        ask: `Rings and width do not go together: ${asEntered(width.readAs)} across is ${wide ? 'a wide assembly, and those show rings' : 'a narrow assembly, and those have bearings flush with the body'}. Which of the two was misread?`,
        test: 'a photograph of the trunnion’s end, and the width again over both ends',
        restsOn: idsOf([width, ...against]),
        choices: [
          choice('rings', 'The rings', 'They do not count; they are looked at again.'),
          choice('width', 'The width', 'It does not count; it is read again.'),
          BOTH_LOOKED,
        ],
        effect: (now, chosen) => {
          if (chosen === 'rings') return without(now, idsOf(against));
          return chosen === 'width' ? without(now, [width.id]) : now;
        },
      },
    ];
  });
}

const NO_MARK_PROVES = 'It is kept as told; no mark proves a ratio, only a valve does.';

const stampWithoutDot = (readings: readonly CountedReading[]): PartDoubt[] =>
  of(readings, 'ratio-stamp')
    .filter(({ typed }) => /^\d{1,3}$/.test(typed.trim()))
    .map(({ id, typed }) => ({
      code: 'stamp-without-dot',
      ask: `“${typed.trim()}” has no dot: is it a ratio, or a lot number? It stays undecided.`,
      test: 'the ratio on the engine; no mark proves a ratio, only the valve does',
      restsOn: [id],
      choices: [
        choice('ratio', 'Meant as a ratio', NO_MARK_PROVES),
        choice('lot', 'A lot or another number', NO_MARK_PROVES),
        choice('not-known', 'Nobody can tell', 'It stays undecided.'),
      ],
    }));

/** Of an arm of the build it is asked of the arm. */
export const stampOfTwo = (readings: readonly CountedReading[]): PartDoubt[] =>
  of(readings, 'ratio-stamp').flatMap(({ id, typed }): PartDoubt[] => {
    const numbers = ratiosIn(typed);
    if (numbers.length < 2) return [];
    return [
      {
        code: TWO_NUMBERS,
        ask: twoNumbersAsk(typed, numbers),
        knownBy: 'which number of the stamp is the ratio',
        test: 'look where each number stands on the part, and read the box by itself',
        restsOn: [id],
        choices: numberChoices(numbers),
        effect: (now, chosen) => {
          const one = numberChosen(numbers, chosen);
          if (one === undefined) return now;
          // Said to be the ratio, it counts with its point, and nobody is asked whether it is one.
          const typed = nominalSaid(one.ratio);
          return now.map((each) =>
            each.id === id ? { ...each, typed, countsAs: `counts as ${typed}` } : each,
          );
        },
      },
    ];
  });

const MARKS_KEPT = 'Both entries stay as they were typed.';

function sameTextTwice(readings: readonly CountedReading[]): PartDoubt[] {
  const kinds = keysOf(PART_MARKS);
  return kinds.flatMap((one, index) =>
    kinds.slice(index + 1).flatMap((other) =>
      of(readings, one).flatMap((first): PartDoubt[] => {
        const twin = of(readings, other).find(({ typed }) => typed.trim() === first.typed.trim());
        if (twin === undefined) return [];
        return [
          {
            code: 'same-text-twice',
            ask: `“${first.typed.trim()}” stands under “${PART_MARKS[one]}” and under “${PART_MARKS[other]}”. Are there two marks, or was one entered twice?`,
            test: 'point at each mark on the part, and read the box by itself',
            restsOn: idsOf([first, twin]),
            choices: [
              choice('two-marks', 'There are two marks', MARKS_KEPT),
              choice('entered-twice', 'One was entered twice', 'The wrong one is struck out by a person.'),
            ],
          },
        ];
      }),
    ),
  );
}

function mixedLots(readings: readonly CountedReading[]): PartDoubt[] {
  const marks = of(readings, 'other-number');
  const texts = [...new Set(marks.map(({ typed }) => typed.trim()))].sort();
  if (texts.length < 2) return [];
  return [
    {
      code: 'different-numbers',
      ask: `There are different numbers, ${texts.map((text) => `“${text}”`).join(' and ')}. Are they on one arm, or is the set of mixed lots?`,
      test: 'look at every arm of the set, and give each arm its own number',
      restsOn: idsOf(marks),
      choices: [
        choice('one-arm', 'All on this arm', MARKS_KEPT),
        choice('mixed', 'The set is mixed', 'Each arm is added as a part of its own, with its own number.'),
      ],
    },
  ];
}

/** Marks that do not go together: they change no chance, and no entry is changed. */
export const markDoubts = (readings: readonly CountedReading[]): PartDoubt[] =>
  [stampWithoutDot, sameTextTwice, mixedLots].flatMap((doubt) => doubt(readings));

const WHY: Readonly<Record<string, string>> = {
  'hole-across-trunnion': 'oval, burred or cocked jaws',
  'roller-diameter': 'a flat on the roller',
};

const text = (inches: number) =>
  formatQuantity({ value: Number(inches.toPrecision(12)), unit: 'in' }, { places: 4 });

/** Readings of one size that are further apart than reading alone explains. */
export function twoSizes(readings: readonly CountedReading[]): PartDoubt[] {
  return keysOf(PART_SIZES).flatMap((kind): PartDoubt[] => {
    const own = sized(readings, kind).toSorted((a, b) => a.size - b.size);
    const [least, most] = [own[0], own.at(-1)];
    if (!isPartSize(kind) || least === undefined || most === undefined) return [];
    const model = IDENTIFICATION_MODEL.sizes[kind];
    if (standTogether(model, kind, own.map(asReadSize))) return [];
    const apartFrom = (one: typeof least) =>
      idsOf(own.filter((other) => !standTogether(model, kind, [one, other].map(asReadSize))));
    const away = (at: typeof least) => asReadSize(most).value - asReadSize(at).value;
    return [
      {
        code: 'two-sizes',
        ask: `${PART_SIZES[kind]}: the readings are ${text(away(least))} apart, more than ${text(model.apart)}. Is it ${WHY[kind] ?? 'a tilted caliper, or not the same place'}? Both are kept, and neither is averaged away.`,
        test:
          kind === 'hole-across-trunnion'
            ? `slide a ${eitherSaid(sizesNear([least.size, most.size]))} stud or drill shank through it by hand: the one that goes without play is its size`
            : 'read the same size again, turned a quarter turn, twice each way',
        restsOn: idsOf(own).sort(),
        among: amongOf(idsOf(own)),
        choices: [
          choice(
            'smallest',
            `${asEntered(least.readAs)} is right`,
            'What is too far from it does not count.',
          ),
          choice('largest', `${asEntered(most.readAs)} is right`, 'What is too far from it does not count.'),
          choice('found', 'Neither is trusted', 'None of them counts; it is read again.'),
          { ...AS_READ, label: 'All read again: it is uneven', changes: 'Each counts for itself.' },
        ],
        effect: (now, chosen) => {
          if (chosen === 'smallest') return without(now, apartFrom(least));
          if (chosen === 'largest') return without(now, apartFrom(most));
          return chosen === 'found' ? without(now, idsOf(own)) : now;
        },
      },
    ];
  });
}
