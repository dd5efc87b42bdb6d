import { allowance } from '../../../kit/allowances.ts';
import { byText } from '../../../kit/by-text.ts';
import { isDial } from '../../../kit/lift-tools.ts';
import { passesApart } from '../../../valve-sheet/apart.ts';
import { inches, listed } from '../../common/said.ts';
import { wasThere } from '../../common/since.ts';
import type { Evidence, PassEvidence, PassKind } from '../../evidence.ts';
import { codeOf, foundBy } from './answers.ts';
import { countedSince } from './counted-since.ts';
import type { AsideCode } from './detail.ts';
import type { LiftRead, RatioLack } from './lack.ts';
import { EQUAL, lacksOf, oddLacks, spreadOf, undecidedLacks, widening } from './passes-repeat.ts';
import type { SetUpNow } from './set-ups.ts';
import { zeroOff } from './zero.ts';

const KINDS: readonly PassKind[] = [
  'lobe-lift',
  'valve-lift',
  'valve-lift-at',
  'stated-lobe-lift',
  'stated-valve-lift',
];

/** Kind, place on the lift, number of the pass: how it was read, never when it was entered. */
function byReading(a: PassEvidence, b: PassEvidence): number {
  return (
    KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) ||
    (a.atLobeLift ?? 0) - (b.atLobeLift ?? 0) ||
    a.pass - b.pass ||
    byText(a.id, b.id)
  );
}

/** The passes of a set-up that stand, in the order in which they were read. */
export const standingPasses = (evidence: Evidence, setUpId: string): PassEvidence[] =>
  evidence.passes.filter((pass) => pass.standing && pass.setUpId === setUpId).sort(byReading);

interface PassAside {
  readonly pass: PassEvidence;
  readonly code: AsideCode;
  /** `reads .457 in, one turn of the dial under the others` */
  readonly why: string;
  readonly sentence: string;
}

/** Passes of one kind: those that a figure is made of, and those that are not in it. */
export interface UsedPasses {
  readonly used: readonly PassEvidence[];
  readonly aside: readonly PassAside[];
  /** What the passes themselves still lack. */
  readonly lacks: readonly RatioLack[];
}

const aside = (pass: PassEvidence, code: AsideCode, why: string, so: string): PassAside => ({
  pass,
  code,
  why,
  sentence: `Pass ${pass.pass} ${why}${so}.`,
});

/** It was looked at after the pass, and the hand was on its zero. */
export const isBackAtZero = (pass: PassEvidence): boolean => pass.zeroReturn !== undefined && !zeroOff(pass);

/** It was looked at since, and nothing had moved: the pass counts, with what its zero was off in its interval. */
function zeroLookedAt({ answers }: SetUpNow): (pass: PassEvidence) => boolean {
  const looked = answers.findLast((answer) => codeOf(answer) === 'zero-not-returned');
  return (pass) => looked !== undefined && foundBy(looked) === false && wasThere(pass, looked);
}

/** Passes without their zero are left out while others came back to it. */
function withoutZeroOff(passes: readonly PassEvidence[], setUp: SetUpNow): PassAside[] {
  const counts = zeroLookedAt(setUp);
  const off = passes.filter((pass) => zeroOff(pass) && !counts(pass));
  return off.map((pass) =>
    aside(
      pass,
      'zero-off',
      `came back ${inches(Math.abs(pass.zeroReturn ?? 0))} off its zero`,
      ' and is left out',
    ),
  );
}

const turnsSaid = (turns: number): string => {
  const count = Math.abs(turns) === 1 ? 'one turn' : `${Math.abs(turns)} turns`;
  return turns > 0 ? `${count} of the dial under` : `${count} of the dial over`;
};

