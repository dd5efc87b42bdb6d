import { defineStep } from '../../call/step.ts';
import { NOT_YET } from '../../call/takeover-items.ts';
import { countedWorkings } from '../../call/worked/counted.ts';
import type { WorkedData } from '../../call/worked/part.ts';
import { strikesWorkings } from '../../call/worked/striking-out.ts';
import { workingText } from '../../call/worked/text.ts';
import { outdatedSaid } from '../../call/worked/told.ts';
import { workedForm } from '../../call/worked/worked-form.ts';
import { workedPage } from '../../call/worked/worked-page.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { timing } from './parts.ts';

const COMPUTATIONS = ['top-dead-centre', 'centreline', 'cam-timing'];

/** Top dead centre, the centreline and the events. */
export const timingStep = defineStep({
  name: 'timing',
  key: 't',
  words: {
    title: 'Find top dead centre and the centreline',
    link: 'Cam timing',
    say: 'What does the wheel read at the stop, one way and the other? And at equal drop on either side of the peak?',
    how: 'Positive stop in, plugs out, turn gently by hand to contact, one way and the other; never the starter. Take the stop out again.',
    turns: true,
  },
  load: ({ context, computations }): WorkedData => ({
    workings: countedWorkings(context, computations),
    computations,
  }),
  page: (loaded, input) => workedPage(timing, loaded, input),
  forms: [workedForm(timing)],
  corrections: [strikesWorkings('timing')],
  told: {},
  cautions: () => [],
  report: () => [],
  takeover: ({ workings, computations }, context) => {
    const last = workings.findLast(({ computation }) => COMPUTATIONS.includes(computation));
    const text = last === undefined ? NOT_YET : workingText(computations, last, outdatedSaid(context, last));
    return [{ card: 'of-goal', label: 'Worked out last:', text }];
  },
  worksheet: () => NO_ROWS,
});
