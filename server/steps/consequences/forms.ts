import { z } from 'zod';
import { keepConsequences } from '../../assessment/consequences/consequences.ts';
import { specFormPost } from '../../call/spec/spec-form-post.ts';
import { freeForm, type StepForm } from '../../call/step-form.ts';
import { notFound } from '../../problems/failure.ts';

const uuid = z.uuid();

/** Puts the figures that the page shows on the record. */
const keepForm = freeForm({
  path: '/consequences',
  run: async ({ tx, principal, call, req }) => {
    const id = uuid.safeParse(req.fields.setUpId);
    if (!id.success) throw notFound('set-up');
    await keepConsequences(tx, principal, call.buildId, id.data);
    return { step: `consequences?set-up=${id.data}` };
  },
});

/** Keeps what was taken on the engine as a new revision. */
const clearancesForm = specFormPost({
  path: '/spec/clearances',
  reason: 'gaps taken on the engine',
  to: () => ({ step: 'consequences' }),
});

export const consequencesForms: readonly StepForm[] = [keepForm, clearancesForm];
