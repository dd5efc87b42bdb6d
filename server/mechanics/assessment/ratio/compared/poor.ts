import { defined } from '../../../../../shared/defined.ts';
import { allowance } from '../../../kit/allowances.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { inDoubt } from '../../common/asked.ts';
import { inches, listed } from '../../common/said.ts';
import { groupKey } from '../read/group-key.ts';
import type { RatioLack } from '../read/lack.ts';
import { spreadOf } from '../read/passes-repeat.ts';
import { ZERO_RETURNS_WITHIN } from '../read/zero.ts';
import type { SetUpKnown } from './known.ts';

/** What the passes show of themselves, in the order in which it is looked at. */
const FACTS: readonly string[] = [
  'zero-not-returned',
  'falling-passes',
  'drifting-passes',
  'turn-miscounted',
];

const isFact = ({ code }: AssessedQuestion): boolean => FACTS.includes(code);

/** Passes of the valve that do not repeat, with nothing to say which of them is right. */
function isOfPasses(lack: RatioLack): boolean {
  switch (lack.code) {
    case 'passes-scatter':
    case 'sinking':
      return true;
    case 'passes-apart':
    case 'one-more-pass':
    case 'none-back-at-zero':
      return lack.lift === 'valve';
    default:
      return false;
  }
}

/** The zero, or passes of the valve that drift: the base moved. */
const isOfBase = ({ code, restsOn }: AssessedQuestion, { valve }: SetUpKnown['read']): boolean =>
  code === 'zero-not-returned' ||
  (code === 'drifting-passes' && valve.used.some(({ id }) => restsOn.includes(id)));

/** Its own passes say that it was read carelessly: the zero, or how far they lie apart. */
const isCareless = ({ read, questions, lacks }: SetUpKnown): boolean =>
  read.valve.used.length + read.valve.aside.length > 0 &&
  (lacks.some(isOfPasses) || questions.some((each) => isOfBase(each, read) && inDoubt(each)));

/** Read once, and not known how: beside a sound one nobody goes on with it. */
const isOnce = ({ read, lacks }: SetUpKnown): boolean =>
  lacks.length > 0 && read.valve.used.length + read.valve.aside.length === 1;

const isSound = ({ result, lacks }: SetUpKnown): boolean => result !== undefined && lacks.length === 0;

const isSameReading = (one: SetUpKnown, other: SetUpKnown): boolean =>
  groupKey(one.read.setUp) === groupKey(other.read.setUp) &&
  one.read.setUp.spring === other.read.setUp.spring;

/** `its zero came back .004 in off and its passes lie .014 in apart` */
function factsSaid({ read: { standing, valve } }: SetUpKnown): string {
  const lifts = standing.filter(({ kind }) => kind === 'valve-lift');
  const zero = Math.max(0, ...lifts.map(({ zeroReturn = 0 }) => Math.abs(zeroReturn)));
  const apart = spreadOf(valve.used.length > 1 ? valve.used : lifts);
  return listed([
    ...(lifts.length === 1 ? ['it was read once'] : []),
    ...(zero > ZERO_RETURNS_WITHIN ? [`its zero came back ${inches(zero)} off`] : []),
    ...(apart > allowance('repeat') ? [`its passes lie ${inches(apart)} apart`] : []),
  ]);
}

/** One thing is asked of it: what its passes show, before any guess at what would make its lift. */
function askedOnce(questions: readonly AssessedQuestion[]): AssessedQuestion[] {
  const open = questions.filter(({ answered }) => answered === undefined);
  const [first] = FACTS.flatMap((code) => open.filter((each) => each.code === code));
  const kept = first ?? open[0];
  return questions
    .filter((each) => each.answered !== undefined || each === kept)
    .map((each) => (isFact(each) || each === kept ? { ...each, weight: 'weak' as const } : each));
}

/**
 * The set-ups, where one whose own passes speak against it stands beside a sound one of the same arm on the same valve and
 * spring: the sound one stands, and nothing is weighed of the other.
 */
export const withPoor = (known: readonly SetUpKnown[]): SetUpKnown[] =>
  known.map((each) => {
    const sound = known.some((other) => other !== each && isSameReading(each, other) && isSound(other));
    if (!sound || each.begun === true || !(isCareless(each) || isOnce(each))) return each;
    const facts = factsSaid(each);
    return {
      ...each,
      questions: askedOnce(each.questions),
      poor: defined({ facts: facts === '' ? undefined : facts }),
    };
  });
