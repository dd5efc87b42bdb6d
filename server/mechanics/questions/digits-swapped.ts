import { within } from './compare.ts';
import { expectedLifts, idsOf, isOrdinary, ratioExpected, readLobe, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { ENTER_AGAIN, inch } from './words.ts';

const PLACES = 3;
/** Two digits said the wrong way round put a reading where it belongs to this, as passes repeat [in]. */
const FITS = 0.002;
/** Few arms or positions are off by so much: then it is asked before anything is made of the reading [in]. Both: common practice, no published source. */
const FAR = 0.025;

/** The reading with two digits beside one another the other way round. */
function swapped(lift: number): number[] {
  const digits = [...lift.toFixed(PLACES).replace('.', '')];
  return digits.slice(1).flatMap((digit, at) => {
    const before = digits[at];
    if (before === undefined || before === digit) return [];
    const other = digits.with(at, digit).with(at + 1, before);
    return [Number(other.join('')) / 10 ** PLACES];
  });
}

function ask(
  name: string,
  lift: number,
  expected: readonly number[],
  restsOn: readonly string[],
): Question[] {
  const off = (value: number) => Math.min(...expected.map((each) => Math.abs(value - each)));
  if (expected.length === 0) return [];
  const [best] = swapped(lift).toSorted((a, b) => off(a) - off(b));
  if (best === undefined || !within(off(best), FITS) || off(lift) <= 2 * FITS) return [];
  return [
    {
      code: 'digits-swapped',
      weight: off(lift) > FAR ? 'strong' : 'weak',
      ask: `Could two digits of the ${name}, ${inch(lift)}, be the wrong way round?`,
      size: `The other way round it is ${inch(best)}.`,
      test: ENTER_AGAIN,
      restsOn,
    },
  ];
}

/** Two digits of a figure said or written the wrong way round. */
export function digitsSwapped(input: QuestionInput, tolerances: Tolerances): Question[] {
  const [lift, lobe, ratio] = [valveLift(input), readLobe(input), ratioExpected(input)];
  const card = input.cardLobeLift;
  const fromValve = lift === undefined || ratio === undefined ? [] : [lift / ratio];
  const ofValve =
    lift === undefined || isOrdinary(input, tolerances, lift)
      ? []
      : ask('valve lift', lift, expectedLifts(input), idsOf(input.valvePasses));
  const ofLobe =
    lobe === undefined
      ? []
      : ask('lobe lift', lobe, card === undefined ? fromValve : [card], idsOf(input.lobePasses));
  return [...ofValve, ...ofLobe];
}
