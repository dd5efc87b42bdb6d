import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { isMeasured } from '../../../../shared/schemas/part-words.ts';
import { allowedFor, isPossible, type Slip, slipsOf } from '../../identify/slips.ts';
import { IN } from '../../kit/si.ts';
import type { AnswerChoice } from '../assessment.ts';
import { upperFirst } from '../common/said.ts';
import {
  AS_READ,
  type CountedReading,
  choice,
  type Effect,
  MISREAD,
  type PartDoubt,
  without,
} from './doubts.ts';
import { nameOf, sizeSaid } from './size-said.ts';

const SLIP_SAID: Readonly<Record<Slip['code'], (meant: string) => string>> = {
  'dot-left': (meant) => `The dot is one place off: ${meant}`,
  'dot-right': (meant) => `The dot is one place off: ${meant}`,
  thousandths: (meant) => `Thousandths were meant: ${meant}`,
  millimetres: (meant) => `Millimetres were meant: ${meant}`,
  inches: (meant) => `Inches were meant: ${meant}`,
};

const each = ({ size = 0, count = 1 }: CountedReading): number => size / count / IN;

const slipChoice = ({ code, inches }: Slip): AnswerChoice => {
  const meant = sizeSaid(inches * IN);
  return choice(code, SLIP_SAID[code](meant), `It counts as ${meant}; the entry stays as it was typed.`);
};

/** The answer turns the size, and a half-width that was typed with it, into what was meant. */
const meantAs =
  (reading: CountedReading, slips: readonly Slip[]): Effect =>
  (readings, chosen) => {
    if (chosen === 'not-found') return readings;
    const slip = slips.find(({ code }) => code === chosen);
    if (slip === undefined) return without(readings, [reading.id]);
    const factor = slip.inches / each(reading);
    const { size = 0, typedWithin } = reading;
    return readings.map((other) =>
      other.id === reading.id
        ? {
            ...other,
            size: size * factor,
            ...(typedWithin === undefined ? {} : { typedWithin: typedWithin * factor }),
            countsAs: `meant as ${sizeSaid(slip.inches * IN)}`,
          }
        : other,
    );
  };

/** A size that no rocker has: said to be impossible, with what it may have been meant as. It does not count yet. */
export const impossibleSizes = (readings: readonly CountedReading[]): PartDoubt[] =>
  readings
    .filter(({ kind, size }) => isMeasured(kind) && size !== undefined)
    .filter((reading) => !isPossible(reading.kind, each(reading)))
    .map((reading) => {
      const { kind, readAs, id, unit } = reading;
      const { least, most } = allowedFor(kind) ?? { least: 0, most: 0 };
      const slips = slipsOf(kind, each(reading), unit ?? 'in');
      return {
        code: 'size-impossible',
        ask: `${upperFirst(nameOf(kind))} of ${asEntered(readAs)} cannot be: rockers have ${sizeSaid(least * IN)} to ${sizeSaid(most * IN)} there. What was meant?`,
        // Over how many threads a length goes is said with it, or it is no pitch.
        test:
          kind === 'stud-pitch' && reading.count === undefined
            ? 'say over how many threads that is: ten of them over one length, from a crest to a crest'
            : 'read the tool again, with its unit and where the dot stands',
        restsOn: [id],
        choices: [...slips.map(slipChoice), MISREAD, AS_READ],
        effect: meantAs(reading, slips),
      };
    });

/** `mil` is a millimetre to one and a thousandth to another: what the place allows was kept, and is put back. */
export const milsTyped = (readings: readonly CountedReading[]): PartDoubt[] =>
  readings
    .filter(({ kind, typed, size }) => isMeasured(kind) && size !== undefined && /\bmill?s?\b/i.test(typed))
    .map(({ id, kind, typed, unit, size = 0 }) => {
      const [is, other] = unit === 'mm' ? ['millimetres', 'thousandths'] : ['thousandths', 'millimetres'];
      return {
        code: 'mil-said',
        ask: `“${typed.trim()}” for the ${nameOf(kind)} is taken as ${is}, ${sizeSaid(size)}: as ${other} it would fit no rocker. Is that what was meant?`,
        test: 'read the tool again, with its unit',
        restsOn: [id],
        choices: [choice('not-found', `Yes, ${is}`, 'It counts as it was read.'), MISREAD],
        effect: (now, chosen) => (chosen === 'found' ? without(now, [id]) : now),
      };
    });
