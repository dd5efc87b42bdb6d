import { triage } from '../../../shared/schemas/commands.ts';
import { defineStep } from '../../call/step.ts';
import { stepForm } from '../../call/step-form.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { recordTriage } from '../../records/calls/hold.ts';
import { TRIAGE_TOLD } from './tape-text.ts';
import { triagePage } from './triage-page.ts';

/** The first question: what happened to the engine, and whether it may be turned at all. */
export const triageStep = defineStep({
  name: 'triage',
  key: '1',
  words: {
    title: 'Settle this before anything is turned',
    link: 'First question',
    say: 'Does it run, has it run, or is it apart? Did anything hit, bend, come loose or turn tight?',
    how: 'Look before you turn anything: bent pushrods, a loose rocker, a tight spot, metal in the oil.',
    turns: false,
  },
  load: () => undefined,
  page: (_, { context, rejected }) => triagePage(context, rejected),
  forms: [
    stepForm({
      path: '/triage',
      schema: triage,
      run: async (input, { tx, principal, call }) => {
        const { held } = await recordTriage(tx, principal, call.id, input);
        return held ? { step: 'triage' } : { page: '' };
      },
    }),
  ],
  corrections: [],
  told: TRIAGE_TOLD,
  cautions: () => [],
  report: () => [],
  takeover: () => [],
  worksheet: () => NO_ROWS,
});
