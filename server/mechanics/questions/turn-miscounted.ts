import { within } from './compare.ts';
import {
  expectedLifts,
  fellowsOf,
  idsOf,
  isOrdinary,
  lashesKnown,
  liftsOf,
  lobeInUse,
  makesARatio,
  ratioExpected,
  valveLift,
} from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Pass, Question, QuestionInput } from './types.ts';
import { AT_LOBE, changeText, countText, inch, lobeChangeText, READ_SMALL_HAND } from './words.ts';

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
  /** Where nobody says what the arm is: whether such a lift makes one of the ratios that arms are made in. */
  readonly makes?: ((lift: number) => boolean) | undefined;
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

/** A lift that makes no ratio of the trade, and with the fewest turns more or less makes one; missed before added. */
function miscountByRatios(
  input: QuestionInput,
  t: Tolerances,
  { makes }: Place,
  pass: Pass,
): Miscount | undefined {
  if (makes === undefined || makes(pass.lift)) return undefined;
  const counts = Array.from({ length: t.turnsMost }, (_, at) => [at + 1, -at - 1]).flat();
  const turns = counts.find((count) => makes(pass.lift + count * input.perTurn));
  return turns === undefined ? undefined : { pass, turns, strong: true };
}

/** ` from pass 2, .461 in`, ` from passes 1, 2 and 3`; nothing where they have no numbers. */
function passesText(word: string, alike: readonly Miscount[]): string {
  const numbers = alike.flatMap(({ pass }) => pass.number ?? []);
  const [first, ...others] = numbers;
  if (first === undefined || numbers.length < alike.length) return '';
  if (others.length === 0) return ` ${word} pass ${first}, ${inch(alike[0]?.pass.lift ?? 0)}`;
  return ` ${word} passes ${[first, ...others.slice(0, -1)].join(', ')} and ${others.at(-1)}`;
}

/** With the ratio that it would make; of a lobe that is held to its card, what the card says is enough. */
function sizeOf(input: QuestionInput, { name, makes }: Place, from: number, to: number): string {
  const valve = makes === undefined ? undefined : valveLift(input);
  return name === 'valve' ? changeText(from, to, lobeInUse(input)) : lobeChangeText(from, to, valve);
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
      size: sizeOf(input, place, first.pass.lift, to),
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
    makes: makingOver(input, t, (lift, { lobe }) => ({ lift, lobe })),
  };
}

interface Lifts {
  readonly lift: number;
  readonly lobe: number;
}

/** Only where nobody says what the arm is, and both lifts are known. */
function makingOver(
  input: QuestionInput,
  t: Tolerances,
  lifts: (read: number, known: Lifts) => Lifts,
): Place['makes'] {
  const [lift, lobe] = [valveLift(input), lobeInUse(input)];
  const { madeIn = [] } = input;
  if (madeIn.length === 0 || ratioExpected(input) !== undefined) return undefined;
  // What nobody says of the lash may be as much as is missing.
  if (input.lash !== 'zero' && lashesKnown(input).length === 0) return undefined;
  if (lift === undefined || lobe === undefined) return undefined;
  return (read) => makesARatio(input, t, lifts(read, { lift, lobe }));
}

function lobePlace(input: QuestionInput, t: Tolerances): Place {
  const ratio = ratioExpected(input);
  const valve = valveLift(input);
  const calculated = ratio === undefined || valve === undefined ? [] : [valve / ratio];
  const expected = input.cardLobeLift === undefined ? calculated : [input.cardLobeLift];
  const passes = input.lobeSource === 'caliper' ? [] : input.lobePasses;
  // With the card to hold it to, a lobe is asked by that alone.
  const makes =
    input.cardLobeLift === undefined ? makingOver(input, t, (lobe, { lift }) => ({ lift, lobe })) : undefined;
  return { name: 'lobe', passes, expected, explained: () => false, makes };
}

interface Alike {
  readonly place: Place;
  readonly turns: number;
  readonly all: readonly Miscount[];
}

function atPlace(input: QuestionInput, t: Tolerances, place: Place): Alike[] {
  const found = place.passes
    .map((pass) => miscountOf(input, t, place, pass) ?? miscountByRatios(input, t, place, pass))
    .filter((each) => each !== undefined);
  const kinds = [...new Set(found.map((each) => each.turns))];
  return kinds.map((turns) => ({ place, turns, all: found.filter((each) => each.turns === turns) }));
}

/** Row 1: a lift off by whole turns of the dial, at the valve or at the lobe; a turn is more often missed than added. */
export function turnMiscounted(input: QuestionInput, tolerances: Tolerances): Question[] {
  const found = [valvePlace(input, tolerances), lobePlace(input, tolerances)].flatMap((place) =>
    atPlace(input, tolerances, place),
  );
  return found
    .toSorted((a, b) => Number(a.turns < 0) - Number(b.turns < 0))
    .flatMap(({ place, all }) => ask(input, place, all));
}
