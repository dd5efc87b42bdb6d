import type { InputFault } from '../../../shared/problems/faults.ts';

/** What a number may be: `above` exclusive or `from` inclusive, `upTo` inclusive or `below` exclusive. */
export interface Allowed {
  readonly of: string;
  readonly above?: number;
  readonly from?: number;
  readonly upTo?: number;
  readonly below?: number;
  readonly whole?: boolean;
}

function allowedText(allowed: Allowed): string {
  const low = allowed.above === undefined ? undefined : `above ${allowed.above}`;
  const from = allowed.from === undefined ? undefined : `at least ${allowed.from}`;
  const high = allowed.upTo === undefined ? undefined : `at most ${allowed.upTo}`;
  const below = allowed.below === undefined ? undefined : `below ${allowed.below}`;
  const whole = allowed.whole ? 'a whole number' : undefined;
  return [whole, low, from, high, below].filter((part) => part !== undefined).join(', ');
}

function isAllowed(value: number, allowed: Allowed): boolean {
  if (allowed.above !== undefined && value <= allowed.above) return false;
  if (allowed.from !== undefined && value < allowed.from) return false;
  if (allowed.upTo !== undefined && value > allowed.upTo) return false;
  if (allowed.below !== undefined && value >= allowed.below) return false;
  return !allowed.whole || Number.isInteger(value);
}

/** Notes a fault at the pointer if the number is none, or not allowed. */
export function checkNumber(faults: InputFault[], pointer: string, value: number, allowed: Allowed): void {
  if (!Number.isFinite(value)) {
    faults.push({
      pointer,
      code: 'not-a-number',
      detail: `${allowed.of} must be a number.`,
      received: value,
    });
    return;
  }
  if (isAllowed(value, allowed)) return;
  const detail = `${allowed.of} must be ${allowedText(allowed)}.`;
  faults.push({ pointer, code: 'out-of-range', detail, received: value });
}
