import { correctTipMark } from '../../../shared/schemas/tip-mark.ts';
import { formComponent } from '../../call/forms.ts';
import { entryCorrection } from '../../call/step-correction.ts';
import { notFound } from '../../problems/failure.ts';
import { replaceTipMark } from '../../records/tip-marks/tip-marks.ts';
import { MARK_ALONG, markCorrectionForm } from './forms/mark.ts';

/** A mark put right or struck out: the old one stays where it was, with the reason. */
export const markCorrection = entryCorrection({
  path: '/tip-marks/:tipMarkId',
  param: 'tipMarkId',
  entries: ({ record }) => record.tipMarks,
  schema: correctTipMark,
  fields: () => ({ value: 'width', along: MARK_ALONG }),
  find: async () => undefined,
  page({ context }, id, rejected) {
    const mark = context.record.tipMarks.find((each) => each.id === id);
    if (mark === undefined) throw notFound('reading');
    const form = markCorrectionForm(context, mark);
    return {
      title: `Correct: tip mark ${mark.cylinder} ${mark.valve}, line ${mark.seq}`,
      body: { forms: [form], slots: [formComponent(form, rejected)] },
    };
  },
  replace: async (input, _, { tx, principal, call }, id) => {
    await replaceTipMark(tx, principal, call.buildId, id, input);
    return { step: 'geometry?of=marks' };
  },
});
