import { formatQuantity } from '../../../../shared/quantities/format.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { IN } from '../../kit/si.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches, listed, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { ordinaryStems } from '../part/ordinary.ts';

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

/** One of the valve, whichever of its marks reach out so far: a stem has one diameter. */
function askedOf(
  mark: TipMarkEvidence,
  near: readonly TipMarkEvidence[],
  { answers }: Evidence,
): AssessedQuestion {
  const stems = ordinaryStems();
  const far = Math.max(...near.map((each) => farSide(each) ?? 0));
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
      restsOn: near.map(({ id }) => id),
    },
    {
      about: valveSubject(mark),
      step: 'geometry',
      answers,
      choices: [
        ...stems.map(({ name, size }) => ({
          code: codeOf(name),
          label: name,
          changes: `The edge is ${formatQuantity({ value: size / 2 / IN, unit: 'in' }, { places: 3 })} from the middle.`,
        })),
        {
          code: 'another',
          label: 'Another',
          changes: 'It is measured, and put into the mark.',
          holds: true,
        },
      ],
    },
  );
}

/** The stem under marks near its edge that nobody measured, with what was answered. */
export interface StemAsked {
  readonly question: AssessedQuestion;
  readonly stem?: number;
}

/** Asked of the valve whose marks are near the edge, while none of them says how thick the stem is. */
export function stemAsked(marks: readonly TipMarkEvidence[], evidence: Evidence): StemAsked | undefined {
  const near = marks.filter(isNearEdge);
  const [mark] = near;
  if (mark === undefined || marks.some(({ stem }) => stem !== undefined)) return undefined;
  const question = askedOf(mark, near, evidence);
  const chosen = chosenOf(question);
  const stem = ordinaryStems().find(({ name }) => codeOf(name) === chosen)?.size;
  return stem === undefined ? { question } : { question, stem };
}
