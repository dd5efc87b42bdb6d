import { defined } from '../../../../shared/defined.ts';
import { allowance } from '../../kit/allowances.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches, listed, placeOf, ratioSaid, valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { LASH_KNOWN_IN } from './conditions.ts';
import { groupKey } from './group-key.ts';
import type { SetUpKnown } from './known.ts';
import { meanOf } from './passes.ts';

/** The ratio came out otherwise in another set-up of the same arm on the same valve, read the same way. */
export interface Differs {
  readonly question: AssessedQuestion;
  /** `aside`: another one holds. Left out, nobody knows yet which does. */
  readonly now?: 'holds' | 'aside';
}

/** A figure was made of it, and nothing is lacking that says what may be wrong with it. */
const isClean = ({ result, lacks }: SetUpKnown): boolean =>
  result !== undefined && lacks.every((lack) => lack === LASH_KNOWN_IN);

/** Set-ups of one arm on one valve, read in one way. */
const wayOf = ({ read: { setUp } }: SetUpKnown): string =>
  [groupKey(setUp), setUp.spring, setUp.lash, setUp.lashSetting ?? ''].join('|');

const lobeOf = ({ read: { lobe } }: SetUpKnown): number | undefined =>
  lobe.source === 'indicator' && lobe.from === undefined ? lobe.value : undefined;

/** Two set-ups come to the same: lifts of one valve by as much as makes a valve odd, or by what their tools allow. */
function areAlike(a: SetUpKnown, b: SetUpKnown): boolean {
  const [one, two] = [a.read, b.read];
  const within = (tools: number) => Math.max(allowance('odd-beyond'), tools);
  const lifts = Math.abs(meanOf(one.valve.used) - meanOf(two.valve.used));
  if (lifts > within(one.setUp.errorLimit + two.setUp.errorLimit)) return false;
  const [lobe, other] = [lobeOf(a), lobeOf(b)];
  if (lobe === undefined || other === undefined) return true;
  return Math.abs(lobe - other) <= within(one.setUp.lobeErrorLimit + two.setUp.lobeErrorLimit);
}

/** Those that most of them come to: two at the least, and more than come to anything else. */
function mostOf(own: readonly SetUpKnown[]): readonly SetUpKnown[] {
  const alike = own.map((each) => own.filter((other) => areAlike(each, other)));
  const [most = []] = alike.toSorted((a, b) => b.length - a.length);
  const others = alike.filter(
    (each) => each.length === most.length && !most.every((one) => each.includes(one)),
  );
  return most.length < 2 || others.length > 0 ? [] : most;
}

const numbersOf = (own: readonly SetUpKnown[]): string[] => own.map(({ read }) => String(read.setUp.number));

/** `set-up 2`, `set-ups 1 and 3` */
const setUpsSaid = (own: readonly SetUpKnown[]): string =>
  `set-up${own.length > 1 ? 's' : ''} ${listed(numbersOf(own))}`;

const choicesOf = (own: readonly SetUpKnown[]): AnswerChoice[] => [
  ...own.map(({ read: { setUp }, result }) => ({
    code: `set-up-${setUp.number}`,
    label: `Set-up ${setUp.number} holds, ${ratioSaid(result?.ratio ?? 0)}`,
    changes: 'It is told and calculated with; the other stays on record and is put aside.',
  })),
  {
    code: 'other-arm',
    label: 'Another arm was on in one of them',
    changes: 'That arm is named in its set-up: each is then told by itself.',
  },
  {
    code: 'both',
    label: 'Now the one comes up, now the other',
    changes:
      'Both stay, and no word stands: base, lifter or lash moves between them, and is looked at first.',
  },
];

