import { inField } from '../../../call/worked/in-field.ts';
import { knownOf } from '../../../call/worked/known-inputs.ts';
import { atBench, firstAt, type PartForm, sameField } from '../../../call/worked/part-form.ts';
import { quantityField, selectField } from '../../../web/forms/fields.ts';

const SET_AT = {
  'mid-lift': 'At half lift, as it should be',
  closed: 'With the valve closed',
  open: 'At full lift',
} as const;

const LABELS = {
  pivotToTip: 'Pivot to the roller’s middle',
  netLift: 'Net lift of the valve',
  setAt: 'Square to the stem',
};

/** Arm and lift: the least the roller can sweep. */
export const sweepForm: PartForm = {
  labels: LABELS,
  button: 'Save the sweep',
  initial: (context) => {
    const { pivotToTip, netLift } = knownOf('roller-sweep', context.build.spec);
    return { pivotToTip: inField(pivotToTip), netLift: inField(netLift), setAt: 'mid-lift' };
  },
  groups: (shown, context) => [
    {
      columns: true,
      slots: [
        quantityField(shown, 'pivotToTip', LABELS.pivotToTip, 'length', {
          hint: 'From the middle of the trunnion to the middle of the roller.',
          ...firstAt(context),
        }),
        quantityField(shown, 'netLift', LABELS.netLift, 'length', {
          hint: 'At the valve, lash taken off.',
          ...atBench(context),
        }),
        selectField(shown, 'setAt', LABELS.setAt, SET_AT),
      ],
    },
  ],
  toTyped: ({ pivotToTip = '', netLift = '', setAt = '' }) => ({ pivotToTip, netLift, setAt }),
  faultAt: sameField,
};
