import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import { IN } from '../../kit/si.ts';
import type { AssessedQuantity, AssessedQuestion, Headline, Judgement } from '../assessment.ts';
import { answersOf } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import type { PartSaid } from '../common/part-said.ts';
import { inches, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { meanOf } from '../ratio/passes.ts';
import type { SetUpRead } from '../ratio/set-up-read.ts';

/** Lash that was left in is within so much of the lash itself; a dial repeats within as much. */
const NEAR = allowance('lash-left-in');
/** A whole turn of the hand is told within so much. */
const NEAR_TURN = allowance('whole-turn');

export type BucketRead = Pick<PartSaid<unknown>, 'quantities' | 'judgements' | 'questions' | 'headlines'>;

const NOTHING: BucketRead = { quantities: [], judgements: [], questions: [], headlines: [] };

interface Lift {
  readonly read: SetUpRead;
  readonly lift: number;
  readonly within: number;
  readonly card: number | undefined;
  readonly restsOn: readonly string[];
}

/** The lift as it stands, with the lash put back where it was said how much is in it. */
function liftOf(evidence: Evidence, read: SetUpRead): Lift[] {
  const { used } = read.valve;
  const { setUp } = read;
  if (used.length === 0) return [];
  const back = setUp.lash === 'set' ? (setUp.lashSetting ?? 0) : 0;
  return [
    {
      read,
      lift: meanOf(used) + back,
      within: Math.max(setUp.errorLimit, 0.001 * IN),
      card: evidence.card[sideOfValve(setUp.valve)].lobeLift,
      restsOn: used.map(({ id }) => id).toSorted(),
    },
  ];
}

interface Doubt {
  readonly code: 'lash-left-in' | 'turn-miscounted' | 'card-not-this-lobe';
  readonly ask: string;
  readonly test: string;
  readonly atBench: string;
}

/** What would explain a lift that is not the card’s: its lash, a turn of the hand, another lobe or card. */
function doubtOf(evidence: Evidence, { read: { setUp }, lift, card = lift }: Lift): Doubt | undefined {
  const under = card - lift;
  const of = placeOf(setUp);
  const lash = setUp.lashSetting ?? evidence.card[sideOfValve(setUp.valve)].lash;
  if (setUp.lash !== 'set' && lash !== undefined && lash > 0 && Math.abs(under - lash) <= NEAR)
    return {
      code: 'lash-left-in',
      ask: `Could the lash, ${inches(lash)}, be left in the lift of ${of}? With it, it comes to the card’s ${inches(card)}.`,
      test: 'Ask how the gap was taken up, and read it again with none.',
      atBench: 'Take the gap up with a feeler of that thickness, and read it again.',
    };
  const turns = Math.round(under / setUp.perTurn);
  if (turns !== 0 && Math.abs(under - turns * setUp.perTurn) <= NEAR_TURN)
    return {
      code: 'turn-miscounted',
      ask: `Could ${Math.abs(turns) === 1 ? 'a turn' : `${Math.abs(turns)} turns`} of the hand be miscounted on ${of}? That makes the card’s ${inches(card)}.`,
      test: 'Read it again with the small hand first.',
      atBench: 'Read the small hand first, and read it again.',
    };
  return {
    code: 'card-not-this-lobe',
    ask: `${of} lifts ${inches(lift)}, its lobe on the card ${inches(card)}. Is it that card, and that lobe?`,
    test: 'Read the card out again, then read the lift again with no gap.',
    atBench: 'Read the card again, then the lift with no gap.',
  };
}

const idOf = ({ read: { setUp } }: Lift): string => `bucket-lift:${setUp.id}`;

const quantityOf = (each: Lift): AssessedQuantity => {
  const { read, lift, within, restsOn } = each;
  return {
    id: idOf(each),
    name: 'Lobe lift at the bucket',
    about: valveSubject(read.setUp),
    dimension: 'length',
    value: lift,
    low: lift - within,
    high: lift + within,
    basis: 'measured',
    conditions: [read.setUp.lash === 'set' ? 'with the lash put back' : 'as read'],
    lacks: [],
    restsOn,
  };
};

const headlineOf = (each: Lift, sentence: string): Headline => ({
  id: `headline:${idOf(each)}`,
  about: valveSubject(each.read.setUp),
  step: 'ratio',
  sentence,
  quantityId: idOf(each),
});

/** Beside its card the lift is the lobe's, or it is off it. */
function againstCard({ read: { setUp }, lift, within, restsOn }: Lift, card: number): Judgement {
  const agrees = Math.abs(lift - card) <= Math.max(within, NEAR);
  const of = `Lift of ${placeOf(setUp)}, ${inches(lift)}`;
  return {
    id: `card-lobe:${setUp.id}`,
    about: valveSubject(setUp),
    against: { to: 'card-lobe', lobeLift: card },
    ...(agrees ? { word: 'agrees' as const } : {}),
    sentence: agrees
      ? `${of}: as the card’s lobe, ${inches(card)}. A bucket moves as its lobe does.`
      : `${of}: the card’s lobe is ${inches(card)}, ${inches(Math.abs(card - lift))} ${card > lift ? 'more' : 'less'}. A bucket moves as its lobe does.`,
    lacks: [],
    restsOn,
  };
}

function questionsOf(evidence: Evidence, each: Lift): AssessedQuestion[] {
  const doubt = doubtOf(evidence, each);
  const { read, restsOn } = each;
  if (doubt === undefined) return [];
  return [
    asked(
      {
        code: doubt.code,
        weight: 'strong',
        ask: doubt.ask,
        knownBy: `bucket ${doubt.code} ${read.setUp.number}`,
        test: doubt.test,
        testAtBench: doubt.atBench,
        restsOn,
      },
      {
        about: valveSubject(read.setUp),
        step: 'ratio',
        answers: evidence.answers,
        choices: answersOf(doubt.code),
      },
    ),
  ];
}

function toldOf(evidence: Evidence, each: Lift): BucketRead {
  const { read, lift, card } = each;
  const quantities = [quantityOf(each)];
  if (card === undefined) {
    const alone = `Lift of ${placeOf(read.setUp)}, ${inches(lift)}: it is the lobe’s own, a bucket has no ratio. The card’s lobe lift is not on record.`;
    return { ...NOTHING, quantities, headlines: [headlineOf(each, alone)] };
  }
  const judgement = againstCard(each, card);
  return {
    quantities,
    judgements: [judgement],
    questions: judgement.word === 'agrees' ? [] : questionsOf(evidence, each),
    headlines: [headlineOf(each, judgement.sentence)],
  };
}

/**
 * What was read of valves under buckets as if of a ratio: a bucket moves one to one with its lobe, so that each lift is
 * the lobe's, and is set against the card's lobe alone.
 *
 * Validity: the lift along the valve; the contact on the bucket's face adds nothing to it.
 * Source: how a bucket works, general knowledge; the bands are common practice, no published source.
 */
export function bucketLifts(evidence: Evidence, reads: readonly SetUpRead[]): BucketRead {
  const told = reads.flatMap((read) => liftOf(evidence, read)).map((each) => toldOf(evidence, each));
  return {
    quantities: told.flatMap(({ quantities }) => quantities),
    judgements: told.flatMap(({ judgements }) => judgements),
    questions: told.flatMap(({ questions }) => questions),
    headlines: told.flatMap(({ headlines }) => headlines),
  };
}
