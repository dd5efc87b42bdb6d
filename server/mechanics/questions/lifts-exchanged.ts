import { between } from './compare.ts';
import { idsOf, lobeLifts, ratioExpected, readLobe, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch, ratioText } from './words.ts';

/** Lobe and valve lift stand under each other's name: the other way round they make what they should. */
export function areExchanged(input: QuestionInput, t: Tolerances): boolean {
  const [lobe, valve] = [readLobe(input), valveLift(input)];
  const expected = ratioExpected(input);
  if (lobe === undefined || valve === undefined || valve >= lobe || expected === undefined) return false;
  return between(lobe / valve, expected * (1 - t.ordinaryOver), expected * (1 + t.ordinaryOver));
}

/** Row 3, the other way round: the lobe reads more than the valve. */
export function liftsExchanged(input: QuestionInput, tolerances: Tolerances): Question[] {
  const [lobe, valve] = [readLobe(input), valveLift(input)];
  if (lobe === undefined || valve === undefined || !areExchanged(input, tolerances)) return [];
  return [
    {
      code: 'lifts-exchanged',
      beforeReading: true,
      weight: 'strong',
      ask: `Could lobe and valve lift be exchanged, ${inch(lobe)} and ${inch(valve)}?`,
      size: `The other way round they make ${ratioText(lobe / valve)}.`,
      test: 'Ask where the indicator stood for each: at the lifter, or at the retainer.',
      testAtBench: 'Say where the indicator stood for each: at the lifter, or at the retainer.',
      restsOn: [...idsOf(input.lobePasses), ...idsOf(input.valvePasses)],
    },
  ];
}

/** A pass that stands apart from the others and is level with the other lift. */
function strayOf(
  passes: QuestionInput['lobePasses'],
  own: number | undefined,
  other: number | undefined,
  t: Tolerances,
) {
  if (own === undefined || other === undefined || passes.length < 2 || !Number.isFinite(own)) return [];
  if (Math.abs(own - other) <= t.liftFits) return [];
  return passes.filter(
    ({ lift }) => Math.abs(lift - own) > 2 * t.passSpread && Math.abs(lift - other) <= t.liftFits,
  );
}

/** One pass of the other place: the lobe's among the valve's, or the valve's among the lobe's. */
export function passOfOtherLift(input: QuestionInput, t: Tolerances): Question[] {
  const valve = valveLift(input);
  const ask = (kind: string, of: string, passes: QuestionInput['lobePasses']): Question[] =>
    passes.map((pass) => ({
      code: 'pass-of-other-lift',
      beforeReading: true,
      weight: 'strong',
      ask: `Could ${kind} ${pass.number ?? ''}, ${inch(pass.lift)}, have been read at the ${of}?`.replace(
        ' ,',
        ',',
      ),
      knownBy: `${kind} ${'i'.repeat(pass.number ?? 0)} read at the ${of}`,
      size: `It is level with the ${of} lift, and the others are not.`,
      test: 'Ask where the indicator stood for that pass.',
      testAtBench: 'Say where the indicator stood for that pass.',
      restsOn: [pass.id],
    }));
  const lobes = lobeLifts(input);
  const lobe = readLobe(input) ?? lobes[0];
  return [
    ...ask('lobe pass', 'valve', strayOf(input.lobePasses, readLobe(input), valve, t)),
    ...ask('pass', 'lobe', strayOf(input.valvePasses, valve, lobe, t)),
  ];
}
