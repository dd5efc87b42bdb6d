import { defined } from '../../../../../shared/defined.ts';
import { InputFaults } from '../../../../../shared/problems/faults.ts';
import { explainReadings } from '../../../explain-readings/explain.ts';
import { toExplainOutput } from '../../../explain-readings/json-output.ts';
import type { Cause, ExplainInput, Question } from '../../../explain-readings/types.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import type { ArmEvidence, Evidence } from '../../evidence.ts';
import { isAlikeElsewhere } from '../asked/alike-elsewhere.ts';
import { foundLack, isOfCardLobe } from '../asked/conditions.ts';
import { type Claim, claimsOn } from '../claims/marks.ts';
import { faultsSaid } from '../read/full-lift.ts';
import { impossibleIn, ruledOutIn } from './explain-answers.ts';
import { type ExplainGiven, explainInput } from './explain-input.ts';
import type { ExplanationResult } from './explanation.ts';
import { type GroupQuestion, groupQuestions } from './group-questions.ts';
import type { Group } from './groups.ts';
import type { SetUpKnown } from './known.ts';
import { lobeOff } from './lobe-low.ts';
import { lobesOfSetUps } from './lobes-read.ts';
import { asReadAgain } from './read-again.ts';
import { readsAsOrdered } from './stamp-against-sold.ts';

/** One arm on one valve with all that was read of it, and what would explain that. */
export interface GroupExplained {
  readonly group: Group;
  readonly arm?: ArmEvidence;
  /** Its set-ups, by their number. */
  readonly known: readonly SetUpKnown[];
  /** The contact on the cam moves, and the ratio with it: no mark is held to a reading at full lift. */
  readonly throughLift: boolean;
  /** What the arm is held to be; the first is what the inference was told. */
  readonly claims: readonly Claim[];
  readonly given?: ExplainGiven;
  readonly result?: ExplanationResult;
  /** What the inference asks, and what it was answered. */
  readonly questions: readonly AssessedQuestion[];
  /** Its lobe is off the card and the valve shows nothing of it: it is read once more before the valve is. */
  readonly lobeAgain?: true;
  /** Mistakes that were looked for and not found. */
  readonly ruledOut: readonly Cause[];
  /** The fault and the way out, where it cannot be computed. */
  readonly refused?: string;
}

/** Where the figure stands that no reading can have: a reading is entered again, a state or a card is put right. */
function wayOut({ faults }: InputFaults): string {
  const at = (pattern: RegExp) => faults.some(({ pointer }) => pattern.test(pointer));
  if (at(/LobeLift$/) && !at(/^\/readings/)) return 'put the lobe lift on the card right';
  if (at(/^\/lashSetting|\/perTurn$/)) return 'put that right for its set-up';
  return 'enter that one again, or strike it out with the reason';
}

type Weighed = Pick<GroupExplained, 'result' | 'refused' | 'questions' | 'ruledOut'>;

/**
 * The inference once, and a second time where something that it asks, or a set-up, was looked at and does not fit: a
 * question that its own answer has settled is kept with the answer, though it would not be asked any more.
 */
function weighed(
  input: ExplainInput,
  inSetUps: readonly Cause[],
  impossible: readonly Cause[],
  questionsOf: (asked: readonly Question[]) => GroupQuestion[],
): Weighed {
  try {
    const found = explainReadings(input);
    const raised = questionsOf(found.questions);
    const answered = raised.filter(({ question }) => question.answered?.found === false);
    const ruledOut = [...new Set([...inSetUps, ...answered.flatMap(({ causes }) => causes)])];
    const out = [...new Set([...ruledOut, ...impossible])];
    const isOpen = ({ question, causes }: GroupQuestion) =>
      question.answered !== undefined || !causes.every((cause) => out.includes(cause));
    const again = out.length === 0 ? found : explainReadings({ ...input, ruledOut: out });
    const questions = raised.filter(isOpen).map(({ question }) => question);
    return { result: toExplainOutput(again), questions, ruledOut };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    const faults = faultsSaid(error).join('; ');
    return {
      questions: [],
      ruledOut: [],
      refused: `These readings cannot be weighed (${faults}): ${wayOut(error)}`,
    };
  }
}

