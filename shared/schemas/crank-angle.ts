import { z } from 'zod';
import type { FaultCode } from '../problems/faults.ts';
import { CAN_BE } from './can-be.ts';
import { type Entered, entered } from './entered.ts';
import { fieldInfo } from './field-info.ts';
import { quantityJsonSchema } from './quantity-fields.ts';

/** Past half a turn an angle is meant from another top dead centre. */
const FARTHEST = 180;

const ANGLE = entered('angle', 'a crank angle', CAN_BE.crankAngle, { sign: 'any' });
const WITH_SIDE = /^(.*?)\s*\b(b\.?t\.?d\.?c\.?|before(?:\s+tdc)?|a\.?t\.?d\.?c\.?|after(?:\s+tdc)?)\s*$/i;
/** At top dead centre itself there is no side, and no unit makes nothing more. */
const AT_CENTRE = /^(t\.?d\.?c\.?|[-−+]?0*\.?0+)$/i;

const textOf = (raw: unknown): string | undefined => {
  if (typeof raw === 'string') return raw.trim();
  if (typeof raw !== 'object' || raw === null || !('typed' in raw) || 'value' in raw) return undefined;
  return typeof raw.typed === 'string' ? raw.typed.trim() : undefined;
};

/** `10° before TDC`; to a hundredth of a degree. */
export function crankText(degrees: number): string {
  const rounded = Number(degrees.toFixed(2));
  if (rounded === 0) return 'TDC';
  return `${Math.abs(rounded)}° ${rounded < 0 ? 'before' : 'after'} TDC`;
}

interface Refusal {
  addIssue(issue: { code: 'custom'; message: string; params: { fault: FaultCode } }): void;
}

const refused = (ctx: Refusal, fault: FaultCode, message: string): never => {
  ctx.addIssue({ code: 'custom', message, params: { fault } });
  return z.NEVER;
};

const ALLOWED =
  'degrees after top dead centre, negative before, or with its side: “10 BTDC”, “10 ATDC”, “TDC”';

function readAngle(raw: unknown, ctx: Refusal): Entered {
  if (raw === undefined) return refused(ctx, 'required', `is missing: ${ALLOWED}`);
  const text = textOf(raw);
  if (text !== undefined && AT_CENTRE.test(text))
    return { typed: text, value: 0, unit: 'deg', readAs: 'TDC' };
  const [, bare = '', side] = (text === undefined ? undefined : WITH_SIDE.exec(text)) ?? [];
  const read = ANGLE.safeParse(side === undefined ? raw : { typed: bare, assume: 'deg' });
  if (!read.success)
    return refused(
      ctx,
      'not-a-number',
      `${(read.error.issues[0]?.message ?? 'can’t be read').replace(/\.$/, '')}. Write ${ALLOWED}`,
    );
  const { value } = read.data;
  if (side !== undefined && value < 0)
    return refused(ctx, 'not-allowed', `has a minus and a side, “${text}”: one of the two says before`);
  const degrees = side?.toLowerCase().startsWith('b') === true ? -value : value;
  if (Math.abs(degrees) > FARTHEST)
    return refused(
      ctx,
      'out-of-range',
      `is ${Number(value.toFixed(2))}°: count from the nearest top dead centre, ${FARTHEST}° either way at the most; 350° is 10 BTDC`,
    );
  return { typed: text ?? read.data.typed, value: degrees, unit: 'deg', readAs: crankText(degrees) };
}

/** A crank angle from top dead centre, kept as it was entered; before it the value is negative. */
export function crankAngle(description: string) {
  const schema = z
    .unknown()
    .transform(readAngle)
    .meta({
      ...quantityJsonSchema('angle'),
      description: `${description}: ${ALLOWED}`,
      'x-dimension': 'angle',
    });
  fieldInfo.add(schema, { control: 'quantity', dimension: 'angle', canBe: CAN_BE.crankAngle });
  return schema;
}
