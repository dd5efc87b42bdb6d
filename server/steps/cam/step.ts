import { CAM_GROUPS } from '../../call/spec/spec-fields.ts';
import { specFormPost } from '../../call/spec/spec-form-post.ts';
import { afterSpec, type SpecStep, specPage } from '../../call/spec/spec-page.ts';
import { defineStep } from '../../call/step.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';

const STEP: SpecStep = { name: 'cam', groups: CAM_GROUPS };

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
  page: (_, input) => specPage(STEP, input),
  forms: [specFormPost({ path: '/spec/cam', reason: 'cam card', to: ({ part }) => afterSpec(STEP, part) })],
  corrections: [],
  told: {},
  cautions: () => [],
  report: () => [],
  takeover: () => [],
  worksheet: () => NO_ROWS,
});
