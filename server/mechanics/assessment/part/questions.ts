import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { PART_MARKS } from '../../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../../shared/schemas/words.ts';
import { defaultLimit } from '../../kit/limits.ts';
import { nominalSaid } from '../common/said.ts';
import { ratiosIn } from '../common/stamp-read.ts';
import { numberChoices, numberChosen, TWO_NUMBERS, twoNumbersAsk } from '../common/two-numbers.ts';
import { AS_READ, type CountedReading, choice, type PartDoubt, sized, without } from './doubts.ts';

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
