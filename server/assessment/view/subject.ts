import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { valveView } from '../../../shared/schemas/answer-parts.ts';
import type { Subject } from '../../mechanics/assessment/assessment.ts';

export const ids = z.array(z.string());
export const texts = z.array(z.string());

export const subjectView = z
  .object({
    of: z.enum(['build', 'part', 'valve', 'side', 'set-up', 'arm']),
    cylinder: z.int().optional(),
    valve: valveView.optional(),
    setUpId: z.uuid().optional(),
    armId: z.uuid().optional(),
    partId: z.uuid().optional().meta({ description: 'which part in the hand; the first has none' }),
  })
  .meta({ id: 'Subject', description: 'what something is said of' });

export const showSubject = (about: Subject) =>
  answer(subjectView, {
    of: about.of,
    cylinder: 'cylinder' in about ? about.cylinder : undefined,
    valve: 'valve' in about ? about.valve : undefined,
    setUpId: 'setUpId' in about ? about.setUpId : undefined,
    armId: 'armId' in about ? about.armId : undefined,
    partId: 'partId' in about ? about.partId : undefined,
  });
