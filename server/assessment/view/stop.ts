import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import type { NotToRun, StopReason } from '../../mechanics/assessment/assessment.ts';
import { showSubject, subjectView } from './subject.ts';

export const stopView = z
  .object({
    id: z.string(),
    code: z.enum([
      'held',
      'contact',
      'gap-short',
      'lash-grew-again',
      'lobe-worn',
      'mark-at-the-edge',
      'part-damaged',
      'plunger-bottomed',
      'sign-of-damage',
    ]),
    about: subjectView,
    sentence: z.string(),
    wayOut: z.string(),
    answered: z.boolean().meta({ description: 'a person may lift it, with a reason' }),
    from: z.enum(['person', 'readings']),
    entryId: z.string().optional(),
    line: z.int().optional(),
    since: z.iso.datetime().optional(),
    restsOn: z.array(z.string()).meta({
      description: 'entries it would not stand without: the desk alone strikes them out or replaces them',
    }),
  })
  .meta({ id: 'StopReason' });

export const showStop = (stop: StopReason) =>
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
    restsOn: stop.restsOn,
  });

export const notToRunView = z
  .object({
    id: z.string(),
    about: subjectView,
    what: z
      .enum(['run', 'fit'])
      .meta({ description: 'the engine in its present state, or parts not fitted yet' }),
    sentence: z.string(),
    wayOut: z.string(),
  })
  .meta({ id: 'NotToRun', description: 'why nobody runs it in its present state, or fits what is planned' });

export const showNotToRun = ({ id, about, what, sentence, wayOut }: NotToRun) =>
  answer(notToRunView, { id, about: showSubject(about), what, sentence, wayOut });
