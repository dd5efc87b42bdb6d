import { z } from 'zod';
import { UNITS } from '../quantities/units.ts';
import { fieldInfo } from './field-info.ts';
import { readQuantity } from './read-quantity.ts';

export const SIDES = ['BTDC', 'ATDC', 'BBDC', 'ABDC'] as const;
export type Side = (typeof SIDES)[number];

/** A cam event: the angle away from the dead centre in the direction of `side`; SI (radians) inside. */
export interface TimedEvent {
  readonly angle: number;
  readonly side: Side;
}

const TEXT = /^(.*?)\s*\b(BTDC|ATDC|BBDC|ABDC)\s*$/i;

/** Where the side of an event stands: a text has no parts. */
const sideWithin = (raw: unknown): string[] => (typeof raw === 'string' ? [] : ['side']);

function split(raw: unknown): { quantity: unknown; side: unknown } {
  if (typeof raw === 'string' && raw.length <= 200) {
    const match = TEXT.exec(raw);
    if (!match) return { quantity: raw, side: undefined };
    const degrees = match[1] ?? '';
    return { quantity: /[a-z°]/i.test(degrees) ? degrees : `${degrees} deg`, side: match[2]?.toUpperCase() };
  }
  if (typeof raw === 'object' && raw !== null && !Array.isArray(raw)) {
    const { side, ...quantity }: { side?: unknown } = { ...raw };
    return { quantity, side };
  }
  return { quantity: raw, side: undefined };
}

/** An event that lies by one dead centre: `sides` are the two sides of it, `[before, after]`, or all four. */
export function timedEvent(sides: readonly [Side, Side, ...Side[]], description: string) {
  const schema = z
    .unknown()
    .transform((raw, ctx): TimedEvent => {
      const refuse = (fault: string, message: string, path: string[] = []): never => {
        ctx.addIssue({ code: 'custom', message, path, params: { fault } });
        return z.NEVER;
      };
      if (raw === undefined)
        return refuse('required', `is missing: an angle and its side, ${sides.join(' or ')}`);
      const parts = split(raw);
      const read = readQuantity(parts.quantity, 'angle', { sign: 'any' });
      if (!read.ok) return refuse(read.code, read.detail, read.at === undefined ? [] : [read.at]);
      if (parts.side === undefined)
        return refuse('required', `needs a side: ${sides.join(' or ')}`, sideWithin(raw));
      const side = sides.find((each) => each === parts.side);
      if (side === undefined) return refuse('not-allowed', `must be ${sides.join(' or ')}`, sideWithin(raw));
      if (Math.abs(read.si) > 360 * UNITS.deg.toSi)
        return refuse('out-of-range', 'must be within one turn of the crank');
      return { angle: read.si, side };
    })
    .meta({
      anyOf: [
        {
          type: 'object' as const,
          properties: {
            value: { type: 'number' as const },
            unit: { type: 'string' as const, enum: ['deg'] },
            side: { type: 'string' as const, enum: [...sides] },
          },
          required: ['value', 'unit', 'side'],
          additionalProperties: false,
        },
        { type: 'string' as const, minLength: 1, maxLength: 200 },
      ],
      description,
      'x-dimension': 'angle',
    });
  fieldInfo.add(schema, { control: 'event', sides });
  return schema;
}
