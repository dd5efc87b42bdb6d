import { marksOfArm, newArm, placeArm } from '../../../shared/schemas/commands.ts';
import { onTheBack } from '../../call/report-parts.ts';
import { specFormPost } from '../../call/spec/spec-form-post.ts';
import { defineStep } from '../../call/step.ts';
import { stepForm } from '../../call/step-form.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { addArm } from '../../records/arms/arms.ts';
import { markArm } from '../../records/arms/marks.ts';
import { placeArmOnValve } from '../../records/arms/placements.ts';
import { partsPage } from './parts-page.ts';
import { armsReport } from './report.ts';
import { markItems } from './takeover.ts';
import { ARMS_TOLD } from './tape-text.ts';

/** The arms with their marks, and which valve each sits on. */
export const partsStep = defineStep({
  name: 'parts',
  key: '4',
  words: {
    title: 'Tell the arms apart, and where each one sits',
    link: 'Rocker arms',
    say: 'What looks like a ratio on the arm? What else is on it? What does the box say? One after the other, word for word.',
    how: 'Clean the mark, read it word for word. Put a felt-pen letter on each arm before you move it.',
    turns: false,
  },
  load: () => undefined,
  page: (_, input) => partsPage(input),
  forms: [
    specFormPost({
      path: '/spec/rockers',
      reason: 'what the rockers are sold as',
      to: () => ({ step: 'parts' }),
    }),
    stepForm({
      path: '/arms',
      schema: newArm,
      run: async (input, { tx, principal, call }) => {
        await addArm(tx, principal, call.buildId, input);
        return { step: 'parts' };
      },
    }),
    stepForm({
      path: '/arms/marks',
      schema: marksOfArm,
      run: async (
        { armId, ratioStamp, otherNumber, boxLabel, reason },
        { tx, principal, call: { buildId } },
      ) => {
        // A field that was left empty says nothing of its mark.
        const told = (mark: string | undefined) => (mark === '' ? undefined : mark);
        const marks = {
          ratioStamp: told(ratioStamp),
          otherNumber: told(otherNumber),
          boxLabel: told(boxLabel),
          reason,
        };
        await markArm(tx, principal, { buildId, armId }, marks);
        return { step: 'parts' };
      },
    }),
    stepForm({
      path: '/placements',
      schema: placeArm,
      run: async (input, { tx, principal, call }) => {
        await placeArmOnValve(tx, principal, call.buildId, input);
        return { step: 'parts' };
      },
    }),
  ],
  corrections: [],
  told: ARMS_TOLD,
  cautions: () => [],
  report: (_, context) => [{ name: 'arms', ...onTheBack(armsReport(context)) }],
  takeover: (_, context) => markItems(context),
  worksheet: () => ({
    ...NO_ROWS,
    blanks: [
      'Arm, as marked with a pen',
      'Ratio stamp, word for word',
      'Other number, word for word',
      'Box label, word for word',
    ],
  }),
});
