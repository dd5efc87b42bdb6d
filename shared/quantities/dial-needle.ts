import { tidy } from './echo.ts';
import { writeExact } from './format.ts';
import { type NumberRefused, refuse } from './number-types.ts';
import { isHeld, type NumberValue, readValue } from './number-value.ts';
import type { Token } from './tokens.ts';
import { unitOfWords } from './unit-words.ts';
import { dimensionOf, isUnit, type Quantity, toSi, type Unit } from './units.ts';

/** How far the hand stands past the last whole turn, and how it was said. */
interface Needle {
  readonly ok: true;
  readonly quantity: Quantity;
  readonly said: string;
}

/** The bare number is that printed on the dial; `readNumber` states the rules. */
function onDial(number: NumberValue, value: number, perTurn: Quantity): Quantity {
  const below = number.shape === 'decimal' && value < 1 && value > 0;
  if (below || number.shape === 'said-point') return { value, unit: perTurn.unit };
  if (perTurn.unit === 'in' || perTurn.unit === 'thou') return { value, unit: 'thou' };
  // Dials of a hundredth are numbered in hundredths; those of a thousandth turn in .2 mm or less.
  const parts = toSi(perTurn) <= 0.2e-3 * (1 + 1e-9) ? 1000 : 100;
  return { value: tidy(value / parts), unit: 'mm' };
}

function lengthUnit(words: readonly string[]): Unit | undefined {
  const unit = unitOfWords(words);
  return unit !== undefined && isUnit(unit) && dimensionOf(unit) === 'length' ? unit : undefined;
}

/** Reads what follows the turns: `42`, `oh six`, `42 thou`, `.042`. */
export function readNeedle(
  tokens: readonly Token[],
  at: number,
  perTurn: Quantity,
  came: string,
): Needle | NumberRefused {
  const number = readValue(tokens, at);
  const reading = number?.readings[0];
  if (number === undefined || reading === undefined || number.readings.length > 1 || number.sign < 0) {
    return refuse(
      'not-a-number',
      `${came}: what follows the turns is no needle reading; write it as 3 turns 42.`,
    );
  }
  if (!isHeld(number)) {
    return refuse('not-a-number', `${came}: the needle reading is not a number that can be used.`);
  }
  const said = writeExact(reading.value, reading.places, undefined);
  const words = tokens.slice(number.next).map((token) => token.text);
  if (words.length === 0) return { ok: true, quantity: onDial(number, reading.value, perTurn), said };
  const unit = lengthUnit(words);
  if (unit !== undefined) {
    return { ok: true, quantity: { value: reading.value, unit }, said: `${said} ${unit}` };
  }
  return refuse(
    'unknown-unit',
    `${came}: the needle's unit is not one length; use in, thou, mm or um, or none.`,
  );
}
