import { type ArmOnValve, type SwapVerdict, swapTests } from '../../valve-sheet/swap-test.ts';
import type { Judgement } from '../assessment.ts';
import { byPlace, listed, placeOf } from '../common/said.ts';
import type { Evidence, Side, Spring, ValvePlace } from '../evidence.ts';
import type { SheetSwapDetail } from './detail.ts';
import type { LiftLot, SheetRow } from './rows.ts';

const WORDS: Readonly<Record<SwapVerdict, (arms: string, places: string) => string>> = {
  part: (arms) => `The difference went with the arm: it is the part (${arms}). Only now look at its lot.`,
  position: (_, places) =>
    `The difference stayed on the valve: it is the position or how it is measured (${places}). Swap the pushrods, then look at tip and stud height.`,
  both: (arms, places) => `Both the arm and the position differ (${arms}; ${places}).`,
  gone: () => 'The difference is gone after refitting: read both again before anything is blamed.',
};

/** One arm on one valve, with where it was. */
interface Placed extends ArmOnValve {
  readonly at: ValvePlace;
  readonly method: string;
}

/** Lifts are brought to one lobe, so that a low lobe is not taken for a low arm. */
function onOneLobe(row: SheetRow, lot: LiftLot, medianLobe: number | undefined): number | undefined {
  const { value } = lot.figure;
  const lobe = row.lobe?.value;
  if (value === undefined) return undefined;
  return lobe === undefined || medianLobe === undefined ? value : (value * medianLobe) / lobe;
}

/** Readings taken the same way alone are set against each other. */
const methodOf = ({ spring, readings }: LiftLot): string =>
  `${spring}|${[...new Set(readings.map(({ lifter }) => lifter))].sort().join()}`;

function placed(
  rows: readonly SheetRow[],
  side: Side,
  medianLobe: number | undefined,
  doubtful: ReadonlySet<string>,
): Placed[] {
  return rows
    .filter((row) => row.valve === side && !doubtful.has(placeOf(row)))
    .toSorted(byPlace)
    .flatMap((row) =>
      row.everyLift.flatMap((lot) => {
        const lift = onOneLobe(row, lot, medianLobe);
        if (lift === undefined || lot.armId === undefined) return [];
        return [{ arm: lot.armId, place: placeOf(row), lift, at: row, method: methodOf(lot) }];
      }),
    );
}

/** What the swaps on record decide, in whatever order arms and readings came. */
export function swapsOf(
  evidence: Evidence,
  rows: readonly SheetRow[],
  side: Side,
  medianLobe: number | undefined,
  doubtful: ReadonlySet<string>,
): SheetSwapDetail[] {
  const all = placed(rows, side, medianLobe, doubtful);
  const nameOf = (id: string) => evidence.arms.find((arm) => arm.id === id)?.name ?? 'an arm';
  return [...new Set(all.map(({ method }) => method))].sort().flatMap((method) => {
    const own = all
      .filter((each) => each.method === method)
      .toSorted((a, b) => byArm(a, b) || byPlace(a.at, b.at));
    const spring = springOf(method);
    return swapTests(own).map((outcome): SheetSwapDetail => {
      const [one, two] = outcome.arms;
      const judgementId = [
        'swap',
        method.replace('|', ':'),
        one,
        two,
        ...outcome.places.map((p) => p.replace(' ', '-')),
      ].join(':');
      return { ...outcome, side, spring, armNames: [nameOf(one), nameOf(two)], judgementId };
    });
  });
}

const byArm = (a: Placed, b: Placed): number => (a.arm < b.arm ? -1 : a.arm > b.arm ? 1 : 0);

function springOf(method: string): Spring {
  const [spring] = method.split('|');
  return spring === 'light' || spring === 'running' ? spring : 'not-said';
}

export const swapJudgement = (
  swap: SheetSwapDetail,
  restsOn: (place: string) => readonly string[],
): Judgement => ({
  id: swap.judgementId,
  about: { of: 'side', valve: swap.side },
  against: { to: 'siblings' },
  sentence: `Swap of ${swap.armNames.join(' and ')} between ${listed(swap.places)}: ${WORDS[swap.verdict](listed(swap.armNames), listed(swap.places))}`,
  lacks: [],
  restsOn: swap.places.flatMap(restsOn),
});
