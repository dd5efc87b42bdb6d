import { defined } from '../../../../../shared/defined.ts';
import { allowance } from '../../../kit/allowances.ts';
import { isDial } from '../../../kit/lift-tools.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { chosenOf } from '../../common/chosen.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import { groupKey } from '../read/group-key.ts';
import { answerLack, eachOnce, isLashKnownIn, type RatioLack } from '../read/lack.ts';
import { meanOf } from '../read/passes.ts';
import { beforeSaid, chosenBefore, isBorneOut } from './chosen-before.ts';
import type { SetUpKnown } from './known.ts';
import { lobesAlike, openLack, setUpsSaid, whichHolds } from './which-holds.ts';

/** The ratio came out otherwise in another set-up of the same arm on the same valve, read the same way. */
export interface Differs {
  readonly question: AssessedQuestion;
  /** What was answered while fewer of them were there: it stays with its answer. */
  readonly before: readonly AssessedQuestion[];
  /** `aside`: another one holds. Left out, nobody knows yet which does. */
  readonly now?: 'holds' | 'aside';
}

/** A figure was made of it, and nothing is lacking that says what may be wrong with it. */
const isClean = ({ result, lacks }: SetUpKnown): boolean =>
  result !== undefined && lacks.every(isLashKnownIn);

/** Set-ups of one arm on one valve, read in one way. */
const wayOf = ({ read: { setUp } }: SetUpKnown): string =>
  [groupKey(setUp), setUp.spring, setUp.lash, setUp.lashSetting ?? ''].join('|');

