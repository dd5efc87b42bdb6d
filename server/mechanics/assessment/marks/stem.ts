import { formatQuantity } from '../../../../shared/quantities/format.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { ShortAdvice } from '../../tip-mark/advice-short.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches, listed, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { ordinaryStems } from '../part/ordinary.ts';

/** While that is open nothing is told of where the mark sits on the stem. */
export const STEM_FIRST: ShortAdvice = {
  said: 'Say the diameter of the stem’s end first: whether the mark runs off its edge goes by that.',
  todo: true,
};

/** From the middle of the stem to the far side of the mark; one of which only the side was told has no figure. */
function farSide({ width, side, off }: TipMarkEvidence): number | undefined {
  return side !== 'centred' && off === undefined ? undefined : (off ?? 0) + width / 2;
}

/** So far out that it runs off the edge of the thinnest stem that is ordinary. */
export function isNearEdge(mark: TipMarkEvidence): boolean {
  const far = farSide(mark);
  const [thinnest = 0] = ordinaryStems().map(({ size }) => size / 2);
  return far !== undefined && far > thinnest + EQUAL;
}

const codeOf = (name: string): string => `stem-${name.replaceAll(/[^0-9a-z]+/g, '-')}`;

function askedOf(mark: TipMarkEvidence, { answers }: Evidence): AssessedQuestion {
  const stems = ordinaryStems();
  const far = farSide(mark) ?? 0;
  const off = stems.filter(({ size }) => far > size / 2 + EQUAL).map(({ name }) => name);
  const on = stems.filter(({ size }) => far <= size / 2 + EQUAL).map(({ name }) => name);
  return asked(
    {
      code: 'mark-near-the-edge',
      weight: 'strong',
      ask: `What is the diameter of the stem’s end of ${placeOf(mark)}, or of its lash cap?`,
      knownBy: 'diameter of the stem under the mark',
      size: `The far side of the mark is ${inches(far)} from the middle. On a stem of ${listed(off)} it runs off the edge${on.length === 0 ? '' : `, and on ${listed(on)} it stays on`}: whether anybody turns it goes by that.`,
      test: 'measure it with a caliper across the stem’s end, or across the cap, and put it into the mark.',
      byLooking: true,
      restsOn: [mark.id],
    },
    {
      about: valveSubject(mark),
      step: 'geometry',
      among: mark.id,
      answers,
      choices: [
        ...stems.map(({ name, size }) => ({
          code: codeOf(name),
          label: name,
          changes: `The edge is ${formatQuantity({ value: size / 2 / 0.0254, unit: 'in' }, { places: 3 })} from the middle.`,
        })),
        { code: 'another', label: 'Another', changes: 'It is measured, and put into the mark.' },
      ],
    },
  );
}

/** A mark near the edge of a stem that nobody measured, with the stem that was answered. */
export interface StemAsked {
  readonly mark: TipMarkEvidence;
  readonly question: AssessedQuestion;
  readonly stem?: number;
}

/** Asked of each mark near the edge while no mark of its valve says how thick the stem is. */
export function stemQuestions(marks: readonly TipMarkEvidence[], evidence: Evidence): StemAsked[] {
  if (marks.some(({ stem }) => stem !== undefined)) return [];
  return marks.filter(isNearEdge).map((mark) => {
    const question = askedOf(mark, evidence);
    const chosen = chosenOf(question);
    const stem = ordinaryStems().find(({ name }) => codeOf(name) === chosen)?.size;
    return stem === undefined
      ? { mark, question }
      : { mark, question: { ...question, weight: 'weak' }, stem };
  });
}
