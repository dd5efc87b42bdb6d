import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { listed, subjectSaid, upperFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { HoleDetail, PartDetail } from './detail.ts';
import { type CountedReading, choice, idsOfKind, type PartDoubt } from './doubts.ts';
import { HOLE, holesOf, sizeName, threadsNamed } from './holes.ts';
import { partsInHand } from './in-hand.ts';
import { eitherSaid } from './size-said.ts';

const sizesOf = (holes: readonly HoleDetail[]): string[] => [...new Set(threadsNamed(holes).map(sizeName))];

/** The hole was made for another stud than the engine has. */
export const holeAgainstEngine =
  ({ engine: { studSize } }: Evidence) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    const sizes = sizesOf(holesOf(readings));
    if (studSize === undefined || sizes.length === 0 || sizes.includes(studSize)) return [];
    return [
      {
        code: 'hole-against-engine-stud',
        ask: `The hole was made for ${eitherSaid(sizes)}, and the engine is down with ${studSize} studs. Is this arm for that engine?`,
        knownBy: 'is the arm for studs of the engine',
        test: 'try the arm on a stud of the engine by hand, and read the stud’s thread',
        restsOn: idsOfKind(readings, HOLE),
        choices: [
          choice(
            'found',
            'No: it does not go with those studs',
            'It is another engine’s, or the studs are changed too.',
          ),
          choice(
            'not-found',
            'Yes: tried, it goes on without play',
            'The hole, or the stud on record, was read wrongly.',
          ),
        ],
      },
    ];
  };

/** Parts of one call that take different studs: a set that is mixed, or two engines. */
export function partsApart(evidence: Evidence, parts: readonly PartDetail[]): AssessedQuestion[] {
  const made = parts.map(({ about, holes }) => ({ about, sizes: sizesOf(holes) }));
  const told = made.filter(({ sizes }) => sizes.length > 0);
  const apart = told.some((one) =>
    told.some((other) => !one.sizes.some((size) => other.sizes.includes(size))),
  );
  if (!apart) return [];
  const readings = partsInHand(evidence).flatMap((part) => part.readings);
  const numbers = [
    ...new Set(readings.flatMap(({ kind, typed }) => (kind === 'other-number' ? [`“${typed.trim()}”`] : []))),
  ].sort();
  return [
    asked(
      {
        code: 'parts-take-different-studs',
        weight: 'weak',
        ask: `The holes were not made for one stud: ${told.map(({ about, sizes }) => `${eitherSaid(sizes)} for ${subjectSaid(about)}`).join('; ')}. Are they of one set?`,
        knownBy: 'were the holes made for one stud',
        ...(numbers.length > 1 ? { size: `They carry different numbers: ${listed(numbers)}.` } : {}),
        test: upperFirst('look at every arm of the set, and slide one stud through each hole by hand'),
        byLooking: true,
        restsOn: idsOfKind(readings, HOLE),
      },
      {
        about: { of: 'build' },
        step: 'identify',
        answers: evidence.answers,
        choices: [
          choice(
            'one-set',
            'Looked: they are one set',
            'One of the holes was read wrongly, and is read again.',
          ),
          choice('mixed', 'They are not of one set', 'Each part is told by itself.'),
        ],
      },
    ),
  ];
}
