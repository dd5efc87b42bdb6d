import { triage } from '../../../shared/schemas/commands.ts';
import { must } from '../../call/needs.ts';
import { defineStep, NO_FINDINGS } from '../../call/step.ts';
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
    title: 'Ask before anything is turned',
    link: 'First question',
    say: 'Does it run, has it run, or is it apart? Did anything hit, bend, come loose or turn tight?',
    how: 'Look before you turn anything: bent pushrods, a loose rocker, a tight spot, metal in the oil.',
  },
  load: () => undefined,
  needs: ({ call }) => [
    must('runs, has run or apart', call.engineState !== 'not-asked'),
    must('anything hit, bent, loose or tight', call.contact !== 'not-asked'),
    ...(call.held ? [must('the hold to be lifted', false)] : []),
  ],
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
  findings: () => NO_FINDINGS,
  cautions: () => [],
  report: () => [],
  takeover: () => [],
  worksheet: () => NO_ROWS,
});
