import { keepConsequences } from '../../assessment/consequences/keep.ts';
import { specFormPost } from '../../call/spec/spec-form-post.ts';
import { freeForm, type StepForm } from '../../call/step-form.ts';

/** Puts the figures of one valve, or of one side, on the record. */
const keepForm = freeForm({
  path: '/consequences',
  run: async ({ tx, principal, call, req }) => {
    const { about = '' } = req.fields;
    await keepConsequences(tx, principal, call.buildId, { key: about, callId: call.id });
    return { step: 'consequences' };
  },
});

/** Keeps what was taken on the engine as a new revision. */
const clearancesForm = specFormPost({
  path: '/spec/clearances',
  reason: 'gaps taken on the engine',
  to: () => ({ step: 'consequences' }),
});

export const consequencesForms: readonly StepForm[] = [keepForm, clearancesForm];
