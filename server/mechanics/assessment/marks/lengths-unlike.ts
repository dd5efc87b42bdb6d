import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
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
  open: 'Like valves of one side ask for unlike lengths: say first what differs, and order none until then.',
  length:
    'A length was set or read wrong, as was answered: put it right, or ink it again. Order none until then.',
  neither:
    'Compare stud and tip heights of these valves with a straightedge, nothing turned. Order none until then.',
} as const;

interface Stays {
  readonly each: MarkedValve;
  readonly at: number;
}

/** The valves of a side whose marks let a length stay, each told over the ends. */
function stays(each: MarkedValve): Stays[] {
  const { length, marks } = each.valve;
  if (length?.how !== 'stays' || length.at === undefined || marks.length === 0) return [];
  return [{ each, at: length.over === undefined ? length.at : toldOver(length.at, length.over, 'ends') }];
}

const told = ({ each }: Stays): string => {
  const { length } = each.valve;
  const at = length?.how === 'stays' ? length.at : undefined;
  return `${placeOf(each.valve)} for ${inches(at ?? 0)}`;
};

/** Told in one way, or by both ways said: a gauge and the ends are no two lengths. */
const isComparable = (a: Stays, b: Stays): boolean => {
  const over = ({ each: { valve } }: Stays) =>
    valve.length?.how === 'stays' ? valve.length.over : undefined;
  return (over(a) === undefined) === (over(b) === undefined);
};

function unlike(own: readonly Stays[]): readonly Stays[] {
  const sorted = own.toSorted((a, b) => a.at - b.at);
  const [shortest, longest] = [sorted[0], sorted.at(-1)];
  if (shortest === undefined || longest === undefined) return [];
  const apart = isComparable(shortest, longest) && longest.at - shortest.at > ALIKE + EQUAL;
  return apart ? [shortest, longest] : [];
}

interface Compared {
  readonly valves: readonly MarkedValve[];
  readonly questions: readonly AssessedQuestion[];
}

/** Marks of like valves that let lengths stay which are no one length: asked before two lengths are ordered. */
export function lengthsUnlike(valves: readonly MarkedValve[], evidence: Evidence): Compared {
  const found = SIDES.flatMap((side) => {
    const own = valves.filter(({ valve }) => sideOfValve(valve.valve) === side).flatMap(stays);
    const two = unlike(own);
    if (two.length === 0) return [];
    const ids = two.map(({ each }) => each.valve.judgedId).toSorted();
    const question = asked(
      {
        code: 'lengths-unlike',
        weight: 'strong',
        ask: `By its mark ${listed(two.map(told))}: like valves mostly take one length. What differs?`,
        knownBy: 'lengths of like valves',
        size: `They are ${inches((two[1]?.at ?? 0) - (two[0]?.at ?? 0))} apart.`,
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
      return own.map(({ each }): [MarkedValve, string] => [each, said]);
    }),
  );
  return {
    valves: valves.map((each) => {
      const said = instead.get(each);
      if (said === undefined) return each;
      const { advice: _, ...valve } = each.valve;
      return { ...each, valve: { ...valve, inShort: { said, todo: true }, length: { how: 'open' } } };
    }),
    questions: found.map(({ question }) =>
      chosenOf(question) === undefined ? question : { ...question, weight: 'weak' },
    ),
  };
}
