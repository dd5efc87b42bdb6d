import { z } from 'zod';
import { memberOf } from '../../../shared/member.ts';
import type { FaultCode } from '../../../shared/problems/faults.ts';
import { fieldInfo } from '../../../shared/schemas/field-info.ts';
import { quantityJsonSchema } from '../../../shared/schemas/quantity-fields.ts';
import { type QuantityReading, readQuantity } from '../../../shared/schemas/read-quantity.ts';
import { expansionOf, MATERIAL_NAMES } from './materials.ts';

const ALLOWED = `${MATERIAL_NAMES.join(', ')}, cast iron, aluminium, steel, stainless, titanium, or { "expansion" } in 1/K`;

/** Frozen metal hardly moves and some alloys not at all, but none that engines are built of shrinks. */
const RANGE = { sign: 'not-negative' } as const;

/** A text that is no name may still be a figure: `11.7e-6 1/K`. */
function readText(text: string): QuantityReading {
  const known = expansionOf(text);
  if (known !== undefined) return { ok: true, si: known };
  if (text.trim() === '') return { ok: false, code: 'required', detail: `is empty: ${ALLOWED}` };
  const figure = readQuantity(text, 'expansion', RANGE);
  if (figure.ok) return figure;
  return { ok: false, code: 'not-allowed', detail: `is not a known material; allowed: ${ALLOWED}` };
}

/** A material by its name, or by its expansion; inside it is its mean linear expansion [1/K]. */
export function materialField(description: string) {
  const schema = z
    .unknown()
    .transform((raw, ctx): number => {
      const refuse = (fault: FaultCode, message: string, path: string[] = []): never => {
        ctx.addIssue({ code: 'custom', message, path, params: { fault } });
        return z.NEVER;
      };
      if (raw === undefined) return refuse('required', `is missing: ${ALLOWED}`);
      if (typeof raw === 'string') {
        const read = readText(raw);
        return read.ok ? read.si : refuse(read.code, read.detail);
      }
      if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
        return refuse('not-allowed', `must be a material: ${ALLOWED}`);
      }
      const unknown = Object.keys(raw).find((key) => key !== 'expansion');
      if (unknown !== undefined) return refuse('unknown-field', 'is not a part of a material', [unknown]);
      const read = readQuantity(memberOf(raw, 'expansion'), 'expansion', RANGE);
      if (read.ok) return read.si;
      return refuse(read.code, read.detail, ['expansion', ...(read.at === undefined ? [] : [read.at])]);
    })
    .meta({
      anyOf: [
        { type: 'string', minLength: 1, maxLength: 200 },
        {
          type: 'object',
          properties: {
            expansion: quantityJsonSchema('expansion'),
          },
          required: ['expansion'],
          additionalProperties: false,
        },
      ],
      description: `${description}: ${MATERIAL_NAMES.join(', ')}, or its expansion such as 11.7e-6 1/K`,
    });
  fieldInfo.add(schema, { control: 'text' });
  return schema;
}