function questionOf(
  evidence: Evidence,
  own: readonly SetUpKnown[],
  most: readonly SetUpKnown[],
): AssessedQuestion {
  const [first] = own;
  const { setUp } = first?.read ?? {};
  const place = setUp === undefined ? '' : placeOf(setUp);
  const name = evidence.arms.find(({ id }) => id === setUp?.armId)?.name;
  const cameOut = own.map(
    ({ read, result }) => `${ratioSaid(result?.ratio ?? 0)} in set-up ${read.setUp.number}`,
  );
  const lifts = own.map(({ read }) => inches(meanOf(read.valve.used)));
  const lobes = own.flatMap((each) => lobeOf(each) ?? []);
  const over = new Set(lobes).size > 1 ? ` over lobes of ${listed(lobes.map(inches))}` : '';
  return asked(
    {
      code: 'set-ups-differ',
      weight: most.length > 0 ? 'weak' : 'strong',
      ask: `${place}${name === undefined ? '' : ` with ${name}`} came out ${listed(cameOut)}. Which one holds?`,
      knownBy: 'which of the set-ups holds',
      size: `Valve lifts of ${listed(lifts)}${over}, read the same way${name === undefined ? ', and no arm is named' : ''}.`,
      test: 'Set it up once more the same way, and read three passes: what they agree with holds.',
      restsOn: own.flatMap(({ read }) => read.valve.used.map(({ id }) => id)),
    },
    {
      about: setUp === undefined ? { of: 'build' } : valveSubject(setUp),
      step: 'ratio',
      among: [...(setUp?.armId === undefined ? [] : [setUp.armId]), setUp?.spring, ...numbersOf(own)].join(
        '-',
      ),
      answers: evidence.answers,
      choices: choicesOf(own),
    },
  );
}

/** What each of them lacks until it is known which holds. */
function openLack(
  question: AssessedQuestion,
  own: readonly SetUpKnown[],
  chosen: string | undefined,
): string {
  if (chosen === 'other-arm') return `which arm was on in ${setUpsSaid(own)}, each put right in its set-up`;
  if (chosen === 'both')
    return `base, lifter and lash looked at, and then three passes more: ${setUpsSaid(own)} do not come to the same`;
  return `the answer to “${question.ask}”`;
}

function withOne(evidence: Evidence, own: readonly SetUpKnown[]): SetUpKnown[] {
  const most = mostOf(own);
  if (most.length === own.length || own.length < 2) return [...own];
  const raised = questionOf(evidence, own, most);
  const chosen = chosenOf(raised);
  const named = own.filter(({ read }) => chosen === `set-up-${read.setUp.number}`);
  const [only] = named;
  const holding =
    only === undefined ? (chosen === undefined ? most : []) : own.filter((each) => areAlike(each, only));
  // Answered, nobody waits for it: what is left to do is said with the reading.
  const question: AssessedQuestion = chosen === undefined ? raised : { ...raised, weight: 'weak' };
  return own.map((each): SetUpKnown => {
    if (holding.includes(each)) return { ...each, differs: { question, now: 'holds' } };
    const lack =
      holding.length > 0
        ? `a reading that comes to the same as ${setUpsSaid(holding)}`
        : openLack(question, own, chosen);
    const now = holding.length > 0 ? ('aside' as const) : undefined;
    return { ...each, lacks: [...each.lacks, lack], differs: { question, ...defined({ now }) } };
  });
}

/**
 * The set-ups with what is asked where the same arm on the same valve came out otherwise the second time. No later one
 * replaces an earlier one by being later: a third, or a person, says which holds.
 */
export function withDiffering(evidence: Evidence, known: readonly SetUpKnown[]): SetUpKnown[] {
  const ways = [...new Set(known.map(wayOf))];
  const told = ways.flatMap((way) =>
    withOne(
      evidence,
      known.filter((each) => isClean(each) && wayOf(each) === way),
    ),
  );
  return known.map((each) => told.find(({ read }) => read === each.read) ?? each);
}

/** Nobody knows yet which of them holds. */
export const isUndecided = ({ differs }: SetUpKnown): boolean =>
  differs !== undefined && differs.now === undefined;

/** What is asked of them, each once. */
export const differingAsked = (known: readonly SetUpKnown[]): AssessedQuestion[] => [
  ...new Map(
    known.flatMap(({ differs }) =>
      differs === undefined ? [] : [[differs.question.id, differs.question] as const],
    ),
  ).values(),
];
