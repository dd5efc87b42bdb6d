import type { Evidence } from '../../server/mechanics/assessment/evidence.ts';
import type { SheetReading } from '../../server/records/sheet/sheet-table.ts';
import { nothingKnown } from '../mechanics/assessment/plain.ts';

export { IN } from '../mechanics/assessment/plain.ts';

/** A build of which one lash is on record. */
export const PLAIN_LASH: Evidence = {
  ...nothingKnown,
  lash: [
    {
      id: 'lash-1',
      line: 7,
      standing: true,
      cylinder: 1,
      valve: 'intake',
      gap: { value: 0.016 * 0.0254 },
      readAs: '.016 in',
      moment: 'found',
      engine: 'cold',
      nut: 'held',
      day: '2026-03-10',
    },
  ],
};

/** A valve lift of 5 intake as it stands on the record, its arm not named. */
export const sheetEntry = (id: string, seq: number, lift: number): SheetReading => ({
  id,
  seq,
  replaces: undefined,
  replacedBy: undefined,
  struck: false,
  reason: '',
  by: 'Robin',
  byKind: 'staff',
  at: new Date('2026-03-01T09:00:00Z'),
  cylinder: 5,
  valve: 'intake',
  kind: 'valve-lift',
  reading: { typed: 'as read', readAs: 'as read', unit: 'in', value: lift / 0.0254 },
  tool: 'indicator',
  spring: 'light',
  lifter: 'solid',
  arms: 'these',
  armId: undefined,
});
