import { inSpoken } from '../../../../shared/quantities/authored.ts';
import type { CallContext } from '../../../call/context.ts';
import { inField, lastInput } from '../../../call/worked/in-field.ts';
import { knownOf } from '../../../call/worked/known-inputs.ts';
import { atBench, firstAt, type PartForm, sameField } from '../../../call/worked/part-form.ts';
import { stillStanding } from '../../../records/corrections/entries.ts';
import type { PartReading } from '../../../records/part-readings/part-readings.ts';
import { areaField, quantityField } from '../../../web/forms/fields.ts';

const LABELS = {
  pivotHeight: 'Pivot’s middle over the face',
  tipHeight: 'Stem’s end over the same face',
  rollerRadius: 'Roller’s radius',
  pivotToTip: 'Pivot to the roller’s middle',
  netLift: 'Net lift of the valve',
  shims: 'Shims that can be had',
};

/** What was read of the part in the hand, where one reading of it stands. */
const readOfPart = ({ partReadings }: CallContext, kind: PartReading['kind']) =>
  stillStanding(partReadings).findLast((reading) => reading.kind === kind)?.size;

const half = (size: { readonly value: number; readonly unit: string } | undefined) =>
  size === undefined ? undefined : { ...size, value: Number((size.value / 2).toFixed(6)) };

/** Two heights over one face: how far the stand is to be raised, and by which shim. */
export const standForm: PartForm = {
  labels: LABELS,
  button: 'Save the height',
  initial: (context, workings) => {
    const { netLift, pivotToTip } = knownOf('stand-height', context.build.spec);
    const last = (name: string) => lastInput(workings, ['stand-height', 'roller-sweep'], name);
    return {
      netLift: inField(netLift ?? last('netLift')),
      pivotToTip: inField(pivotToTip ?? readOfPart(context, 'pivot-to-tip') ?? last('pivotToTip')),
      rollerRadius: inField(half(readOfPart(context, 'roller-diameter')) ?? last('rollerRadius')),
    };
  },
  groups: (shown, context) => [
    {
      columns: true,
      slots: [
        quantityField(shown, 'pivotHeight', LABELS.pivotHeight, 'length', {
          hint: 'Along the valve, from one face of the head.',
          ...firstAt(context),
        }),
        quantityField(shown, 'tipHeight', LABELS.tipHeight, 'length', {
          hint: 'Valve shut, from the same face; below it negative.',
          ...atBench(context),
        }),
        quantityField(shown, 'rollerRadius', LABELS.rollerRadius, 'length', {
          optional: true,
          hint: 'Half of what a caliper reads across it. Empty: the height above is of the roller’s middle.',
        }),
        quantityField(shown, 'pivotToTip', LABELS.pivotToTip, 'length'),
        quantityField(shown, 'netLift', LABELS.netLift, 'length', { hint: 'At the valve, lash taken off.' }),
      ],
    },
    {
      slots: [
        areaField(shown, 'shims', LABELS.shims, {
          optional: true,
          rows: 2,
          hint: inSpoken('Each used alone; a stack as its sum: .015, .030, .060.'),
        }),
      ],
    },
  ],
  toTyped: ({
    pivotHeight = '',
    tipHeight = '',
    rollerRadius = '',
    pivotToTip = '',
    netLift = '',
    shims = '',
  }) => ({
    pivotHeight,
    tipHeight,
    rollerRadius,
    pivotToTip,
    netLift,
    shims,
  }),
  faultAt: sameField,
};
