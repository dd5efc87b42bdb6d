import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { IN } from '../../kit/si.ts';
import { lashSlips, unlikelyLash } from '../../lash/lash-slips.ts';
import type { AssessedQuestion } from '../assessment.ts';
import type { Evidence, LashEvidence } from '../evidence.ts';
import { asked, inDoubt } from './asked.ts';
import { allKept } from './kept.ts';
import { asItIs, onceEach } from './once.ts';
import { inches, placeOf, valveSubject } from './said.ts';
import { inOrder } from './same-day.ts';

/** The question whether a lash is really what was entered. */
export const LASH_UNLIKELY = 'lash-unlikely';

const CHOICES: AssessedQuestion['answers'] = [
  { code: 'found', label: 'No, it was entered wrong', changes: 'The lash is entered again, or put right.' },
  {
    code: 'not-found',
    label: 'Yes, read again: it is so',
    changes: 'The question is settled, and it counts.',
  },
];

/** One feeler: common practice, no published source. */
const FEELER = 0.001 * IN;

/** So many others have to agree before one is set against them. */
const OTHERS = 3;
const middle = (values: readonly number[]): number | undefined =>
  values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) / 2)];

/** The newest figure of each other valve of its side, at the same heat. */
function othersOf({ lash }: Evidence, line: LashEvidence): number[] {
  const newest = new Map<string, number>();
  const own = lash
    .filter(({ standing, engine }) => standing && engine === line.engine)
    .filter((each) => sideOfValve(each.valve) === sideOfValve(line.valve) && placeOf(each) !== placeOf(line));
  for (const each of inOrder(own))
    if (each.gap.value !== undefined) newest.set(placeOf(each), each.gap.value);
  return [...newest.values()];
}

/** What the card asks for at the heat of the line: its own figure, or by the last sum of the metals that starts from it. */
function cardOf(evidence: Evidence, { valve, engine }: LashEvidence): number | undefined {
  const { lashAt } = evidence.card;
  const card = evidence.card[sideOfValve(valve)].lash;
  if (card === undefined || lashAt === undefined || engine === 'not-said' || engine === lashAt) return card;
  return allKept(evidence, 'heat').findLast(({ set }) => Math.abs(set[lashAt] - card) <= FEELER + EQUAL)?.set[
    engine
  ];
}

/** What it should be about: the card’s for its heat, else the middle of its side; a gap at another heat is another gap. */
function expectedOf(evidence: Evidence, line: LashEvidence): number | undefined {
  const card = cardOf(evidence, line);
  if (card !== undefined) return card;
  const others = othersOf(evidence, line);
  return others.length < OTHERS ? undefined : middle(others);
}

const typedIn = ({ readAs }: LashEvidence): 'in' | 'mm' => (/\bmm$/.test(readAs) ? 'mm' : 'in');

const WHY = {
  wide: 'So wide a gap is hardly ever set, and a nut that backed off so far is heard.',
  tight: 'No feeler is so thin.',
} as const;

/** A lash that hardly can be, or that a slip of the pen would bring to the others: asked, and not used until then. */
export const lashDoubt = onceEach(
  asItIs,
  (evidence: Evidence, line: LashEvidence): AssessedQuestion | undefined => {
    const { value } = line.gap;
    if (value === undefined || value === 0) return undefined;
    const unlikely = unlikelyLash(value);
    const expected = expectedOf(evidence, line);
    const slips = lashSlips(value, typedIn(line), expected);
    if (unlikely === undefined && slips.length === 0) return undefined;
    const why =
      unlikely === undefined
        ? `The card or the other valves of its side have ${inches(expected ?? 0)}.`
        : WHY[unlikely];
    return asked(
      {
        code: LASH_UNLIKELY,
        weight: 'strong',
        ask: `Is the lash of ${placeOf(line)} really ${inches(value)}?`,
        knownBy: LASH_UNLIKELY,
        size: [
          why,
          ...(slips.length === 0 ? [] : [`Was ${slips.map(({ said }) => said).join(', or ')} meant?`]),
        ].join(' '),
        test: 'look at what was written down, and whether the feelers are in inches or millimetres.',
        byLooking: true,
        restsOn: [line.id],
      },
      {
        about: valveSubject(line),
        // Kept and put right as a reading of the sheet; the log asks it as well.
        step: 'sheet',
        among: line.id,
        answers: evidence.answers,
        choices: CHOICES,
      },
    );
  },
);

/** Neither told as the lash of the valve nor worked with. */
export function isLashDoubted(evidence: Evidence, line: LashEvidence): boolean {
  const doubt = lashDoubt(evidence, line);
  return doubt !== undefined && inDoubt(doubt);
}
