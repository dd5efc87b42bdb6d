import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { inInches, quantityView } from '../../../shared/schemas/answer-parts.ts';
import type { Against, Judgement } from '../../mechanics/assessment/assessment.ts';
import { ids, showSubject, subjectView, texts } from './subject.ts';

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
