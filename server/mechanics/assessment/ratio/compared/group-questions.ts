import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { DEFAULT_ASSUMPTIONS } from '../../../explain-readings/assumptions.ts';
import type { Cause, Question } from '../../../explain-readings/types.ts';
import { IN } from '../../../kit/si.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { answersOf, CARD_SLIP } from '../../common/answers-of.ts';
import { asked } from '../../common/asked.ts';
import { beforeNamed } from '../../common/named-late.ts';
import { inches, ratioSaid, valveSubject } from '../../common/said.ts';
import type { Evidence, PassEvidence } from '../../evidence.ts';
import { isAskedAs } from '../asked/asked-as.ts';
import { STANDS } from '../asked/choices.ts';
import { sinks } from '../asked/sinking.ts';
import { isSlip } from '../asked/told-by-swap.ts';
import { isBackAtZero } from '../read/passes.ts';
import { saysZero } from '../read/sayings.ts';
import type { ExplainGiven } from './explain-input.ts';
import type { Group } from './groups.ts';
import type { SetUpKnown } from './known.ts';
import { type LobeOff, readOthers } from './lobe-low.ts';

/** A question that only the inference raises, with the mistakes that its test settles. */
export interface GroupQuestion {
  readonly question: AssessedQuestion;
  readonly causes: readonly Cause[];
}

interface Raised extends Omit<Question, 'cause'> {
  readonly cause: Cause;
}

/** What was not said, and sinking, the questions of the set-up ask themselves. */
const isMistake = (question: Question): question is Raised =>
  question.cause !== 'state-not-said' && question.cause !== 'sinking';

/**
 * Readings part of the way up show lash that is left in, whatever was said of it: likelier than all else together, it is
 * asked before anything is moved or looked up.
 */
const isTold = ({ cause, probability }: Raised, own: Group['own']): boolean =>
  cause === 'lash-left-in' &&
  probability >= DEFAULT_ASSUMPTIONS.nameTold &&
  own.every(({ setUp }) => setUp.lash !== 'set') &&
  own.some(({ standing }) => standing.some(({ kind }) => kind === 'valve-lift-at'));

/** What the record says of every reading is not asked again; what an answer has said of it stays with its answer. */
function isSaid(raised: Raised, { own }: Group): boolean {
  if (isTold(raised, own)) return false;
  const { cause } = raised;
  // The hand was seen to come back after every pass: that is the test of it, done.
  const read = own.filter(({ valve }) => valve.used.length > 0);
  if (read.length === 0) return false;
  if (cause === 'zero-moved') return read.every(({ valve }) => valve.used.every(isBackAtZero));
  return cause === 'lash-left-in' && read.every(({ setUp }) => setUp.lash !== 'not-said');
}

/** Once a swap has decided, no slip of the eye and nothing unknown is left to ask of the readings that it was made of. */
const isSettled = (cause: Cause, { told, own }: Group): boolean =>
  told !== undefined &&
  (cause === 'unlisted-fault' ||
    isSlip(
      cause,
      own.every(({ setUp }) => setUp.lash === 'zero'),
    ));

const TURN_APART = 0.002;

/** The pass that a slip is about. */
function passOf({ entry }: Raised, given: ExplainGiven, own: Group['own']): PassEvidence | undefined {
  if (entry?.of !== 'reading') return undefined;
  const id = given.entryIds[entry.index];
  return own.flatMap(({ standing }) => standing).find((pass) => pass.id === id);
}

/** A figure of the card that may be a slip: no reading is put right for it. */
const isOfCard = ({ cause, entry }: Raised): boolean =>
  entry?.of === 'card' && (cause === 'slip' || cause === 'unit-or-decimal');

/** A digit that is off by whole turns of the dial is the turn that is asked about already. */
function isTurn(raised: Raised, pass: PassEvidence, { own }: Group, put: ReadonlySet<string>): boolean {
  const setUp = own.find(({ setUp: { id } }) => id === pass.setUpId)?.setUp;
  if (setUp === undefined || raised.becomes === undefined || !put.has('turn-miscounted')) return false;
  const turns = (raised.becomes - pass.value / IN) / (setUp.perTurn / IN);
  return Math.round(turns) !== 0 && Math.abs(turns - Math.round(turns)) * (setUp.perTurn / IN) <= TURN_APART;
}

const TOUCHED: readonly Cause[] = ['wrong-valve', 'wrong-card-row'];

/** How the plunger stood is no yes or no; a slip of the card is put right there. */
function choicesOf({ cause, entry }: Raised): AssessedQuestion['answers'] {
  if (cause === 'plunger-tilted') return STANDS;
  return answersOf(cause, entry?.of === 'card' ? CARD_SLIP : undefined);
}

