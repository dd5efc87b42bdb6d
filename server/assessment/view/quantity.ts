import { z } from 'zod';
import { UNITS, type Unit } from '../../../shared/quantities/units.ts';
import { answer } from '../../../shared/schemas/answer.ts';
import type { AssessedQuantity, Dimension } from '../../mechanics/assessment/assessment.ts';
import { ids, showSubject, subjectView, texts } from './subject.ts';

/** The unit that each dimension goes out in; a ratio has the unit one. */
const UNIT = { ratio: '1', length: 'in', load: 'lbf', angle: 'deg' } as const satisfies Record<
  Dimension,
  Unit | '1'
>;

export const assessedQuantityView = z
  .object({
    id: z.string(),
    name: z.string(),
    about: subjectView,
    unit: z.enum(Object.values(UNIT)).meta({ description: 'of value, low and high; 1 for a ratio' }),
    value: z.number().optional(),
    low: z.number().optional().meta({ description: 'lower end of the 95 % interval' }),
    high: z.number().optional().meta({ description: 'upper end of the 95 % interval' }),
    basis: z.enum(['measured', 'calculated', 'drawn', 'stated', 'planned']),
    conditions: texts.meta({ description: 'what it holds for' }),
    lacks: texts.meta({ description: 'what must be known before it can be given, or believed' }),
    restsOn: ids.meta({ description: 'entries of the record' }),
  })
  .meta({ id: 'AssessedQuantity' });

export function showQuantity(quantity: AssessedQuantity) {
  const unit = UNIT[quantity.dimension];
  const out = (si: number | undefined) => (si === undefined || unit === '1' ? si : si / UNITS[unit].toSi);
  return answer(assessedQuantityView, {
    id: quantity.id,
    name: quantity.name,
    about: showSubject(quantity.about),
    unit,
    value: out(quantity.value),
    low: out(quantity.low),
    high: out(quantity.high),
    basis: quantity.basis,
    conditions: quantity.conditions,
    lacks: quantity.lacks,
    restsOn: quantity.restsOn,
  });
}
