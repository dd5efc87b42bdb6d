import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { toSay, toTurn } from '../../tip-mark/advice-short.ts';
import { toldOver } from '../../tip-mark/length-said.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches, listed, placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { MarkedValve } from './marked-valve.ts';

/** Pushrods of one side are one length within half a step of stock. */
const ALIKE = allowance('lengths-alike');

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'heights',
    label: 'Stud or tip heights differ',
    changes: 'Each valve keeps the length of its own mark, and is ordered for by itself.',
  },
  {
    code: 'length',
    label: 'A length was set or read wrong',
    changes: 'It is put right where it was entered, or inked again; none is ordered before.',
  },
  {
    code: 'neither',
    label: 'Nobody can say',
    changes: 'Stud and tip heights of these valves are compared; none is ordered before.',
  },
];

const SAID = {
  open: toSay(
    'Like valves of one side ask for unlike lengths: say first what differs, and order none until then.',
  ),
  length: toTurn(
    'A length was set or read wrong, as was answered: put it right, or ink it again. Order none until then.',
  ),
  neither: toSay(
    'Compare stud and tip heights of these valves with a straightedge, nothing turned. Order none until then.',
  ),
} as const;

interface Stays {
  readonly each: MarkedValve;
  /** As it was told. */
  readonly told: number;
  /** Over the ends, where it was said how it was told. */
  readonly at: number;
  readonly isOverKnown: boolean;
}

/** The valves of a side whose marks let a length stay, each told over the ends. */
function stays(each: MarkedValve): Stays[] {
  const { length } = each.valve;
  if (length?.how !== 'stays' || length.at === undefined) return [];
  const { at, over } = length;
  return [
    {
      each,
      told: at,
      at: over === undefined ? at : toldOver(at, over, 'ends'),
      isOverKnown: over !== undefined,
    },
  ];
}

const staysSaid = ({ each, told }: Stays): string => `${placeOf(each.valve)} for ${inches(told)}`;

/** Two that are further apart than lengths of one side are, and how far. */
interface Unlike {
  readonly two: readonly [Stays, Stays];
  readonly apart: number;
}

function furthest(own: readonly Stays[]): Unlike[] {
  const sorted = own.toSorted((a, b) => a.at - b.at);
  const [shortest, longest] = [sorted[0], sorted.at(-1)];
  if (shortest === undefined || longest === undefined) return [];
  const apart = longest.at - shortest.at;
  return apart > ALIKE + EQUAL ? [{ two: [shortest, longest], apart }] : [];
}

/**
 * Of those of which it is known over what they were taken, and of those of which it is not: a gauge and the ends are no two
 * lengths, so that one of which nobody said it is set against its like alone. The furthest of either are asked of.
 */
const unlikeOf = (own: readonly Stays[]): Unlike | undefined =>
  [true, false]
    .flatMap((known) => furthest(own.filter(({ isOverKnown }) => isOverKnown === known)))
    .toSorted((a, b) => b.apart - a.apart)[0];

type Instead = NonNullable<MarkedValve['valve']['first']>;

interface Compared {
  readonly valves: readonly MarkedValve[];
  readonly questions: readonly AssessedQuestion[];
}

/** Marks of like valves that let lengths stay which are no one length: asked before two lengths are ordered. */
export function lengthsUnlike(valves: readonly MarkedValve[], evidence: Evidence): Compared {
  const found = SIDES.flatMap((side) => {
    const own = valves.filter(({ valve }) => sideOfValve(valve.valve) === side).flatMap(stays);
    const unlike = unlikeOf(own);
    if (unlike === undefined) return [];
    const { two, apart } = unlike;
    const ids = two.map(({ each }) => each.valve.judgedId).toSorted();
    const question = asked(
      {
        code: 'lengths-unlike',
        weight: 'strong',
        ask: `By its mark ${listed(two.map(staysSaid))}: like valves mostly take one length. What differs?`,
        knownBy: 'lengths of like valves',
        size: `They are ${inches(apart)} apart.`,
        test: 'lay a straightedge over studs and valve tips of the two, and measure both pushrods again.',
        byLooking: true,
        restsOn: ids,
      },
      {
        about: { of: 'side', valve: side },
        step: 'geometry',
        among: ids.join('-'),
        answers: evidence.answers,
        choices: CHOICES,
      },
    );
    return [{ own, question }];
  });
  const instead = new Map(
    found.flatMap(({ own, question }) => {
      const chosen = chosenOf(question);
      if (chosen === 'heights') return [];
      const said = chosen === 'length' || chosen === 'neither' ? SAID[chosen] : SAID.open;
      const first = { ...said, questionId: question.id };
      return own.map(({ each }): [MarkedValve, Instead] => [each, first]);
    }),
  );
  return {
    valves: valves.map((each) => {
      const first = instead.get(each);
      if (first === undefined) return each;
      const { advice: _, ...valve } = each.valve;
      return { ...each, valve: { ...valve, first, length: { how: 'open', because: 'unlike' } } };
    }),
    questions: found.map(({ question }) => question),
  };
}