/** A turn of the dial apart from the others: named, and not averaged with them. */
function turnsApart(passes: readonly PassEvidence[], perTurn: number, spread: number) {
  const found = passesApart(
    passes.map(({ value }) => value),
    perTurn,
    spread,
  );
  const apart = found.apart.flatMap(({ index, turns }): PassAside[] => {
    const pass = passes[index];
    if (pass === undefined || turns === 0) return [];
    const why = `reads ${inches(pass.value)}, ${turnsSaid(turns)} the others`;
    return [aside(pass, 'turn-apart', why, '; it is not averaged with them')];
  });
  const odd = found.apart.filter(({ turns }) => turns === 0);
  return { apart, odd, undecided: found.undecided };
}

/**
 * Passes whose turns were not counted, whole turns away from those whose turns were: the count decides, however many
 * they are.
 */
function turnsByCount(
  passes: readonly PassEvidence[],
  perTurn: number,
  spread: number,
  isCounted: (pass: PassEvidence) => boolean,
): PassAside[] {
  const counted = passes.filter(isCounted);
  if (counted.length === 0 || spreadOf(counted) > spread + EQUAL) return [];
  const right = meanOf(counted);
  const by = `${counted.length === 1 ? 'pass' : 'passes'} ${listed(counted.map(({ pass }) => String(pass)))}`;
  return passes.flatMap((pass): PassAside[] => {
    const turns = Math.round((right - pass.value) / perTurn);
    if (isCounted(pass) || turns === 0 || Math.abs(right - pass.value - turns * perTurn) > spread + EQUAL)
      return [];
    const why = `reads ${inches(pass.value)}, ${turnsSaid(turns)} ${by}, whose turns were counted`;
    return [aside(pass, 'turn-apart', why, '; it is not averaged with it')];
  });
}

/** How far off the tool of these passes may be, and whether it is a dial. */
interface PassTool {
  readonly within: number;
  readonly dial: boolean;
}

/** Without a dial nothing turns: no two passes are a turn apart [m]. */
const NO_TURN = 1;

/** Which passes of one kind a figure is made of. Passes of one reading agree within the allowance either way. */
export function usedPasses(
  passes: readonly PassEvidence[],
  setUp: SetUpNow,
  lift: LiftRead,
  tool: PassTool = { within: setUp.errorLimit, dial: isDial(setUp.tool) },
): UsedPasses {
  const spread =
    2 *
    (tool.dial ? allowance('repeat') : Math.max(allowance('repeat'), tool.within)) *
    widening(passes.length);
  const perTurn = tool.dial ? setUp.perTurn : NO_TURN;
  const real = passes.filter(({ value }) => value > 0);
  const none = passes
    .filter(({ value }) => value <= 0)
    .map((pass) => aside(pass, 'no-lift', 'shows no lift', ''));
  const zeros = withoutZeroOff(real, setUp);
  const returned = real.filter((pass) => !zeros.some((each) => each.pass === pass));
  const since = countedSince(setUp);
  const byCount = turnsByCount(returned, perTurn, spread, (pass) => pass.counted || since(pass));
  const alike = returned.filter((pass) => !byCount.some((each) => each.pass === pass));
  const found = turnsApart(alike, perTurn, spread);
  const { odd, undecided } = found;
  const apart = [...byCount, ...found.apart];
  const used = returned.filter((pass) => !apart.some((each) => each.pass === pass));
  const onlyOff = real.length > 0 && returned.length === 0;
  return {
    used: onlyOff ? real : used,
    aside: onlyOff ? none : [...none, ...zeros, ...apart],
    lacks: [
      ...(onlyOff ? [{ code: 'none-back-at-zero', lift } as const] : []),
      ...(undecided
        ? undecidedLacks(used, perTurn, spread, lift)
        : odd.length > 0
          ? oddLacks(odd, alike)
          : lacksOf(onlyOff ? real : used, spread, lift)),
    ],
  };
}

export const meanOf = (passes: readonly PassEvidence[]): number =>
  passes.reduce((sum, { value }) => sum + value, 0) / passes.length;
