import { between, within } from './compare.ts';
import { expectedLifts, fellowsOf, idsOf, isOrdinary, ratioExpected, readLobe, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import { turnMiscounted } from './turn-miscounted.ts';
import type { Pass, Question, QuestionInput } from './types.ts';
import { ENTER_AGAIN, inch } from './words.ts';

const PLACES = 3;
/** Two digits said the wrong way round put a reading where it belongs to this, as passes repeat [in]. */
const FITS = 0.002;
/** Few arms or positions are off by so much: then it is asked before anything is made of the reading [in]. Both: common practice, no published source. */
const FAR = 0.025;

/** Of the arithmetic on decimal figures, far under any dial. */
const LAST_BITS = 1e-6;
const MM = 25.4;
const PLACES_OF_MM = 2;

/** A reading [in] with two digits beside one another the other way round, as it was typed: every way that differs. */
export function digitsAround(lift: number, inMillimetres: boolean): number[] {
  const [unit, places] = inMillimetres ? [MM, PLACES_OF_MM] : [1, PLACES];
  const whole = Math.floor(lift * unit * 10 ** places + LAST_BITS);
  // What was read between two graduations stays: of .3055 nobody has the last five the wrong way round.
  const between = lift * unit - whole / 10 ** places;
  const digits = [...String(whole).padStart(places + 1, '0')];
  return digits.slice(1).flatMap((digit, at) => {
    const before = digits[at];
    if (before === undefined || before === digit) return [];
    const other = digits.with(at, digit).with(at + 1, before);
    return [(Number(other.join('')) / 10 ** places + between) / unit];
  });
}

interface Read {
  readonly name: string;
  /** Every pass of it: a figure that was said wrong was said so in each. */
  readonly passes: readonly Pass[];
  readonly expected: readonly number[];
  readonly inMillimetres: boolean;
  /** What else was read goes with it the other way round, and not as it is. */
  readonly meets?: (value: number) => boolean;
  /** A turn of the dial is asked about as well, and an ordinary arm makes this. */
  readonly besideTurn?: (value: number) => boolean;
}

function ask({ name, passes, expected, inMillimetres, meets, besideTurn }: Read): Question[] {
  const off = (value: number) => Math.min(...expected.map((each) => Math.abs(value - each)));
  if (expected.length === 0) return [];
  const found = passes.flatMap(({ lift }) => {
    const [best] = digitsAround(lift, inMillimetres).toSorted((a, b) => off(a) - off(b));
    if (best === undefined || off(lift) <= 2 * FITS) return [];
    // What is a turn of the dial off is no arm: what an ordinary one makes, which reads over, is asked beside that turn.
    return within(off(best), FITS) || (off(lift) > FAR && besideTurn?.(best) === true)
      ? [{ lift, best }]
      : [];
  });
  const [first] = found;
  if (first === undefined || found.length < passes.length) return [];
  return [
    {
      code: 'digits-swapped',
      weight: off(first.lift) > FAR || meets?.(first.best) === true ? 'strong' : 'weak',
      ask: `Could two digits of ${name}, ${inch(first.lift)}, be the wrong way round?`,
      size: `The other way round it is ${inch(first.best)}.`,
      test: ENTER_AGAIN,
      restsOn: idsOf(passes),
    },
  ];
}

/** The valve lift is what the lobe as it was read makes of it: then no figure of that lobe was said wrong. */
const isBorneOut = (
  lift: number | undefined,
  lobe: number,
  ratio: number | undefined,
  t: Tolerances,
): boolean =>
  lift !== undefined &&
  ratio !== undefined &&
  between(lift, lobe * ratio * (1 - t.ordinaryUnder), lobe * ratio * (1 + t.ordinaryOver));

/** One pass of several that repeat: the other way round it is level with them. */
function ofOnePass(input: QuestionInput, t: Tolerances): Question[] {
  const inMillimetres = input.inMillimetres === true;
  const of = (name: 'valve' | 'lobe', passes: readonly Pass[]) =>
    passes.flatMap((pass) => {
      const fellows = fellowsOf(pass, passes, t);
      if (fellows === undefined || within(pass.lift - fellows, FAR)) return [];
      const named =
        pass.number === undefined
          ? `the ${name} lift`
          : `${name === 'lobe' ? 'lobe ' : ''}pass ${pass.number}`;
      return ask({ name: named, passes: [pass], expected: [fellows], inMillimetres });
    });
  return [...of('valve', input.valvePasses), ...of('lobe', input.lobePasses)];
}

/** Two digits of a figure said or written the wrong way round. */
export function digitsSwapped(input: QuestionInput, tolerances: Tolerances): Question[] {
  const [lift, lobe, ratio] = [valveLift(input), readLobe(input), ratioExpected(input)];
  const card = input.cardLobeLift;
  const inMillimetres = input.inMillimetres === true;
  const fromValve = lift === undefined || ratio === undefined ? [] : [lift / ratio];
  const ofValve =
    lift === undefined || isOrdinary(input, tolerances, lift)
      ? []
      : ask({
          name: 'the valve lift',
          passes: input.valvePasses,
          expected: expectedLifts(input),
          inMillimetres,
          besideTurn: (best) =>
            turnMiscounted(input, tolerances).some(({ of }) => of === undefined) &&
            expectedLifts(input).some((each) => between(best, each, each * (1 + tolerances.ordinaryOver))),
        });
  const ofLobe =
    lobe === undefined || isBorneOut(lift, lobe, ratio, tolerances)
      ? []
      : ask({
          name: 'the lobe lift',
          passes: input.lobePasses,
          expected: card === undefined ? fromValve : [card],
          inMillimetres,
          // Card and valve lift both speak for it: no lobe is worn, and no arm odd, before it is answered.
          meets: (best) => card !== undefined && isBorneOut(lift, best, ratio, tolerances),
        });
  return [...ofValve, ...ofLobe, ...ofOnePass(input, tolerances)];
}
