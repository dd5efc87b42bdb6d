import { type Meaning, type NumberReading, refuse } from './number-types.ts';
import { toSi } from './units.ts';

function inSi(meaning: Meaning): number {
  return meaning.unit === undefined ? meaning.value : toSi({ value: meaning.value, unit: meaning.unit });
}

function isSame(one: number, other: number): boolean {
  return Math.abs(one - other) <= 1e-12 * Math.max(Math.abs(one), Math.abs(other));
}

/** The first of those that come to the same value. */
function distinct(meanings: readonly Meaning[]): Meaning[] {
  return meanings.filter(
    (each, index) => !meanings.slice(0, index).some((before) => isSame(inSi(before), inSi(each))),
  );
}

/** One meaning is the answer; several are asked about; a value past what a number holds is refused. */
export function settle(meanings: readonly Meaning[], came: string): NumberReading {
  if (meanings.some((each) => !Number.isFinite(inSi(each)))) {
    return refuse('out-of-range', `${came} is beyond the numbers that can be used.`);
  }
  const [only, ...others] = distinct(meanings);
  if (only === undefined) return refuse('not-a-number', `${came} is not a number.`);
  if (others.length > 0) {
    const ambiguities = [only, ...others].map(({ value, unit, readAs, question }) => ({
      readAs,
      quantity: unit === undefined ? { value } : { value, unit },
      question: question ?? `Is it ${readAs}?`,
    }));
    return { ok: false, ambiguities };
  }
  const reading = { ok: true as const, value: only.value, readAs: only.readAs };
  return only.unit === undefined ? reading : { ...reading, unit: only.unit };
}
