import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { InputFaults } from '../../../shared/problems/faults.ts';
import type { NumberRead } from '../../../shared/quantities/number-types.ts';
import { readNumber } from '../../../shared/quantities/read-number.ts';
import { dimensionOf, type Unit } from '../../../shared/quantities/units.ts';
import { entered } from '../../../shared/schemas/entered.ts';
import { outList, outNumber, outText } from '../../../shared/schemas/outputs.ts';
import { defineComputation, nothing } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';
import { holdBare, holdQuantity, refuseUnread } from '../number-reading/check-read.ts';
import { assumedUnit, meaningOut, numberKind, readQuantityOut } from '../number-reading/number-fields.ts';

/** Any dial: this is for reading numbers, not for a call. */
const ANY_TURN = { least: 0, most: 1 };

const input = z.strictObject({
  text: z.string().meta({ description: 'the number as typed or said, 200 characters at the most' }),
  kind: numberKind,
  assume: assumedUnit.optional(),
  perTurn: entered(
    'length',
    'travel of a dial per turn of its big hand, for turns and needle',
    ANY_TURN,
  ).optional(),
});

const ambiguity = z.object({
  readAs: outText('one meaning, as a person would write it'),
  quantity: meaningOut,
  question: outText('what to ask'),
});

const output = z.object({
  quantity: readQuantityOut.optional(),
  ratio: outNumber('kind ratio: the ratio').optional(),
  turns: outNumber('kind turns: whole turns and the part of one').optional(),
  readAs: outText('what was understood; left out where it must be asked').optional(),
  ambiguities: outList(ambiguity, 'what it could mean, the most natural first; empty where it is clear'),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

function answerOf(read: NumberRead, kind: Input['kind']): Result {
  const common = { readAs: read.readAs, ambiguities: [] };
  if (kind === 'ratio') return { ratio: holdBare(read, kind), ...common };
  if (kind === 'turns') {
    const turns = holdBare(read, kind);
    return {
      turns,
      ...(read.length === undefined ? {} : { quantity: holdQuantity(read.length) }),
      ...common,
    };
  }
  if (read.unit === undefined) throw new RangeError(`a ${kind} was read without a unit`);
  return { quantity: holdQuantity({ value: read.value, unit: read.unit }), ...common };
}

/** A unit of each kind, so that a text is still looked at where the unit given for it is none of its kind. */
const ANY_UNIT: Record<Input['kind'], Unit | undefined> = {
  length: 'in',
  angle: 'deg',
  load: 'lbf',
  rate: 'lbf/in',
  speed: 'rpm',
  mass: 'lb',
  ratio: undefined,
  turns: undefined,
};

function refuseAssumed(kind: Input['kind']): never {
  const detail = `is no unit of a ${kind}`;
  throw new InputFaults([{ pointer: '/assume', code: 'wrong-dimension', detail }]);
}

/**
 * Reads a number as people write and say it, and asks rather than guesses.
 *
 * Equation: quantity = value as read × its unit; with turns: turns · perTurn + needle
 *
 * @param text [1] the number as typed or said, up to 200 characters
 * @param kind [1] `length`, `angle`, `load`, `rate`, `speed`, `mass`, `ratio` or `turns`
 * @param assume [1] unit of a number that comes without one; a unit of the kind; left out, none is assumed
 * @param perTurn [m] travel of a dial per turn of its big hand, above zero; may be left out
 * @returns quantity [in the unit read], ratio [1], turns [1], readAs [1], ambiguities [1] {readAs, quantity,
 * question}: either what was read, or the meanings it could have
 * @throws required when nothing stands in the text
 * @throws required when turns of a dial need the travel per turn
 * @throws not-a-number when the text is no number
 * @throws unknown-unit when its unit is not known, or assume is none
 * @throws wrong-dimension when its unit or the one assumed is none of the kind, or it has none and none is assumed
 * @throws not-allowed when the text is longer than 200 characters
 * @throws out-of-range when a ratio is zero or negative, or the number is past what can be used
 * @throws impossible-input when it is beyond any machine part
 *
 * Validity: English as the trade writes and says it; decimal comma taken, `1,234` asked.
 * Source: common practice, no published source; factors of the units exact by NIST SP 811, B.8.
 */
function readTheNumber({ text, kind, assume, perTurn }: Input): Result {
  if (assume !== undefined && dimensionOf(assume) !== kind) {
    everyFault(
      () => refuseAssumed(kind),
      () => readTheNumber({ text, kind, assume: ANY_UNIT[kind], perTurn }),
    );
  }
  const read = readNumber(text, {
    kind,
    ...defined({ assume }),
    ...(perTurn === undefined ? {} : { perTurn: { value: perTurn.value, unit: perTurn.unit } }),
  });
  if (read.ok) return answerOf(read, kind);
  if (read.fault !== undefined) return refuseUnread(read, text);
  return { ambiguities: read.ambiguities.map((each) => ({ ...each })) };
}

export const computation = defineComputation({
  name: 'read-number',
  title: 'Read a number',
  summary: 'Reads a number as typed or said, with its unit, and asks where it could mean two things.',
  words: ['number', 'unit', 'thou', 'thousandths', 'mil', 'decimal comma', 'fraction', 'what did they mean'],
  input,
  output,
  equation: 'quantity = number as read × unit; turns × travel per turn + needle',
  tex: 'x=N\\,p+n',
  source: 'common practice, no published source; unit factors exact by NIST SP 811, appendix B.8',
  validity: 'English as the trade writes and says it',
  assumptions: ({ assume }) => (assume === undefined ? [] : [`a number without a unit means ${assume}`]),
  cautions: nothing,
  example: {
    inputs: { text: '7/16 in', kind: 'length' },
    result: { quantity: { value: 0.4375, unit: 'in' }, readAs: '7/16 in = .4375 in', ambiguities: [] },
  },
  headline: () => ['readAs'],
  compute: readTheNumber,
});
