import { IN } from '../../kit/si.ts';
import { controlConstants } from '../../statistics/control-constants.ts';
import { inches } from '../common/said.ts';
import type { PassEvidence } from '../evidence.ts';

/** Figures that are told apart by less are the same. */
export const EQUAL = 1e-9 * IN;

/** The trade's rule of how passes repeat is for so many (common practice, no source). */
const USUAL_PASSES = 3;
const MOST_PASSES = 25;

/** What goes behind the numbers of passes that are all of the lobe. */
export const OF_LOBE = ' of the lobe';

/** More passes of the same scatter lie further apart: by the mean range of so many normal values, d2. */
export function widening(count: number): number {
  const most = Math.min(count, MOST_PASSES);
  return most <= USUAL_PASSES ? 1 : controlConstants(most).d2 / controlConstants(USUAL_PASSES).d2;
}

export const spreadOf = (passes: readonly PassEvidence[]): number => {
  const values = passes.map(({ value }) => value);
  return values.length < 2 ? 0 : Math.max(...values) - Math.min(...values);
};

/** `pass 2`, `pass 2 of the lobe`: lobe and valve have passes of one number. */
export const passSaid = ({ pass, kind }: Pick<PassEvidence, 'pass' | 'kind'>): string =>
  `pass ${pass}${kind === 'lobe-lift' ? OF_LOBE : ''}`;

export function lacksOf(used: readonly PassEvidence[], spread: number, what: string): string[] {
  const apart = spreadOf(used);
  if (apart <= spread + EQUAL) return [];
  return [`passes of the ${what} that repeat: these lie ${inches(apart)} apart`];
}

/** Where others agree it is known which passes lie off; a mean is taken of none till a person has looked. */
export function oddLacks(
  odd: readonly { readonly index: number; readonly off: number }[],
  passes: readonly PassEvidence[],
) {
  return odd.flatMap(({ index, off }) => {
    const pass = passes[index];
    if (pass === undefined) return [];
    const away = `${inches(Math.abs(off))} ${off < 0 ? 'under' : 'over'} the others`;
    return [`${passSaid(pass)} entered again or struck out: it reads ${inches(pass.value)}, ${away}`];
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

export function undecidedLacks(
  passes: readonly PassEvidence[],
  perTurn: number,
  spread: number,
  what: string,
): string[] {
  const turns = turnBetween(passes, perTurn, spread);
  if (passes.length >= MANY_PASSES)
    return [
      `a reading that repeats: these ${passes.length} passes lie ${inches(spreadOf(passes))} apart; find first what moves, the indicator’s base, its plunger or the lifter`,
    ];
  return turns === undefined
    ? [`one more pass of the ${what}: nothing says which of them is right`, ...lacksOf(passes, spread, what)]
    : [`one more pass of the ${what}, small hand first: ${turns}`];
}
