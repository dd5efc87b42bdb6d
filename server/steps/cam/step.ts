import type { CallContext } from '../../call/context.ts';
import type { StepBody } from '../../call/forms.ts';
import { CAM_GROUPS } from '../../call/spec/spec-fields.ts';
import { specFormPost } from '../../call/spec/spec-form-post.ts';
import { afterSpec, type SpecStep, specPage } from '../../call/spec/spec-page.ts';
import { defineStep } from '../../call/step.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';

const STEP: SpecStep = { name: 'cam', groups: CAM_GROUPS };

/** A cam that works on the bucket itself has no rocker to ask about. */
function wordsFor({ assessment }: CallContext): Pick<StepBody, 'words'> {
  if (assessment.details.gear.gear !== 'bucket') return {};
  return {
    words: {
      say: 'What lift does the card give for each valve, and which lash?',
      how: 'Copy the card word for word. The lift of the lobe is that of the valve, less the lash.',
    },
  };
}

/** The cam card. */
export const camStep = defineStep({
  name: 'cam',
  key: '3',
  words: {
    title: 'Read out the cam card',
    link: 'Cam card',
    say: 'What lobe lift does the card give for each valve, and which rocker ratio does it assume?',
    how: 'Copy the card word for word. Lobe lift is the rise of the lifter, not of the valve.',
    turns: false,
  },
  load: () => undefined,
  page: (_, input) => ({ ...specPage(STEP, input), ...wordsFor(input.context) }),
  forms: [specFormPost({ path: '/spec/cam', reason: 'cam card', to: ({ part }) => afterSpec(STEP, part) })],
  corrections: [],
  told: {},
  cautions: () => [],
  report: () => [],
  takeover: () => [],
  worksheet: () => NO_ROWS,
});
