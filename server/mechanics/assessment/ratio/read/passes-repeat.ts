import { allowance } from '../../../kit/allowances.ts';
import { IN } from '../../../kit/si.ts';
import { controlConstants } from '../../../statistics/control-constants.ts';
import { inches, listed } from '../../common/said.ts';
import type { PassEvidence } from '../../evidence.ts';
import type { LiftRead, RatioLack } from './lack.ts';

/** Figures that are told apart by less are the same. */
export const EQUAL = 1e-9 * IN;

/** The trade's rule of how passes repeat is for so many (common practice, no source). */
const USUAL_PASSES = 3;
const MOST_PASSES = 25;

/** More passes of the same scatter lie further apart: by the mean range of so many normal values, d2. */
export function widening(count: number): number {
  const most = Math.min(count, MOST_PASSES);
  return most <= USUAL_PASSES ? 1 : controlConstants(most).d2 / controlConstants(USUAL_PASSES).d2;
}

export const spreadOf = (passes: readonly PassEvidence[]): number => {
  const values = passes.map(({ value }) => value);
  return values.length < 2 ? 0 : Math.max(...values) - Math.min(...values);
};

/** Which of the two lifts a pass is of. */
export const liftOf = ({ kind }: Pick<PassEvidence, 'kind'>): LiftRead =>
  kind === 'lobe-lift' ? 'lobe' : 'valve';

/** Passes that only a person enters again or strikes out; lobe and valve have passes of one number. */
export function againOf(
  passes: readonly Pick<PassEvidence, 'id' | 'pass' | 'kind'>[],
  byOthers: boolean,
  why: string,
): RatioLack {
  const all = passes.map((each) => ({ lift: liftOf(each), pass: each.pass }));
  const once = new Map(all.map((each) => [`${each.lift} ${each.pass}`, each]));
  const entryIds = passes.map(({ id }) => id);
  return { code: 'enter-again', passes: [...once.values()], entryIds, byOthers, why };
}

/** What passes of one lift lack where they lie further apart than they should. */
export function lacksOf(used: readonly PassEvidence[], spread: number, lift: LiftRead): RatioLack[] {
  const apart = spreadOf(used);
  if (apart <= spread + EQUAL) return [];
  return [{ code: 'passes-apart', lift, apart }];
}

/** Where others agree it is known which passes lie off; a mean is taken of none till a person has looked. */
export function oddLacks(
  odd: readonly { readonly index: number; readonly off: number }[],
  passes: readonly PassEvidence[],
): RatioLack[] {
  return odd.flatMap(({ index, off }): RatioLack[] => {
    const pass = passes[index];
    if (pass === undefined) return [];
    const away = `${inches(Math.abs(off))} ${off < 0 ? 'under' : 'over'} the others`;
    return [againOf([pass], true, `it reads ${inches(pass.value)}, ${away}`)];
  });
}

/** Two that are whole turns apart, and nobody can say which of them is right: named, so that it is known what to look at. */
function turnBetween(passes: readonly PassEvidence[], perTurn: number, spread: number): string | undefined {
  const [one, other] = passes;
  if (one === undefined || other === undefined || passes.length > 2) return undefined;
  const apart = Math.abs(one.value - other.value);
  const turns = Math.round(apart / perTurn);
  if (turns === 0 || Math.abs(apart - turns * perTurn) > 2 * spread) return undefined;
  const said = turns === 1 ? 'one turn' : `${turns} turns`;
  return `pass ${one.pass}, ${inches(one.value)}, and pass ${other.pass}, ${inches(other.value)}, are ${said} of the dial apart`;
}

/** So many passes without a majority: one more tells nothing (common practice, no source). */
const MANY_PASSES = 6;

/** The last passes, where so many repeat and those before them did not: what moved was found. */
function steadySince(passes: readonly PassEvidence[]): readonly PassEvidence[] {
  const inOrder = passes.toSorted((a, b) => a.pass - b.pass);
  const last = inOrder.slice(-USUAL_PASSES);
  if (last.length < USUAL_PASSES || last.length === inOrder.length) return [];
  // Half of what passes may differ by: those that drift evenly are as near their neighbours as that at the most.
  return spreadOf(last) <= allowance('repeat') / 2 + EQUAL ? last : [];
}

export function undecidedLacks(
  passes: readonly PassEvidence[],
  perTurn: number,
  spread: number,
  lift: LiftRead,
): RatioLack[] {
  const turns = turnBetween(passes, perTurn, spread);
  const steady = steadySince(passes);
  if (steady.length > 0) {
    const earlier = passes.filter((each) => !steady.includes(each));
    const numbers = listed(steady.map(({ pass }) => String(pass)));
    return [againOf(earlier, true, `passes ${numbers} repeat within ${inches(spreadOf(steady))}`)];
  }
  if (passes.length >= MANY_PASSES)
    return [{ code: 'passes-scatter', passes: passes.length, apart: spreadOf(passes) }];
  return turns === undefined
    ? [
        { code: 'one-more-pass', lift, smallHand: false, why: 'nothing says which of them is right' },
        ...lacksOf(passes, spread, lift),
      ]
    : [{ code: 'one-more-pass', lift, smallHand: true, why: turns }];
}
