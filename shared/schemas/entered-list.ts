import { z } from 'zod';
import { isObject, memberOf } from '../member.ts';
import type { FaultCode } from '../problems/faults.ts';
import type { FieldRange } from '../quantities/field-range.ts';
import { listParts } from '../quantities/list-parts.ts';
import { type Entered, entered } from './entered.ts';
import { fieldInfo } from './field-info.ts';

const MOST = 200;

/** The entries of a list, of a text with commas or semicolons between them, or of what a form sends for that text. */
function partsOf(raw: unknown): readonly unknown[] | undefined {
  if (Array.isArray(raw)) return raw;
  if (typeof raw === 'string') return listParts(raw);
  if (typeof raw !== 'object' || raw === null) return undefined;
  const typed = memberOf(raw, 'typed');
  const assume = memberOf(raw, 'assume');
  if (typeof typed !== 'string') return undefined;
  return listParts(typed).map((text) => ({ typed: text, assume }));
}

const nameOf = (part: unknown): string => {
  const typed: unknown = isObject(part) ? memberOf(part, 'typed') : part;
  return typeof typed === 'string' ? ` “${typed.trim()}”` : '';
};

/** Lengths that are kept as they were entered: a list, or a text such as `2.60 mm, 2.65 mm`. */
export function enteredLengths(description: string, canBe: FieldRange) {
  const one = entered('length', 'one of them', canBe, { sign: 'positive' });
  const schema = z
    .unknown()
    .transform((raw, ctx): Entered[] => {
      const refuse = (fault: FaultCode, message: string): never => {
        ctx.addIssue({ code: 'custom', message, params: { fault } });
        return z.NEVER;
      };
      const parts = partsOf(raw);
      if (parts === undefined)
        return refuse(
          'not-allowed',
          'must be a list of lengths, or a text with commas or semicolons between them',
        );
      if (parts.length > MOST) return refuse('too-many', `has ${parts.length} lengths; ${MOST} are taken`);
      const found: Entered[] = [];
      for (const [index, part] of parts.entries()) {
        const read = one.safeParse(part);
        if (!read.success)
          return refuse(
            'not-a-number',
            `no. ${index + 1}${nameOf(part)} ${read.error.issues[0]?.message ?? 'is no length'}`,
          );
        found.push(read.data);
      }
      return found;
    })
    .meta({
      anyOf: [
        { type: 'array' as const, items: { ...one.meta() }, maxItems: MOST },
        { type: 'string' as const, maxLength: 4000 },
      ],
      description,
      'x-dimension': 'length',
    });
  fieldInfo.add(schema, { control: 'quantity', dimension: 'length', canBe });
  return schema;
}
