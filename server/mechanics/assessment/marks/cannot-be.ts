import { formatQuantity } from '../../../../shared/quantities/format.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { IN, MM } from '../../kit/si.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { keyOfFigures } from '../common/key-of-figures.ts';
import { inches, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { ordinaryStems } from '../part/ordinary.ts';

/*
 * A figure that no mark has on the stem it was made on: wider than the stem, or with its middle past the edge, where
 * nothing was touched. Common practice, no published source.
 */

/** What may be answered: the figure is entered again, or stands, and then it is the edge that is looked at. */
const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'found',
    label: 'It was entered wrong',
    changes: 'The mark is entered again with the figure that was read; what it raised goes with it.',
  },
  {
    code: 'not-found',
    label: 'Read again: it is so',
    changes: 'It counts as it was read, and so does what it says of the edge.',
  },
];

interface Figure {
  readonly value: number;
  readonly most: number;
  readonly said: (figure: string) => string;
}

/** The first figure of a mark that can't be on a stem this thick. */
function tooLarge({ width, off = 0 }: TipMarkEvidence, stem: number): Figure | undefined {
  if (width > stem + EQUAL) return { value: width, most: stem, said: (figure) => `${figure} wide` };
  return off > stem / 2 + EQUAL
    ? { value: off, most: stem / 2, said: (figure) => `${figure} from the middle` }
    : undefined;
}

/** The dot one place off, or millimetres typed as inches: those that make it a figure that can be. */
function meant({ value, most }: Figure): string[] {
  const typed = value / IN;
  // Whole thousandths are typed as inches; anything else was typed in millimetres.
  const isInches = Math.abs(typed * 1000 - Math.round(typed * 1000)) < 1e-6;
  return [
    ...(value / 10 <= most ? [inches(value / 10)] : []),
    ...(isInches && typed * MM <= most ? [formatQuantity({ value: typed, unit: 'mm' }, { places: 2 })] : []),
  ];
}

/** Asked of each mark that has such a figure: a strong doubt beside what the mark raises. */
export function cannotBe(
  marks: readonly TipMarkEvidence[],
  stem: number | undefined,
  { answers }: Evidence,
): AssessedQuestion[] {
  const thickest = Math.max(...ordinaryStems().map(({ size }) => size));
  return marks.flatMap((mark) => {
    const of = mark.stem ?? stem;
    const figure = tooLarge(mark, of ?? thickest);
    if (figure === undefined) return [];
    const slips = meant(figure);
    return [
      asked(
        {
          code: 'mark-cannot-be',
          weight: 'strong',
          ask: `Is the mark of ${placeOf(mark)} really ${figure.said(inches(figure.value))}?${slips.length === 0 ? '' : ` Was ${slips.join(' or ')} meant?`}`,
          knownBy: 'mark that no stem has',
          size: `The stem ends ${inches((of ?? thickest) / 2)} from the middle${of === undefined ? ', the thickest that is ordinary' : ''}: nothing is touched past it.`,
          test: 'read it once more off the stem’s end, with its unit and where the dot stands; nobody turns it for that.',
          byLooking: true,
          restsOn: [mark.id],
        },
        {
          about: valveSubject(mark),
          step: 'geometry',
          among: `${mark.id}:${keyOfFigures('figure', figure.value)}`,
          answers,
          choices: CHOICES,
        },
      ),
    ];
  });
}
