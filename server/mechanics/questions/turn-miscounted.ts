import { within } from './compare.ts';
import {
  expectedLifts,
  fellowsOf,
  idsOf,
  isOrdinary,
  liftsOf,
  lobeInUse,
  ratioExpected,
  valveLift,
} from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Pass, Question, QuestionInput } from './types.ts';
import { AT_LOBE, changeText, countText, inch, READ_SMALL_HAND } from './words.ts';

const EQUAL = 1e-9;

interface Miscount {
  readonly pass: Pass;
  /** Turns to add: below zero, turns counted too many. */
  readonly turns: number;
  readonly strong: boolean;
}

interface Place {
  readonly name: 'valve' | 'lobe';
  readonly passes: readonly Pass[];
  readonly expected: readonly number[];
  /** True if nothing need be missing from the lift. */
  readonly explained: (lift: number) => boolean;
}

function turnsMissing(input: QuestionInput, t: Tolerances, lift: number, expected: number) {
  const turns = Math.round((expected - lift) / input.perTurn);
  const left = expected - lift - turns * input.perTurn;
  const possible = turns !== 0 && Math.abs(turns) <= t.turnsMost;
  const fits = possible && within(left, Math.min(t.turnFits, t.turnShare * input.perTurn));
  const close = Math.min(t.turnFitsStrongly, t.turnShareStrongly * input.perTurn);
  // A running spring takes some of it too, and never as much as half a turn of the usual dial.
  const spring = input.spring === 'light' || t.flexMost >= input.perTurn / 2 ? 0 : t.flexMost;
  const tightly = fits && left >= -close - EQUAL && left <= close + spring + EQUAL;
  return { turns, left: Math.abs(left), fits, tightly };
}

/** What is explained otherwise is asked about only where it fits tightly, and then weakly. */
function miscountOf(input: QuestionInput, t: Tolerances, place: Place, pass: Pass): Miscount | undefined {
  // Passes that are as they should be say better than any sum what one that stands apart from them was.
  const fellows = fellowsOf(pass, place.passes, t);
  const expected = fellows !== undefined && place.explained(fellows) ? [fellows] : place.expected;
  const best = expected
    .map((expected) => turnsMissing(input, t, pass.lift, expected))
    .filter((found) => found.fits)
    .sort((a, b) => a.left - b.left)[0];
  if (best === undefined) return undefined;
  const explained = place.explained(pass.lift);
  if (explained && !best.tightly) return undefined;
  return { pass, turns: best.turns, strong: best.tightly && !explained };
}

/** ` from pass 2, .461 in`, ` from passes 1, 2 and 3`; nothing where they have no numbers. */
function passesText(word: string, alike: readonly Miscount[]): string {
  const numbers = alike.flatMap(({ pass }) => pass.number ?? []);
  const [first, ...others] = numbers;
  if (first === undefined || numbers.length < alike.length) return '';
  if (others.length === 0) return ` ${word} pass ${first}, ${inch(alike[0]?.pass.lift ?? 0)}`;
  return ` ${word} passes ${[first, ...others.slice(0, -1)].join(', ')} and ${others.at(-1)}`;
}

function ask(input: QuestionInput, place: Place, alike: readonly Miscount[]): Question[] {
  const first = alike[0];
  const recorded = [...input.valvePasses, ...input.lobePasses];
  if (first === undefined) return [];
  const count = Math.abs(first.turns);
  const turns = `${countText(count)} ${count === 1 ? 'turn' : 'turns'}`;
  const where = place.name === 'lobe' ? AT_LOBE : '';
  const to = first.pass.lift + first.turns * input.perTurn;
  return [
    {
      code: 'turn-miscounted',
      ...(place.name === 'lobe' ? { of: place.name } : {}),
      weight: alike.some((each) => each.strong) ? 'strong' : 'weak',
      ask:
        first.turns > 0
          ? `Could ${turns} of the dial be missing${where}${passesText('from', alike)}?`
          : `Could ${turns} of the dial too many have been counted${where}${passesText('in', alike)}?`,
      knownBy:
        first.turns > 0
          ? `Could ${turns} of the dial be missing${where}?`
          : `Could ${turns} of the dial too many have been counted${where}?`,
      size: changeText(first.pass.lift, to, place.name === 'valve' ? lobeInUse(input) : undefined),
      test: READ_SMALL_HAND,
      restsOn: idsOf(alike.map((each) => each.pass).filter((pass) => recorded.includes(pass))),
    },
  ];
}

function valvePlace(input: QuestionInput, t: Tolerances): Place {
  const expected = expectedLifts(input);
  // Nothing to expect: passes are set against the highest, since a turn is more often missed than added.
  const known = expected.length > 0 ? expected : [Math.max(0, ...liftsOf(input.valvePasses))];
  const stated =
    input.statedValveLift === undefined || input.valvePasses.length > 0
      ? []
      : [{ id: 'stated', lift: input.statedValveLift }];
  return {
    name: 'valve',
    passes: [...input.valvePasses, ...stated],
    expected: known,
    explained: (lift) => isOrdinary(input, t, lift),
  };
}

function lobePlace(input: QuestionInput): Place {
  const ratio = ratioExpected(input);
  const valve = valveLift(input);
  const calculated = ratio === undefined || valve === undefined ? [] : [valve / ratio];
  const expected = input.cardLobeLift === undefined ? calculated : [input.cardLobeLift];
  const passes = input.lobeSource === 'caliper' ? [] : input.lobePasses;
  return { name: 'lobe', passes, expected, explained: () => false };
}

function atPlace(input: QuestionInput, t: Tolerances, place: Place): Question[] {
  const found = place.passes
    .map((pass) => miscountOf(input, t, place, pass))
    .filter((each) => each !== undefined);
  const kinds = [...new Set(found.map((each) => each.turns))];
  return kinds.flatMap((turns) =>
    ask(
      input,
      place,
      found.filter((each) => each.turns === turns),
    ),
  );
}

/** Row 1: a lift off by whole turns of the dial, at the valve or at the lobe. */
export function turnMiscounted(input: QuestionInput, tolerances: Tolerances): Question[] {
  return [valvePlace(input, tolerances), lobePlace(input)].flatMap((place) =>
    atPlace(input, tolerances, place),
  );
}
