import { between, middle, spread, within } from './compare.ts';
import type { Tolerances } from './tolerances.ts';
import type { Pass, QuestionInput } from './types.ts';

export const idsOf = (passes: readonly Pass[]): string[] => passes.map((pass) => pass.id);
export const liftsOf = (passes: readonly Pass[]): number[] => passes.map((pass) => pass.lift);

/** The valve lift read; without passes, the one stated. */
export function valveLift(input: QuestionInput): number | undefined {
  return middle(liftsOf(input.valvePasses)) ?? input.statedValveLift;
}

/** The lobe lift read on the engine or the loose cam. */
export function readLobe(input: QuestionInput): number | undefined {
  return middle(liftsOf(input.lobePasses));
}

/** The lobe lift that a ratio is taken over: from where the set-up says it comes. */
export function lobeInUse(input: QuestionInput): number | undefined {
  const read = readLobe(input);
  const first = input.lobeSource === 'card' ? input.cardLobeLift : read;
  return first ?? read ?? input.cardLobeLift ?? input.statedLobeLift;
}

/** Every lobe lift there is a word of, the card's first. */
export function lobeLifts(input: QuestionInput): number[] {
  const lifts = [input.cardLobeLift, readLobe(input)].filter((lift) => lift !== undefined);
  if (lifts.length > 0 || input.statedLobeLift === undefined) return lifts;
  return [input.statedLobeLift];
}

/** What the card works with: said, or its valve lift over its lobe lift. */
export function ratioOfCard(input: QuestionInput): number | undefined {
  const { cardRatio, cardValveLift, cardLobeLift } = input;
  if (cardRatio !== undefined) return cardRatio;
  return cardValveLift === undefined || cardLobeLift === undefined ? undefined : cardValveLift / cardLobeLift;
}

/** What the rockers should give: what they are sold as, else what the card works with. */
export function ratioExpected(input: QuestionInput): number | undefined {
  return input.nominalRatio ?? ratioOfCard(input);
}

export function lashKnown(input: QuestionInput): number | undefined {
  return input.lashSetting ?? input.cardLash;
}

/** Every lash there is a word of, each once; none of them zero. */
export const lashesKnown = ({ lashSetting, cardLash, otherLashes = [] }: QuestionInput): number[] => [
  ...new Set(
    [lashSetting, cardLash, ...otherLashes].flatMap((lash) =>
      lash === undefined || lash <= 0 ? [] : [lash],
    ),
  ),
];

/** Lobe times nominal, lash not taken off. */
export function grossExpected(input: QuestionInput): number[] {
  const ratio = ratioExpected(input);
  return ratio === undefined ? [] : lobeLifts(input).map((lobe) => lobe * ratio);
}

/** The same with each other ratio that the arm is held to be: its mark first, then what it is sold as. */
export const grossAlsoHeld = (input: QuestionInput): number[] =>
  (input.alsoHeldAs ?? []).flatMap((ratio) => lobeLifts(input).map((lobe) => lobe * ratio));

/** What the dial at the valve should show, for each lobe lift there is a word of. */
export function expectedLifts(input: QuestionInput): number[] {
  const lash = input.lash === 'set' ? (lashKnown(input) ?? 0) : 0;
  return grossExpected(input)
    .map((lift) => lift - lash)
    .filter((lift) => lift > 0);
}

/** The middle of the other passes, where two or more of them repeat and this one stands apart from them. */
export function fellowsOf(pass: Pass, passes: readonly Pass[], t: Tolerances): number | undefined {
  const others = liftsOf(passes.filter((each) => each !== pass));
  const of = middle(others);
  if (of === undefined || others.length < 2 || !within(spread(others), t.passSpread)) return undefined;
  return within(pass.lift - of, 2 * t.passSpread) ? undefined : of;
}

/** True if flex, rocker tolerance and the extra ratio that makers put in can explain the lift. */
export function isOrdinary(input: QuestionInput, t: Tolerances, lift: number): boolean {
  const flex = input.spring === 'light' ? 0 : t.flexMost;
  return expectedLifts(input).some((expected) =>
    between(
      lift,
      expected * (1 - t.ordinaryUnder) - flex - t.ordinaryRoom,
      expected * (1 + t.ordinaryOver) + t.ordinaryRoom,
    ),
  );
}

/** Where nobody says what the arm is: whether such a lift over such a lobe makes a ratio that arms are made in. */
export function makesARatio(
  { madeIn = [], spring, lash, ...input }: QuestionInput,
  t: Tolerances,
  { lift, lobe }: { readonly lift: number; readonly lobe: number },
): boolean {
  const flex = spring === 'light' ? 0 : t.flexMost;
  // Some of a lash that is known may be in it.
  const most = lash === 'zero' ? 0 : Math.max(0, ...lashesKnown({ lash, spring, ...input }));
  // A lobe that was read has no error of a card in it.
  const room = input.lobePasses.length > 0 ? t.passSpread : t.ordinaryRoom;
  return madeIn.some((ratio) =>
    between(
      lift,
      lobe * ratio * (1 - t.ordinaryUnder) - flex - most - room,
      lobe * ratio * (1 + t.ordinaryOver) + room,
    ),
  );
}
