import { atBench, firstAt, type PartForm } from '../../../call/worked/part-form.ts';
import { quantityField } from '../../../web/forms/fields.ts';

const LABELS = { before: 'Before TDC, at the stop', after: 'After TDC, at the stop' };

/** Two readings at the stop. The computation has the one after TDC first. */
export const stopForm: PartForm = {
  labels: LABELS,
  button: 'Save both readings',
  allOf: ['before', 'after'],
  initial: () => ({}),
  groups: (shown, context) => [
    {
      columns: true,
      slots: [
        quantityField(shown, 'before', LABELS.before, 'angle', {
          hint: 'Turned in running direction until it touches.',
          ...firstAt(context),
        }),
        quantityField(shown, 'after', LABELS.after, 'angle', {
          hint: 'Turned back the other way until it touches.',
          ...atBench(context),
        }),
      ],
    },
  ],
  toTyped: ({ before = '', after = '' }) => ({ stopReadings: `${after}\n${before}` }),
  faultAt: ({ field, detail }) => {
    const which = /^no\. ([12]) /.exec(detail)?.[1];
    return field === 'stopReadings'
      ? { field: which === '1' ? 'after' : 'before', detail: detail.replace(/^no\. [12] /, '') }
      : { field, detail };
  },
};
