import type { FaultCode } from '../problems/faults.ts';

export interface NumberRange {
  readonly least?: number;
  readonly most?: number;
  readonly above?: number;
  readonly below?: number;
  readonly whole?: boolean;
  /** Past this no machine part goes: `impossible-input`. */
  readonly beyond?: number;
}

type NumberReading = { ok: true; value: number } | { ok: false; code: FaultCode; detail: string };

const no = (code: FaultCode, detail: string): NumberReading => ({ ok: false, code, detail });

/** Reads a bare number within a range; anything else is told apart by its code. */
export function readBare(raw: unknown, range: NumberRange): NumberReading {
  if (raw === undefined) return no('required', 'is missing: a bare number');
  if (typeof raw === 'object' && raw !== null && Object.hasOwn(raw, 'unit')) {
    return no('wrong-dimension', 'has no unit; give a bare number');
  }
  if (typeof raw !== 'number') return no('not-a-number', 'must be a bare number');
  if (!Number.isFinite(raw)) return no('out-of-range', 'must be a finite number');
  if (range.beyond !== undefined && Math.abs(raw) > range.beyond) {
    return no('impossible-input', 'is beyond any machine part');
  }
  if (range.whole && !Number.isSafeInteger(raw)) return no('out-of-range', 'must be a whole number');
  if (range.least !== undefined && raw < range.least)
    return no('out-of-range', `must be ${range.least} or more`);
  if (range.most !== undefined && raw > range.most)
    return no('out-of-range', `must be ${range.most} or less`);
  if (range.above !== undefined && raw <= range.above)
    return no('out-of-range', `must be above ${range.above}`);
  if (range.below !== undefined && raw >= range.below)
    return no('out-of-range', `must be below ${range.below}`);
  return { ok: true, value: raw };
}
