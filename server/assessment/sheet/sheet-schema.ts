import { z } from 'zod';
import { valveView as side, valveView } from '../../../shared/schemas/answer-parts.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { sheetReadingView } from '../../records/sheet/view.ts';
import { headlineView } from '../view/headline.ts';
import { judgementView } from '../view/judgement.ts';
import { assessedQuestionView } from '../view/question.ts';

const cell = z.object({
  kind: z.string(),
  spring: z.string().optional().meta({ description: 'of a valve lift' }),
  value: out('length', 'mean of the passes that go together; left out between two gauges').optional(),
  low: out('length', 'the gauge that goes, or the lower end').optional(),
  high: out('length', 'the gauge that does not, or the upper end').optional(),
  passes: z.int(),
  spread: out('length', 'largest less smallest pass').optional(),
  apart: z.array(z.string()).meta({ description: 'passes that stand apart and are not in the figure' }),
  readAgain: z.array(z.string()).meta({
    description:
      'passes that were taken again once an answer found them wrong, or that a set-up of the valve speaks against: not in the figure',
  }),
  verdict: z.enum(['clear', 'close', 'short']).optional(),
  judgementId: z.string().optional(),
  because: z.array(z.string()).meta({ description: 'what it still lacks' }),
  readingIds: z.array(z.uuid()),
});

const valve = z.object({
  cylinder: z.int(),
  valve: side,
  armId: z.uuid().optional(),
  figures: z.array(cell),
  questionIds: z.array(z.string()),
  inDoubt: z.boolean().meta({ description: 'not set against the others before its question is answered' }),
});

const ratio = z.object({
  cylinder: z.int(),
  valve: side,
  value: z.number().optional(),
  low: z.number().optional(),
  high: z.number().optional(),
  lobeFrom: z.enum(['read', 'card']),
});

const odd = z.object({
  cylinder: z.int(),
  valve: side,
  valveOff: out('length', 'valve lift less the median of the others').optional(),
  lobeOff: out('length', 'lobe lift less the median of the others').optional(),
  outlier: z.boolean(),
  cause: z.enum([
    'lobe',
    'rocker-or-position',
    'part',
    'position',
    'mark',
    'both',
    'measure-lobe',
    'cannot-tell',
  ]),
  words: z.string(),
  judgementId: z.string(),
  swap: z.string().meta({ description: 'the swap that would decide' }).optional(),
});

const onSpring = z.object({
  spring: z.string(),
  quantity: z.enum(['light-spring ratio', 'running-spring ratio', 'not known']),
  ratios: z.array(ratio),
  sides: z.array(
    z.object({
      side,
      medians: z.object({
        lobeLift: out('length', 'median lobe lift').optional(),
        valveLift: out('length', 'median valve lift').optional(),
        ratio: z.number().optional(),
      }),
      odd: z.array(odd),
      lobesDown: z.array(
        z.object({ cylinder: z.int(), valve: valveView, by: out('length', 'below the others') }),
      ),
    }),
  ),
  swaps: z.array(
    z.object({
      side,
      armIds: z.array(z.uuid()),
      places: z.array(z.string()),
      part: out('length', 'first arm less second, where all four were read').optional(),
      position: out('length', 'first valve less second, where all four were read').optional(),
      verdict: z.enum(['part', 'position', 'both', 'cannot-tell']),
      oddArmId: z.uuid().optional().meta({ description: 'the arm that differs from the others' }),
      oddPlace: z.string().optional().meta({ description: 'the valve that differs from the others' }),
      needs: z.array(z.string()),
      words: z.string(),
      judgementId: z.string(),
    }),
  ),
});

export const sheetView = z
  .object({
    order: z.enum(['firing', 'bank']),
    cylinders: z.array(z.int()),
    valves: z.array(valve),
    springs: z.array(onSpring),
    headlines: z.array(headlineView),
    judgements: z.array(judgementView),
    questions: z.array(assessedQuestionView),
    stop: z.boolean().meta({ description: 'nobody turns it: see the stop of the assessment' }),
    readings: z.array(sheetReadingView),
  })
  .meta({ id: 'Sheet' });
