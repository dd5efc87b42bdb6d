import { inSpoken } from '../../../../shared/quantities/authored.ts';
import type { CallContext } from '../../../call/context.ts';
import { atBench, firstAt, type PartForm } from '../../../call/worked/part-form.ts';
import { quantityField } from '../../../web/forms/fields.ts';

const LABELS = {
  toValve: 'Pivot to the valve, valve shut',
  toCam: 'Pivot to the cam’s contact, valve shut',
  toValveOpen: 'Pivot to the valve, at full lift',
  toCamOpen: 'Pivot to the cam’s contact, at full lift',
  within: 'Each may be off by',
};

const FIELDS: Readonly<Record<string, string>> = {
  'shut.toValve.value': 'toValve',
  'shut.toCam.value': 'toCam',
  'open.toValve.value': 'toValveOpen',
  'open.toCam.value': 'toCamOpen',
  'shut.toValve.errorLimit': 'within',
  'shut.toCam.errorLimit': 'within',
  'open.toValve.errorLimit': 'within',
  'open.toCam.errorLimit': 'within',
};

const isRocker = ({ assessment }: CallContext): boolean => assessment.details.gear.gear === 'cam-rocker';

/** Both arms with the valve shut, and where it can be seen at full lift: one ± for all, as one tool has it. */
export const followerForm: PartForm = {
  labels: LABELS,
  button: 'Save the arms',
  initial: () => ({ within: inSpoken('.010 in') }),
  groups: (shown, context) => [
    {
      columns: true,
      hint: isRocker(context)
        ? 'The pivot lies between the cam and the valve. Each arm is measured from the pivot’s middle, square to the line of push.'
        : 'The pivot is at one end, the valve at the other, the cam between. Each arm is measured from the pivot’s middle, square to the line of push.',
      slots: [
        quantityField(shown, 'toValve', LABELS.toValve, 'length', firstAt(context)),
        quantityField(shown, 'toCam', LABELS.toCam, 'length', atBench(context)),
        quantityField(shown, 'toValveOpen', LABELS.toValveOpen, 'length', { optional: true }),
        quantityField(shown, 'toCamOpen', LABELS.toCamOpen, 'length', {
          optional: true,
          hint: 'As the lobe’s nose pushes: the contact has moved.',
        }),
        quantityField(shown, 'within', LABELS.within, 'length', {
          hint: inSpoken('Between centres by caliper .010 in (common practice, no published source).'),
        }),
      ],
    },
  ],
  toTyped: ({ toValve = '', toCam = '', toValveOpen = '', toCamOpen = '', within = '' }) => ({
    'shut.toValve.value': toValve,
    'shut.toValve.errorLimit': within,
    'shut.toCam.value': toCam,
    'shut.toCam.errorLimit': within,
    ...(toValveOpen.trim() === '' && toCamOpen.trim() === ''
      ? {}
      : {
          'open.toValve.value': toValveOpen,
          'open.toValve.errorLimit': within,
          'open.toCam.value': toCamOpen,
          'open.toCam.errorLimit': within,
        }),
  }),
  faultAt: ({ field, detail }) => ({ field: FIELDS[field] ?? field, detail }),
};