/** What a swap that was read has settled. */
const OF_COUNT: readonly Cause[] = ['turn-too-many', 'turn-too-few', 'hand-read-backwards', 'slip'];

/** Valve gear whose ratio is not one number (common practice, no published source). */
const CHANGES_THROUGH_LIFT: ReadonlySet<string> = new Set(['finger-follower', 'cam-rocker']);

/**
 * The inference for an arm on a valve, whatever the number of its set-ups. One that was ordered as another than its
 * mark, and reads as ordered, is held to the order first.
 */
export function explainGroup(
  evidence: Evidence,
  group: Group,
  all: readonly SetUpKnown[],
  nominals: readonly number[],
): GroupExplained {
  const claims = claimsOn(evidence, group.armId, group.soldAsThen);
  const explained = explainAs(evidence, group, all, nominals, claims);
  const ordered = readsAsOrdered(evidence, explained);
  if (ordered === undefined) return explained;
  return explainAs(evidence, group, all, nominals, [ordered, ...claims.filter((each) => each !== ordered)]);
}

/** `claims`: what it is held to be; the inference is told the first. */
function explainAs(
  evidence: Evidence,
  group: Group,
  all: readonly SetUpKnown[],
  nominals: readonly number[],
  claims: readonly Claim[],
): GroupExplained {
  const own = all.filter(({ read }) => group.own.includes(read));
  const counted = new Set(all.flatMap((each) => [...each.counted]));
  const mark = claims[0]?.ratio;
  const given = explainInput(evidence, group, { setUps: own, nominals, counted, ...defined({ mark }) });
  const arm = evidence.arms.find(({ id }) => id === group.armId);
  const throughLift = CHANGES_THROUGH_LIFT.has(evidence.engine.gear ?? 'pushrod');
  const about = { group, ...defined({ arm }), claims, throughLift };
  if (given === undefined) return { ...about, known: own, questions: [], ruledOut: [] };
  const lobeRead = lobesOfSetUps(own).at(-1)?.value;
  const lobe = lobeRead === undefined ? undefined : lobeOff(evidence, all, group, lobeRead);
  const questionsOf = (asked: readonly Question[]) =>
    groupQuestions(evidence, group, own, given, asked, lobe);
  const reads = [...group.own, ...group.elsewhere, ...group.sameLobe];
  const impossible = [
    ...impossibleIn(own),
    ...(group.own.some((read) => isAlikeElsewhere(read, reads)) ? OF_COUNT : []),
  ];
  const found = weighed(given.input, ruledOutIn(own), impossible, questionsOf);
  const known = withFound(own, found.questions);
  const { result } = found;
  return {
    ...about,
    ...(lobe?.readAgain === true ? { lobeAgain: true } : {}),
    given,
    ...found,
    ...(result === undefined ? {} : { result: asReadAgain(result, known, mark) }),
    known,
  };
}

/** What was found to be so is not believed until it is entered again, whoever raised it. */
function withFound(known: readonly SetUpKnown[], questions: readonly AssessedQuestion[]): SetUpKnown[] {
  const found = questions.filter(({ answered }) => answered?.found === true);
  return known.map((each) => {
    // With the lobe read at the lifter nothing of the ratio is from the card.
    const lobeRead = each.read.lobe.source === 'indicator' && each.read.lobe.value !== undefined;
    const own = found.filter((question) => !(lobeRead && isOfCardLobe(question)));
    const lacks = own.map((question) => foundLack(question, each.read));
    return { ...each, lacks: [...each.lacks, ...lacks], doubts: [...each.doubts, ...lacks] };
  });
}
