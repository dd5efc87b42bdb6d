import { formatNumber } from '../../../shared/quantities/format.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import type { AssessedQuantity } from '../../mechanics/assessment/assessment.ts';
import { ratioSaid, subjectSaid } from '../../mechanics/assessment/common/said.ts';
import { tableComponent } from '../../web/components.ts';

function ratioText({ value, low, high }: AssessedQuantity): string {
  if (value !== undefined && high !== undefined)
    return `${ratioSaid(value)}\u00a0±\u00a0${formatNumber(high - value, 3)}`;
  return [low, high].flatMap((end) => (end === undefined ? [] : [ratioSaid(end)])).join(' to ');
}

/** Ratios of the per-valve sheet: nobody reads a valve in a set-up for a figure that is there already. */
export function fromSheetComponents({ assessment, base }: CallContext): Component[] {
  const { ratios } = assessment.details.sheet;
  const quantities = ratios.flatMap(
    ({ quantityId }) => assessment.quantities.find(({ id }) => id === quantityId) ?? [],
  );
  if (quantities.length === 0) return [];
  return [
    foldComponent('ratios-of-the-sheet', `Ratios of the per-valve sheet: ${quantities.length}`, [
      tableComponent({
        caption: 'Ratios of the per-valve sheet',
        columns: [{ label: 'Valve' }, { label: 'Ratio', number: true }, { label: 'Holds for' }],
        rows: quantities.map((quantity) => ({
          cells: [
            subjectSaid(quantity.about),
            { text: ratioText(quantity), href: `${base}/steps/sheet` },
            {
              text: quantity.conditions.join(', '),
              ...(quantity.lacks.length === 0 ? {} : { why: `lacks ${quantity.lacks.join('; ')}` }),
            },
          ],
        })),
        note: 'A sheet does not say how the lash was, so these are set against no mark; a set-up of the valve is.',
      }),
    ]),
  ];
}
