import { allowance } from '../kit/allowances.ts';
import { EQUAL } from '../kit/nearest.ts';
import { medianKnown } from './siblings.ts';
import type { SheetValve } from './types.ts';

/** Valves of one side in two groups, each alike in itself, that lie apart from one another. */
export interface TwoGroups {
  /** The fewer, of as many the lower. */
  readonly own: readonly SheetValve[];
  readonly others: readonly SheetValve[];
  /** Middle lift of the first group less that of the others [m]. */
  readonly off: number;
  /** The two groups are the banks of the engine. */
  readonly banks: boolean;
}

/** Fewer than this in a group are odd valves, each by itself. */
const FEWEST = 3;
/** Two against two have no middle to be odd against. */
const HALF = 2;
const liftOf = ({ valveLift = 0 }: SheetValve): number => valveLift;
const middle = (valves: readonly SheetValve[]): number => medianKnown(valves.map(liftOf)) ?? 0;

const isNear = (each: SheetValve, lift: number): boolean =>
  Math.abs(liftOf(each) - lift) <= allowance('odd-beyond') + EQUAL;

/** A bank is alike; of three or more one may be odd by itself, if it does not read like the other bank. */
function isAlike(bank: readonly SheetValve[], other: readonly SheetValve[]): boolean {
  const strangers = bank.filter((each) => !isNear(each, middle(bank)));
  const few = strangers.length <= (bank.length >= FEWEST ? 1 : 0);
  return bank.length >= 2 && few && !strangers.some((each) => isNear(each, middle(other)));
}

/** Their lobes do not make it: where both were read, they are alike. */
function onLikeLobes(one: readonly SheetValve[], other: readonly SheetValve[]): boolean {
  const [a, b] = [one, other].map((group) => medianKnown(group.map(({ lobeLift }) => lobeLift)));
  return a === undefined || b === undefined || Math.abs(a - b) <= allowance('repeat') + EQUAL;
}

function grouped(
  one: readonly SheetValve[],
  other: readonly SheetValve[],
  banks: boolean,
): TwoGroups | undefined {
  const apart = middle(one) - middle(other);
  if (Math.abs(apart) <= allowance('odd-beyond') + EQUAL || !onLikeLobes(one, other)) return undefined;
  const first = one.length === other.length ? apart < 0 : one.length < other.length;
  return first
    ? { own: one, others: other, off: apart, banks }
    : { own: other, others: one, off: -apart, banks };
}

/** Two banks that lie apart; in one of three or more one valve may be odd by itself. */
function byBanks(
  valves: readonly SheetValve[],
  banks: readonly (readonly number[])[],
): TwoGroups | undefined {
  const [one = [], other = [], ...more] = banks.map((bank) =>
    valves.filter(({ cylinder }) => bank.includes(cylinder)),
  );
  const fits = more.length === 0 && isAlike(one, other) && isAlike(other, one);
  return fits ? grouped(one, other, true) : undefined;
}

/** The widest step between lifts in their order parts them. */
function byStep(valves: readonly SheetValve[]): TwoGroups | undefined {
  const inOrder = valves.toSorted((a, b) => liftOf(a) - liftOf(b));
  const steps = inOrder.slice(1).map((each, at) => liftOf(each) - liftOf(inOrder[at] ?? each));
  const at = steps.indexOf(Math.max(...steps)) + 1;
  const below = inOrder.slice(0, at);
  const [low, high] = [
    valves.filter((each) => below.includes(each)),
    valves.filter((each) => !below.includes(each)),
  ];
  // Halves of four: neither is the many that the other could be odd against.
  const fewest = low.length === high.length ? HALF : FEWEST;
  const fits = (group: readonly SheetValve[]) => {
    const lifts = group.map(liftOf);
    return (
      group.length >= fewest && Math.max(...lifts) - Math.min(...lifts) <= allowance('odd-beyond') + EQUAL
    );
  };
  return fits(low) && fits(high) ? grouped(low, high, false) : undefined;
}

/**
 * Valves of one side that fall into two groups: several are off alike, so that what they have in common makes it and no
 * one of them is odd.
 *
 * Equation: |median of one group − median of the other| > .008 in; a bank within .008 in of its own median (one valve of
 * three or more may lie further off, if it does not read like the other bank), without banks each group within .008 in
 * from its least to its most; lobes of the two within .002 in
 *
 * @param valves [m] valves of one side, read one way
 * @param banks [1] cylinders bank by bank; empty where nobody said how they are
 *
 * Validity: banks of two or more read valves; without banks three or more valves in each group, or two against two.
 * Source: common practice, no published source.
 */
export function twoGroups(
  valves: readonly SheetValve[],
  banks: readonly (readonly number[])[],
): TwoGroups | undefined {
  const read = valves.filter(({ valveLift }) => valveLift !== undefined);
  return byBanks(read, banks) ?? byStep(read);
}
