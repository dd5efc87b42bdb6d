import { between, within } from './compare.ts';
import { idsOf, ratioExpected, readLobe, valveLift } from './lifts.ts';
import { areExchanged } from './lifts-exchanged.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch, nominalText } from './words.ts';

const READ = 'lobe lift';
const ON_CARD = 'lobe lift on the card';

interface Lobe {
  readonly name: string;
  readonly lift: number;
}

function lobesEntered(input: QuestionInput): Lobe[] {
  const named = (name: string, lift: number | undefined) => (lift === undefined ? [] : [{ name, lift }]);
  return [
    ...named(READ, readLobe(input)),
    ...named(ON_CARD, input.cardLobeLift),
    ...named('lobe lift in the sum', input.statedLobeLift),
  ];
}

/** True if the valve lift is what the ratio makes of the lobe. */
function isBorneOut(input: QuestionInput, t: Tolerances, lobe: number): boolean {
  const valve = valveLift(input);
  const ratio = ratioExpected(input);
  if (valve === undefined || ratio === undefined) return false;
  const expected = lobe * ratio;
  return between(valve, expected * (1 - t.ordinaryUnder) - t.flexMost, expected * (1 + t.ordinaryOver));
}

function weightOf(
  input: QuestionInput,
  t: Tolerances,
  { name, lift: lobe }: Lobe,
): Question['weight'] | undefined {
  const valve = valveLift(input);
  const ratio = ratioExpected(input);
  if (isBorneOut(input, t, lobe) || !between(lobe, t.lobeLeast, t.valveMost)) return undefined;
  if (valve !== undefined && within(valve / lobe - 1, t.levelRatioOff)) return 'strong';
  const meetsCard =
    name !== ON_CARD &&
    ratio !== undefined &&
    input.cardLobeLift !== undefined &&
    within(lobe / ratio - input.cardLobeLift, t.lobeFits);
  if (meetsCard) return 'strong';
  return within(lobe, t.lobeRare) ? undefined : 'weak';
}

/** Row 3: a valve lift entered where the lobe lift belongs. */
export function grossLiftAsLobe(input: QuestionInput, tolerances: Tolerances): Question[] {
  // Exchanged, both are right under the other's name.
  if (areExchanged(input, tolerances)) return [];
  const ratio = ratioExpected(input);
  return lobesEntered(input).flatMap((lobe) => {
    const weight = weightOf(input, tolerances, lobe);
    if (weight === undefined) return [];
    return [
      {
        code: 'gross-lift-as-lobe',
        weight,
        ask: `Could the ${lobe.name}, ${inch(lobe.lift)}, be a valve lift?`,
        size:
          ratio === undefined
            ? 'The ratio would not be known.'
            : `Divided by ${nominalText(ratio)} it makes a lobe of ${inch(lobe.lift / ratio)}.`,
        test:
          lobe.name === READ
            ? 'Ask where the indicator stood for the lobe: at the lifter, or at the retainer. Then read the lobe at the lifter.'
            : 'Read the card out again: lobe lift or valve lift? Then read the lobe at the lifter.',
        restsOn: idsOf(lobe.name === READ ? input.lobePasses : []),
      },
    ];
  });
}
