import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { valveView } from '../../../shared/schemas/answer-parts.ts';
import { STEP_NAMES } from '../../../shared/steps.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import type { NoiseCandidate, NoiseCheck } from '../../mechanics/assessment/noise/detail.ts';
import { CAUSE_NAMES } from '../../mechanics/noise/causes.ts';
import { headlineView, showHeadline } from '../view/headline.ts';
import { assessedQuestionView, showQuestion } from '../view/question.ts';
import { showStop, stopView } from '../view/stop.ts';
import { ids } from '../view/subject.ts';

/** Stops that are told in this step. */
const OF_NOISE: ReadonlySet<string> = new Set(['sign-of-damage', 'part-damaged', 'lash-grew-again']);

const factView = z.object({ text: z.string(), restsOn: ids });

const candidateView = z
  .object({
    cause: z.enum(CAUSE_NAMES),
    said: z.string(),
    source: z.string(),
    for: z.array(factView),
    against: z.array(factView),
    seen: z.boolean().meta({ description: 'it was itself seen bad' }),
    remains: z
      .boolean()
      .meta({ description: 'it has least against it, or was seen bad: still to be told apart' }),
  })
  .meta({ id: 'NoiseCandidate' });

const checkView = z
  .object({
    code: z.string().meta({ description: 'of its question; lash and lobe are read' }),
    sentence: z.string(),
    step: z.enum(STEP_NAMES),
    turns: z.boolean(),
    how: z.string(),
    pairs: z.int().meta({
      description: 'pairs of the causes near the first that it tells apart, in the mean of its answers',
    }),
  })
  .meta({ id: 'NoiseCheck' });

export const noiseView = z
  .object({
    active: z.boolean().meta({ description: 'the call is about it, or something of it was answered' }),
    cylinder: z.int().optional().meta({ description: 'the one valve that it is' }),
    valve: valveView.optional(),
    questions: z
      .array(assessedQuestionView)
      .meta({ description: 'all of them; answered with answerQuestion by id, and again to put it right' }),
    candidates: z.array(candidateView).meta({ description: 'every cause; none of it is a verdict' }),
    howOrdered: z.string(),
    checks: z.array(checkView).meta({ description: 'what would tell causes apart, in its order' }),
    nearest: z
      .object({ causes: z.array(z.string()), check: checkView })
      .optional()
      .meta({ description: 'the first two, and the check that would tell them apart' }),
    headlines: z.array(headlineView),
    stop: z
      .array(stopView)
      .meta({ description: 'signs of damage that were told, until the desk lifts them' }),
  })
  .meta({ id: 'Noise' });

const showFacts = (facts: NoiseCandidate['for']) =>
  facts.map(({ text, restsOn }) => answer(factView, { text, restsOn }));

const showCandidate = (candidate: NoiseCandidate) =>
  answer(candidateView, {
    cause: candidate.cause,
    said: candidate.said,
    source: candidate.source,
    for: showFacts(candidate.for),
    against: showFacts(candidate.against),
    seen: candidate.seen,
    remains: candidate.remains,
  });

const showCheck = ({ code, sentence, step, turns, how, pairs }: NoiseCheck) =>
  answer(checkView, { code, sentence, step, turns, how, pairs });

/** What noise or a failure may come of, as the assessment has it. */
export function showNoise({ details: { noise }, headlines, stop }: Assessment) {
  const { nearest } = noise;
  return answer(noiseView, {
    active: noise.active,
    cylinder: noise.place?.cylinder,
    valve: noise.place?.valve,
    questions: noise.questions.map(showQuestion),
    candidates: noise.candidates.map(showCandidate),
    howOrdered: noise.howOrdered,
    checks: noise.checks.map(showCheck),
    nearest: nearest === undefined ? undefined : { causes: nearest.causes, check: showCheck(nearest.check) },
    headlines: headlines.filter(({ step }) => step === 'noise').map(showHeadline),
    stop: stop.filter(({ code }) => OF_NOISE.has(code)).map(showStop),
  });
}
