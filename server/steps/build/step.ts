import { notCoveredComponents } from '../../call/not-covered.ts';
import { questionCards, questionsOf } from '../../call/question-form.ts';
import { onTheBack } from '../../call/report-parts.ts';
import { BUILD_GROUPS } from '../../call/spec/spec-fields.ts';
import { specFormPost } from '../../call/spec/spec-form-post.ts';
import { afterSpec, type SpecStep, specPage } from '../../call/spec/spec-page.ts';
import { defineStep } from '../../call/step.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { buildReport } from './report.ts';

const STEP: SpecStep = { name: 'build', groups: BUILD_GROUPS };

/** The engine and its springs. */
export const buildStep = defineStep({
  name: 'build',
  key: '2',
  words: {
    title: 'Write down the engine and its springs',
    link: 'Engine and springs',
    say: 'Which block and head is it, pushrods or an overhead cam, which lifter, and how are the rockers mounted?',
    how: 'Enter what you know for certain. What you don’t know stays empty, and can be added at any time.',
    turns: false,
  },
  load: () => undefined,
  page: (_, input) => {
    const { forms, slots, ...rest } = specPage(STEP, input);
    const cards = questionCards(input.context, questionsOf(input.context, 'build'), input.rejected);
    return {
      ...rest,
      forms: [...forms, ...cards.forms],
      slots: [...cards.slots, ...slots, ...notCoveredComponents(input.context)],
    };
  },
  forms: [
    specFormPost({
      path: '/spec/build',
      reason: 'engine and springs',
      to: ({ part }) => afterSpec(STEP, part),
    }),
  ],
  corrections: [],
  told: {},
  cautions: () => [],
  report: (_, { build }) => [{ name: 'build', ...onTheBack([buildReport(build)]) }],
  takeover: () => [],
  worksheet: () => NO_ROWS,
});