/** `.577 in over its lobe of .360 in is a ratio of 1.603.`: what makes the other valve worth asking about. */
function otherLobeSaid(evidence: Evidence, { own, valve }: Group): string | undefined {
  const lobe = evidence.card[sideOfValve(valve) === 'intake' ? 'exhaust' : 'intake'].lobeLift;
  const lift = own.at(-1)?.lift?.read;
  if (lobe === undefined || lobe <= 0 || lift === undefined) return undefined;
  return `${inches(lift)} over the other lobe of ${inches(lobe)} is a ratio of ${ratioSaid(lift / lobe)}.`;
}

/** One test settles both: they are one question. */
function asOne(raised: readonly Raised[]): { readonly raised: Raised; readonly causes: readonly Cause[] }[] {
  const both = TOUCHED.every((cause) => raised.some((each) => each.cause === cause));
  return raised.flatMap((each) => {
    if (!both || !TOUCHED.includes(each.cause)) return [{ raised: each, causes: [each.cause] }];
    if (each.cause === 'wrong-card-row') return [];
    const text = each.text.replace(
      'Could it be the other valve?',
      'Could it be the other valve, or the other row of the card?',
    );
    return [{ raised: { ...each, text }, causes: TOUCHED }];
  });
}

/** “Taken up to zero” is an answer of a set-up to the same: the lash was looked at, and it was not left in. */
function withZero(question: AssessedQuestion, { answers }: Evidence): AssessedQuestion {
  const { answered } = question;
  const given = answers.find(({ id }) => id === answered?.entryId);
  const isZero = answered !== undefined && given !== undefined && saysZero(given);
  return isZero ? { ...question, answered: { ...answered, found: false } } : question;
}

/** What only the inference raises: put once for the arm, and not where the set-up asks it in its own words. */
export function groupQuestions(
  evidence: Evidence,
  group: Group,
  setUps: readonly SetUpKnown[],
  given: ExplainGiven,
  questions: readonly Question[],
  lobe?: LobeOff,
): GroupQuestion[] {
  const put = new Set(setUps.flatMap((each) => each.questions.map(({ code }) => code)));
  const asks = (cause: Cause) => !isAskedAs(cause, put) && !isSettled(cause, group);
  const own = questions.filter(isMistake).filter(({ cause }) => asks(cause));
  const lobeRead = group.own.some(({ lobe }) => lobe.source === 'indicator' && lobe.value !== undefined);
  const sinking = setUps.some((each) => sinks(each.questions));
  const all = asOne(own).flatMap(({ raised, causes }): GroupQuestion[] => {
    const { cause, text, test } = raised;
    const pass = cause === 'slip' ? passOf(raised, given, group.own) : undefined;
    // Passes that sink differ by themselves: no digit has to have slipped.
    if (pass !== undefined && sinking) return [];
    // Digits slip as they were typed: in millimetres other ones.
    if (pass !== undefined && (isTurn(raised, pass, group, put) || pass.readAs.includes('mm'))) return [];
    const raisedAs = asked(
      {
        code: cause,
        weight: isTold(raised, group.own) ? 'strong' : 'weak',
        ask: pass === undefined ? text : slipSaid(pass, raised.becomes ?? 0),
        ...defined({ size: TOUCHED.includes(cause) ? otherLobeSaid(evidence, group) : undefined }),
        // It was read at the lifter already: the lobes beside it tell.
        test: cause === 'card-not-this-lobe' && lobeRead ? readOthers(lobe ?? group) : test,
        ...defined({ byLooking: cause === 'card-not-this-lobe' && lobe?.alike === true ? true : undefined }),
        restsOn: pass !== undefined ? [pass.id] : isOfCard(raised) ? [] : given.entryIds,
      },
      {
        about: valveSubject(group),
        step: 'ratio',
        answers: evidence.answers,
        ...beforeNamed(
          group.armId,
          group.own.flatMap(({ standing }) => standing),
        ),
        ...defined({ among: group.armId }),
        choices: choicesOf(raised),
      },
    );
    const question = cause === 'lash-left-in' ? withZero(raisedAs, evidence) : raisedAs;
    // The others of its side read as the card has it, or it is down on them: the card is of this cam.
    const isOfCam = cause === 'card-not-this-lobe' && lobe?.alone === true;
    const known = isOfCam || isSaid(raised, group);
    return known && question.answered === undefined ? [] : [{ question, causes }];
  });
  return [...new Map(all.map((each) => [each.question.id, each])).values()];
}

const KINDS: Readonly<Record<string, string>> = { 'lobe-lift': 'lobe pass', 'valve-lift': 'pass' };

function slipSaid({ kind, pass, value }: PassEvidence, becomes: number): string {
  return `Could ${KINDS[kind] ?? 'the reading'} ${pass}, ${inches(value)}, have been ${inches(becomes * IN)}?`;
}
