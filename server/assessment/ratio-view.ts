import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { inInches, quantityView, valveView } from '../../shared/schemas/answer-parts.ts';
import { out, outList, outNumber } from '../../shared/schemas/outputs.ts';
import { ALIGNMENTS, keysOf, LASH_STATES, LIFTERS, RESTS_ON, SPRINGS } from '../../shared/schemas/words.ts';
import { encoded } from '../compute/encode.ts';
import type { Assessment } from '../mechanics/assessment/assessment.ts';
import type { SetUpDetail } from '../mechanics/assessment/ratio/read/detail.ts';
import { saidOfSetUp } from '../mechanics/assessment/ratio/read/said-of-set-up.ts';
import { computation as explainReadings } from '../mechanics/computations/explain-readings.ts';
import { computation as ratioAtFullLift } from '../mechanics/computations/ratio-at-full-lift.ts';
import { computation as ratioThroughLift } from '../mechanics/computations/ratio-through-lift.ts';
import { notFound } from '../problems/failure.ts';
import { type BuildRecord, setUpOf } from '../records/whole-build/build-record.ts';
import { assessed } from './assessed.ts';
import { judgementView, showJudgement } from './view/judgement.ts';
import { assessedQuestionView, showQuestion } from './view/question.ts';

const texts = z.array(z.string());

const restsOnView = z.object({
  readingId: z.uuid(),
  kind: z.string(),
  pass: z.int(),
  readAs: z.string(),
});

/** Which of the two ratios a spring gives. */
export const QUANTITY = {
  light: 'light-spring ratio',
  running: 'running-spring ratio',
  'not-said': 'not known',
} as const;

const knownView = z
  .object({
    cylinder: z.int(),
    valve: valveView,
    armId: z.uuid().optional(),
    spring: z.enum(keysOf(SPRINGS)),
    lifter: z.enum(keysOf(LIFTERS)),
    lash: z.enum(keysOf(LASH_STATES)),
    lashSetting: quantityView.optional(),
    restsOn: z.enum(keysOf(RESTS_ON)),
    alignment: z.enum(keysOf(ALIGNMENTS)),
  })
  .meta({
    id: 'SetUpAsKnown',
    description: 'how it was read, as far as is known now: statements and answers that came later are in it',
  });

const showKnown = ({ setUp }: SetUpDetail) =>
  answer(knownView, {
    cylinder: setUp.cylinder,
    valve: setUp.valve,
    armId: setUp.armId,
    spring: setUp.spring,
    lifter: setUp.lifter,
    lash: setUp.lash,
    lashSetting: setUp.lashSetting === undefined ? undefined : inInches(setUp.lashSetting),
    restsOn: setUp.restsOn,
    alignment: setUp.alignment,
  });

/** Nominals beside the interval of a reading; what is said of the arm is the headline's. */
const nominalsView = z.object({
  rows: outList(
    z.object({
      ratio: outNumber('nominal'),
      named: z
        .enum(['mark', 'sold-as', 'planned'])
        .optional()
        .meta({ description: 'what the call has named it as' }),
      inside: z.boolean().meta({ description: 'the 95 % interval of the reading holds it' }),
      needsValveLift: out('length', 'valve lift that it needs on this lobe'),
    }),
    'those near, and what the call has named',
  ),
  others: outNumber('how many more of the list lie further off'),
});

/** The ratio of a set-up as JSON has it; `quantity` names which of the two ratios it is. */
export const ratioView = z
  .object({
    setUpId: z.uuid(),
    revision: z.int(),
    known: knownView,
    quantity: z.enum(Object.values(QUANTITY)),
    headline: z.string().optional().meta({ description: 'the answer of this arm on its valve, in one line' }),
    judgements: z.array(judgementView).meta({ description: 'without the one that the headline is made of' }),
    result: ratioAtFullLift.output.optional(),
    nominals: nominalsView.optional(),
    missing: texts.meta({ description: 'without these no word stands against it' }),
    questions: z.array(assessedQuestionView),
    assumptions: texts,
    cautions: texts,
    restsOn: z.array(restsOnView),
  })
  .meta({ id: 'Ratio' });

export const explanationView = z.object({
  explanation: explainReadings.output.optional(),
  missing: texts,
});

export const throughLiftView = z
  .object({ result: ratioThroughLift.output.optional(), missing: texts })
  .meta({ id: 'ThroughLift' });

/** What the assessment has of a set-up of the record. */
function found(record: BuildRecord, setUpId: string) {
  const setUp = setUpOf(record, setUpId);
  const assessment = assessed(record);
  const detail = assessment.details.setUps.find(({ setUp: { id } }) => id === setUp.id);
  if (detail === undefined) throw notFound('set-up');
  return { setUp, assessment, detail, said: saidOfSetUp(assessment, detail) };
}

/** The passes that the ratio is calculated from, in the order of entry. */
function restsOn({ readings }: BuildRecord, { quantities }: Assessment, { quantityId }: SetUpDetail) {
  const ids = quantities.find(({ id }) => id === quantityId)?.restsOn ?? [];
  return readings
    .filter(({ id }) => ids.includes(id))
    .sort((a, b) => a.seq - b.seq)
    .map(({ id, kind, pass, peak }) => ({ readingId: id, kind, pass, readAs: peak.readAs }));
}

export function ratioOfSetUp(record: BuildRecord, setUpId: string) {
  const { setUp, assessment, detail, said } = found(record, setUpId);
  const { result, nominals, lacks, assumptions, cautions } = detail;
  return answer(ratioView, {
    setUpId: setUp.id,
    revision: setUp.revision,
    known: showKnown(detail),
    quantity: QUANTITY[detail.setUp.spring],
    headline: said.headline?.sentence,
    judgements: said.judgements.map(showJudgement),
    result: result === undefined ? undefined : encoded(ratioAtFullLift.output, result, 'inch'),
    nominals: nominals === undefined ? undefined : encoded(nominalsView, nominals, 'inch'),
    missing: lacks,
    questions: said.questions.map(showQuestion),
    assumptions,
    cautions,
    restsOn: restsOn(record, assessment, detail),
  });
}

export function explanationOfSetUp(record: BuildRecord, setUpId: string) {
  const { explanation } = found(record, setUpId).said;
  const result = explanation?.chances === 'told' ? explanation.result : undefined;
  return answer(explanationView, {
    explanation: result === undefined ? undefined : encoded(explainReadings.output, result, 'inch'),
    missing:
      explanation === undefined
        ? ['a pass of the valve lift']
        : result === undefined
          ? [explanation.refused ?? explanation.summary]
          : [],
  });
}

export function throughLiftOfSetUp(record: BuildRecord, setUpId: string) {
  const { result, lacks } = found(record, setUpId).detail.throughLift;
  return answer(throughLiftView, {
    result: result === undefined ? undefined : encoded(ratioThroughLift.output, result, 'inch'),
    missing: lacks,
  });
}
