import { z } from 'zod';
import { UNITS, type Unit } from '../../shared/quantities/units.ts';
import { answer } from '../../shared/schemas/answer.ts';
import { inInches, quantityView, sideView } from '../../shared/schemas/answer-parts.ts';
import { STEP_NAMES } from '../../shared/steps.ts';
import { encoded } from '../compute/encode.ts';
import type {
  Against,
  AssessedExplanation,
  AssessedQuantity,
  AssessedQuestion,
  Assessment,
  Dimension,
  Headline,
  Judgement,
  NextAction,
  NotToRun,
  StopReason,
  Subject,
} from '../mechanics/assessment/assessment.ts';
import { computation as explainReadings } from '../mechanics/computations/explain-readings.ts';

const ids = z.array(z.string());
const texts = z.array(z.string());
const step = z.enum(STEP_NAMES);

export const subjectView = z
  .object({
    of: z.enum(['build', 'part', 'valve', 'side', 'set-up', 'arm']),
    cylinder: z.int().optional(),
    valve: sideView.optional(),
    setUpId: z.uuid().optional(),
    armId: z.uuid().optional(),
  })
  .meta({ id: 'Subject', description: 'what something is said of' });

export const showSubject = (about: Subject) =>
  answer(subjectView, {
    of: about.of,
    cylinder: 'cylinder' in about ? about.cylinder : undefined,
    valve: 'valve' in about ? about.valve : undefined,
    setUpId: 'setUpId' in about ? about.setUpId : undefined,
    armId: 'armId' in about ? about.armId : undefined,
  });

/** The unit that each dimension goes out in; a ratio has the unit one. */
const UNIT = { ratio: '1', length: 'in', load: 'lbf', angle: 'deg' } as const satisfies Record<
  Dimension,
  Unit | '1'
>;

const assessedQuantityView = z
  .object({
    id: z.string(),
    name: z.string(),
    about: subjectView,
    unit: z.enum(Object.values(UNIT)).meta({ description: 'of value, low and high; 1 for a ratio' }),
    value: z.number().optional(),
    low: z.number().optional().meta({ description: 'lower end of the 95 % interval' }),
    high: z.number().optional().meta({ description: 'upper end of the 95 % interval' }),
    basis: z.enum(['measured', 'calculated', 'drawn', 'stated', 'planned']),
    conditions: texts.meta({ description: 'what it holds for' }),
    lacks: texts.meta({ description: 'what must be known before it can be given, or believed' }),
    restsOn: ids.meta({ description: 'entries of the record' }),
  })
  .meta({ id: 'AssessedQuantity' });

function showQuantity(quantity: AssessedQuantity) {
  const unit = UNIT[quantity.dimension];
  const out = (si: number | undefined) => (si === undefined || unit === '1' ? si : si / UNITS[unit].toSi);
  return answer(assessedQuantityView, {
    id: quantity.id,
    name: quantity.name,
    about: showSubject(quantity.about),
    unit,
    value: out(quantity.value),
    low: out(quantity.low),
    high: out(quantity.high),
    basis: quantity.basis,
    conditions: quantity.conditions,
    lacks: quantity.lacks,
    restsOn: quantity.restsOn,
  });
}

const againstView = z.object({
  to: z.enum([
    'mark',
    'sold-as',
    'planned',
    'nominal',
    'card',
    'limit',
    'card-lobe',
    'usual-deflection',
    'siblings',
    'least-sweep',
  ]),
  ratio: z.number().optional(),
  gap: z.string().optional(),
  limit: quantityView.optional(),
  lobeLift: quantityView.optional(),
  low: quantityView.optional(),
  high: quantityView.optional(),
  source: z.string().optional(),
});

const inchesIf = (si: number | undefined) => (si === undefined ? undefined : inInches(si));

const showAgainst = (against: Against) =>
  answer(againstView, {
    to: against.to,
    ratio: 'ratio' in against ? against.ratio : undefined,
    gap: 'gap' in against ? against.gap : undefined,
    limit: inchesIf('limit' in against ? against.limit : undefined),
    lobeLift: inchesIf('lobeLift' in against ? against.lobeLift : undefined),
    low: inchesIf('low' in against ? against.low : undefined),
    high: inchesIf('high' in against ? against.high : undefined),
    source: 'source' in against ? against.source : undefined,
  });

export const judgementView = z
  .object({
    id: z.string(),
    about: subjectView,
    against: againstView,
    word: z
      .enum(['agrees', 'differs', 'cannot-tell', 'clear', 'close', 'short', 'odd'])
      .optional()
      .meta({ description: 'left out while what is known allows none' }),
    sentence: z.string().meta({ description: 'can be read aloud' }),
    lacks: texts,
    restsOn: ids,
  })
  .meta({ id: 'Judgement' });

export const showJudgement = (judgement: Judgement) =>
  answer(judgementView, {
    id: judgement.id,
    about: showSubject(judgement.about),
    against: showAgainst(judgement.against),
    word: judgement.word,
    sentence: judgement.sentence,
    lacks: judgement.lacks,
    restsOn: judgement.restsOn,
  });

const answeredView = z.object({ entryId: z.string(), answer: z.string(), found: z.boolean().optional() });

export const assessedQuestionView = z
  .object({
    id: z.string(),
    code: z.string(),
    about: subjectView,
    step: step.meta({ description: 'where it is answered' }),
    weight: z.enum(['strong', 'weak']),
    ask: z.string(),
    size: z.string().optional(),
    test: z.string().meta({ description: 'what settles it' }),
    answers: z.array(z.object({ code: z.string(), label: z.string(), changes: z.string() })),
    answered: answeredView.optional(),
    restsOn: ids,
  })
  .meta({ id: 'AssessedQuestion' });

