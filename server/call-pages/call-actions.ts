import {
  closeCall as closeInput,
  setHold as holdInput,
  liftHold as liftInput,
} from '../../shared/schemas/commands.ts';
import { liftStop } from '../assessment/stops/lift-stop.ts';
import { stepForm } from '../call/step-form.ts';
import { closeCall } from '../records/calls/change-call.ts';
import { setHold } from '../records/calls/hold.ts';

/** Said from either side; a stop without a reason is a stop all the same. */
export const holdForm = stepForm({
  path: '/hold',
  schema: holdInput,
  fields: ({ reason = '' }, { principal }) => ({
    reason: reason.trim() === '' ? `${principal.name} said stop` : reason.trim(),
  }),
  run: async ({ reason }, { tx, principal, call }) => {
    await setHold(tx, principal, call.id, reason);
    return { step: 'triage' };
  },
});

export const liftForm = stepForm({
  path: '/hold/lift',
  side: 'desk',
  schema: liftInput,
  run: async ({ reason }, { tx, principal, call }) => {
    await liftStop(tx, principal, call.id, reason);
    return { page: '' };
  },
});

export const closeForm = stepForm({
  path: '/close',
  side: 'desk',
  schema: closeInput,
  run: async ({ outcome }, { tx, principal, call }) => {
    await closeCall(tx, principal, call.id, outcome);
    return { goTo: '/calls' };
  },
});