/** Two set-ups come to the same: lifts of one valve by as much as makes a valve odd, or by what their tools allow. */
function areAlike(a: SetUpKnown, b: SetUpKnown): boolean {
  const [one, two] = [a.read, b.read];
  const tools = one.setUp.errorLimit + two.setUp.errorLimit;
  const lifts = Math.abs(meanOf(one.valve.used) - meanOf(two.valve.used));
  return lifts <= Math.max(allowance('odd-beyond'), tools) && lobesAlike(a, b);
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

/** The same arm on other valves, read on the same spring with nothing in doubt. */
const onOtherValves = ([first]: readonly SetUpKnown[], known: readonly SetUpKnown[]): SetUpKnown[] =>
  known.filter(
    (each) =>
      first?.read.setUp.armId !== undefined &&
      each.read.setUp.armId === first.read.setUp.armId &&
      each.read.setUp.spring === first.read.setUp.spring &&
      placeOf(each.read.setUp) !== placeOf(first.read.setUp) &&
      each.result !== undefined &&
      each.lacks.length === 0,
  );

function withOne(evidence: Evidence, own: readonly SetUpKnown[], known: readonly SetUpKnown[]): SetUpKnown[] {
  const most = mostOf(own);
  if (most.length === own.length || own.length < 2) return [...own];
  const before = chosenBefore(evidence, own);
  const put = whichHolds(evidence, own, { most, elsewhere: onOtherValves(own, known) });
  const chosen = chosenOf(put);
  // What a person said of fewer stands until a person says otherwise: a later reading alone does not turn it round.
  const decided = before.length === 0 || isBorneOut(before, most) ? most : [];
  const raised: AssessedQuestion = {
    ...put,
    weight: decided.length > 0 ? 'weak' : 'strong',
    ...defined({ size: put.size && `${put.size}${beforeSaid(before)}` }),
  };
  const named = own.filter(({ read }) => chosen === `set-up-${read.setUp.number}`);
  const [only] = named;
  const holding =
    only === undefined ? (chosen === undefined ? decided : []) : own.filter((each) => areAlike(each, only));
  // What was said of fewer, and what most of them come to since, is one: it is not asked once more.
  const [borneOut] = before.filter(({ question }) => chosenOf(question)?.startsWith('set-up-'));
  // Answered, nobody waits for it: what is left to do is said with the reading.
  const question: AssessedQuestion =
    chosen !== undefined
      ? { ...raised, weight: 'weak' }
      : decided.length > 0 && borneOut !== undefined
        ? borneOut.question
        : raised;
  const told = { question, before: before.map((each) => each.question) };
  return own.map((each): SetUpKnown => {
    if (holding.includes(each)) return { ...each, differs: { ...told, now: 'holds' } };
    const lack: RatioLack =
      holding.length > 0 ? { code: 'same-as', setUps: setUpsSaid(holding) } : openLack(question, own, chosen);
    const now = holding.length > 0 ? ('aside' as const) : undefined;
    return { ...each, lacks: [...each.lacks, lack], differs: { ...told, ...defined({ now }) } };
  });
}

/** As many passes as make a reading (common practice, no published source). */
const PASSES = 3;

/**
 * One pass beside a set-up of three that it does not come to: it is begun, and its other passes are read before anybody
 * asks which of the two holds.
 */
const isBegun = (each: SetUpKnown, known: readonly SetUpKnown[]): boolean =>
  each.read.valve.used.length === 1 &&
  isClean(each) &&
  known.some(
    (other) =>
      other !== each &&
      other.read.valve.used.length >= PASSES &&
      isClean(other) &&
      wayOf(other) === wayOf(each) &&
      !areAlike(each, other),
  );

const begun = (each: SetUpKnown): SetUpKnown => ({
  ...each,
  begun: true,
  lacks: [
    ...each.lacks,
    {
      code: 'one-more-pass',
      lift: 'valve',
      smallHand: isDial(each.read.setUp.tool),
      why: 'it was read once, and otherwise than the set-up beside it',
    },
  ],
});

/**
 * The set-ups with what is asked where the same arm on the same valve came out otherwise the second time. No later one
 * replaces an earlier one by being later: a third, or a person, says which holds.
 */
export function withDiffering(evidence: Evidence, entered: readonly SetUpKnown[]): SetUpKnown[] {
  const known = entered.map((each) => (isBegun(each, entered) ? begun(each) : each));
  const ways = [...new Set(known.map(wayOf))];
  const told = ways.flatMap((way) =>
    withOne(
      evidence,
      known.filter((each) => isClean(each) && wayOf(each) === way),
      known,
    ),
  );
  const all = known.map((each) => told.find(({ read }) => read === each.read) ?? each);
  return all.map((each) => ({
    ...each,
    lacks: eachOnce([...each.lacks, ...ofLobe(each.read.lobe, all)]),
  }));
}

/** Nobody knows yet which of them holds. */
export const isUndecided = ({ differs }: SetUpKnown): boolean =>
  differs !== undefined && differs.now === undefined;

/** And their lobes do not come to the same either. */
const isLobeUndecided = (each: SetUpKnown): boolean =>
  isUndecided(each) &&
  each.read.lobe.entryIds.some((id) => each.differs?.question.restsOn.includes(id) === true);

/** Set-ups that say less than others: put aside, undecided, and undecided in their lobes too. */
export function putAside(known: readonly SetUpKnown[]) {
  const readsOf = (is: (each: SetUpKnown) => boolean) => new Set(known.filter(is).map(({ read }) => read));
  return {
    aside: readsOf(({ differs }) => differs?.now === 'aside'),
    undecided: readsOf(isUndecided),
    lobesUndecided: readsOf(isLobeUndecided),
  };
}

/** The lobe that another set-up works with is one of those. */
const ofLobe = (lobe: SetUpKnown['read']['lobe'], all: readonly SetUpKnown[]): RatioLack[] =>
  all
    .filter((each) => lobe.from?.setUpId === each.read.setUp.id && isLobeUndecided(each))
    .flatMap(({ differs }) => (differs === undefined ? [] : [answerLack(differs.question)]));

/** What is asked of them, each once; where the arm was read again `since`, in another way, nobody waits for it. */
export function differingAsked(
  known: readonly SetUpKnown[],
  since: ReadonlyMap<string, unknown>,
): AssessedQuestion[] {
  const asked = new Map(
    known.flatMap(({ differs }) =>
      differs === undefined
        ? []
        : [differs.question, ...differs.before].map((each) => [each.id, each] as const),
    ),
  );
  return [...asked.values()].map((question) => {
    const open = known.filter(
      (each) => each.differs?.question.id === question.id && !since.has(each.read.setUp.id),
    );
    return open.length > 0 ? question : { ...question, weight: 'weak' };
  });
}