const showAnswered = ({ entryId, answer: said, found }: NonNullable<AssessedQuestion['answered']>) =>
  answer(answeredView, { entryId, answer: said, found });

/** The fields of a question as they go out, for answers that have more beside them. */
export const questionFields = (question: AssessedQuestion) => ({
  id: question.id,
  code: question.code,
  about: showSubject(question.about),
  step: question.step,
  weight: question.weight,
  ask: question.ask,
  size: question.size,
  test: question.test,
  answers: question.answers,
  answered: question.answered === undefined ? undefined : showAnswered(question.answered),
  restsOn: question.restsOn,
});

export const showQuestion = (question: AssessedQuestion) =>
  answer(assessedQuestionView, questionFields(question));

const assessedExplanationView = z
  .object({
    id: z.string(),
    about: subjectView,
    result: explainReadings.output.optional(),
    refused: z.string().optional().meta({ description: 'why it cannot be computed, and the way out' }),
    summary: z.string(),
    setUpIds: ids,
    restsOn: ids,
  })
  .meta({ id: 'AssessedExplanation' });

const showExplained = (explanation: AssessedExplanation) =>
  answer(assessedExplanationView, {
    id: explanation.id,
    about: showSubject(explanation.about),
    result:
      explanation.result === undefined
        ? undefined
        : encoded(explainReadings.output, explanation.result, 'inch'),
    refused: explanation.refused,
    summary: explanation.summary,
    setUpIds: explanation.setUpIds,
    restsOn: explanation.restsOn,
  });

export const headlineView = z
  .object({
    id: z.string(),
    about: subjectView,
    step,
    sentence: z.string(),
    judgementId: z.string().optional(),
    quantityId: z.string().optional(),
  })
  .meta({ id: 'Headline' });

export const showHeadline = (headline: Headline) =>
  answer(headlineView, {
    id: headline.id,
    about: showSubject(headline.about),
    step: headline.step,
    sentence: headline.sentence,
    judgementId: headline.judgementId,
    quantityId: headline.quantityId,
  });

const nextView = z
  .object({
    id: z.string(),
    action: z.string(),
    step,
    about: subjectView,
    sentence: z.string(),
    reason: z.string(),
    minutes: z.number().optional(),
    turns: z.boolean().meta({ description: 'it turns the engine; never true under a stop' }),
  })
  .meta({ id: 'NextAction' });

const showNext = (next: NextAction) =>
  answer(nextView, {
    id: next.id,
    action: next.action,
    step: next.step,
    about: showSubject(next.about),
    sentence: next.sentence,
    reason: next.reason,
    minutes: next.minutes,
    turns: next.turns,
  });

const stopView = z
  .object({
    id: z.string(),
    code: z.enum(['held', 'contact', 'gap-short', 'lash-grew-again', 'lobe-worn', 'mark-at-the-edge']),
    about: subjectView,
    sentence: z.string(),
    wayOut: z.string(),
    answered: z.boolean().meta({ description: 'a person may lift it, with a reason' }),
    from: z.enum(['person', 'readings']),
    entryId: z.string().optional(),
    line: z.int().optional(),
    since: z.iso.datetime().optional(),
  })
  .meta({ id: 'StopReason' });

const showStop = (stop: StopReason) =>
  answer(stopView, {
    id: stop.id,
    code: stop.code,
    about: showSubject(stop.about),
    sentence: stop.sentence,
    wayOut: stop.wayOut,
    answered: stop.answered,
    from: stop.from,
    entryId: stop.entryId,
    line: stop.line,
    since: stop.since,
  });

export const notToRunView = z
  .object({
    id: z.string(),
    about: subjectView,
    what: z.enum(['run', 'fit']).meta({ description: 'the engine as it is, or parts not fitted yet' }),
    sentence: z.string(),
    wayOut: z.string(),
  })
  .meta({ id: 'NotToRun', description: 'why nobody runs it as it is, or fits what is planned' });

export const showNotToRun = ({ id, about, what, sentence, wayOut }: NotToRun) =>
  answer(notToRunView, { id, about: showSubject(about), what, sentence, wayOut });

/** Everything that is said about a build, as JSON has it; every page shows these sentences and no others. */
export const assessmentView = z
  .object({
    headlines: z.array(headlineView),
    stop: z.array(stopView),
    notToRun: z.array(notToRunView),
    next: nextView.optional(),
    missing: z.array(z.object({ id: z.string(), step, sentence: z.string(), must: z.boolean() })),
    judgements: z.array(judgementView),
    questions: z.array(assessedQuestionView),
    quantities: z.array(assessedQuantityView),
    explanations: z.array(assessedExplanationView),
    remaining: z.array(z.object({ about: subjectView, names: z.array(z.number()) })),
  })
  .meta({ id: 'Assessment' });

export const showAssessment = (assessment: Assessment) =>
  answer(assessmentView, {
    headlines: assessment.headlines.map(showHeadline),
    stop: assessment.stop.map(showStop),
    notToRun: assessment.notToRun.map(showNotToRun),
    next: assessment.next === undefined ? undefined : showNext(assessment.next),
    missing: assessment.missing,
    judgements: assessment.judgements.map(showJudgement),
    questions: assessment.questions.map(showQuestion),
    quantities: assessment.quantities.map(showQuantity),
    explanations: assessment.explanations.map(showExplained),
    remaining: assessment.remaining.map(({ about, names }) => ({ about: showSubject(about), names })),
  });
