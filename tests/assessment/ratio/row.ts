import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import type {
  AnswerEvidence,
  Evidence,
  SetUpEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { buildOf, cleanSetUp, lobe, passesOf, stamped } from '../../mechanics/assessment/plain.ts';

/** A call as a caller tells it, and what must and must not be said. Figures and parts are invented. */
export interface Row {
  readonly said: string;
  readonly build: Evidence;
  /** Of the first headline of 1 intake. */
  readonly headline?: RegExp;
  /** Word by id of the judgement. */
  readonly words?: Readonly<Record<string, string | undefined>>;
  readonly says?: readonly RegExp[];
  readonly never?: readonly RegExp[];
  /** Codes that are asked, each once and in these words. */
  readonly asks?: Readonly<Record<string, RegExp>>;
  readonly asksNot?: readonly string[];
  /** Whether chances stand beside the headline. */
  readonly chances?: 'told' | 'open' | 'none';
  readonly notToRun?: RegExp;
  readonly next: string | RegExp;
  /** In the words of what is next. */
  readonly nextSays?: RegExp;
}

/** The card of both sides in inches. */
export const cardOf = (intake: number, exhaust = 0.362, more: Partial<Evidence['card']> = {}) => ({
  assumedRatio: 1.6,
  intake: lobe(intake),
  exhaust: lobe(exhaust),
  ...more,
});

interface Engine {
  readonly setUp?: Partial<SetUpEvidence>;
  readonly stamp?: string;
  readonly box?: string;
  readonly soldAs?: number;
  readonly card?: Evidence['card'];
  readonly more?: Partial<Evidence>;
}

/** Lobe and valve of 1 intake read by one indicator, small hand and zero looked at; card .350, stamped 1.6. */
export function readBoth(lobes: readonly number[], lifts: readonly number[], engine: Engine = {}): Evidence {
  const { setUp, stamp = '1.6', box = '', soldAs, card = cardOf(0.35), more } = engine;
  return buildOf([], {
    card,
    arms: [{ ...stamped(stamp), boxLabel: box }],
    rockers: soldAs === undefined ? {} : { soldAs },
    setUps: [{ ...cleanSetUp, lobeSource: 'indicator', ...setUp }],
    passes: [
      ...passesOf('lobe-lift', lobes, { counted: true, zeroReturn: 0 }),
      ...passesOf('valve-lift', lifts, { counted: true, zeroReturn: 0 }),
    ],
    ...more,
  });
}

export const answered = (
  code: string,
  answer: string,
  more: Partial<AnswerEvidence> = {},
): AnswerEvidence => ({
  id: `answer-${code}`,
  line: 90,
  code,
  question: code,
  answer,
  setUpId: cleanSetUp.id,
  ...more,
});

/** Everything that a face may show of the ratio as it is. */
export const textOf = ({
  headlines,
  judgements,
  questions,
  explanations,
  next,
  missing,
  notToRun,
}: Assessment) =>
  [
    ...[...headlines, ...judgements, ...missing].map(({ sentence }) => sentence),
    ...notToRun.flatMap(({ sentence, wayOut, wayOutAtBench = '' }) => [sentence, wayOut, wayOutAtBench]),
    ...questions.flatMap(({ ask, size = '', test, testAtBench = '' }) => [ask, size, test, testAtBench]),
    ...explanations.flatMap(({ summary, wouldBeTrue }) => [summary, ...wouldBeTrue]),
    next?.sentence ?? '',
    next?.sentenceAtBench ?? '',
  ].join('\n');
