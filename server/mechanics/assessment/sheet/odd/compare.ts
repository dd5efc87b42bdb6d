import { SIDES } from '../../../../../shared/sides.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence, Spring } from '../../evidence.ts';
import type { SetUpKnown } from '../../ratio/compared/known.ts';
import { type LobeOfSetUp, lobesOfSetUps } from '../../ratio/compared/lobes-read.ts';
import { liftHalf } from '../../ratio/read/dial.ts';
import type { SheetSideDetail, SheetSwapDetail } from '../rows/detail.ts';
import { armLots } from '../rows/lots-of-swaps.ts';
import type { SheetRow } from '../rows/rows.ts';
import type { LobesRead } from '../swaps/swap-lifts.ts';
import { swapsAcross, swapsOf } from '../swaps/swaps.ts';
import { sideOf } from './odd.ts';
import { positionsOf } from './position.ts';

/** The springs that lifts were read on; lobes alone are one sheet too, wherever they were read. */
function springsOf(rows: readonly SheetRow[], ofSetUps: readonly LobeOfSetUp[]): Spring[] {
  const found = [...new Set(rows.flatMap(({ lifts }) => lifts.map(({ spring }) => spring)))].sort();
  const lobes = ofSetUps.length > 0 || rows.some(({ lobe }) => lobe !== undefined);
  return found.length > 0 || !lobes ? found : ['not-said'];
}

interface Compared {
  readonly sides: readonly SheetSideDetail[];
  readonly swaps: readonly SheetSwapDetail[];
  /** What tells the parts of a position from one another. */
  readonly ofPositions: readonly AssessedQuestion[];
}

/** Valves of which a strong question is open, and the readings of lifts that such questions are about. */
interface Doubted {
  readonly doubtful: ReadonlySet<string>;
  readonly doubted: ReadonlySet<string>;
  /** Valves that are low by just their lash, while nobody said whether it was out. */
  readonly lashAsked: ReadonlySet<string>;
}

/** Lobe lifts by valve: of the sheet, else read in a set-up; a caliper's are left out, since they read low. */
function lobesRead(evidence: Evidence, rows: readonly SheetRow[], known: readonly SetUpKnown[]): LobesRead {
  const ofSetUps = lobesOfSetUps(known).map((lobe) => [placeOf(lobe), lobe] as const);
  const ofSheet = rows.flatMap(({ lobe, lobes, ...place }) =>
    lobe?.value === undefined || lobe.value <= 0 || lobes.some(({ tool }) => tool === 'caliper')
      ? []
      : [[placeOf(place), { value: lobe.value, half: liftHalf(evidence, lobes) }] as const],
  );
  return new Map([...ofSetUps, ...ofSheet]);
}

/** Valves set against their siblings, on each spring, and what the swaps tell. */
export function compare(
  evidence: Evidence,
  rows: readonly SheetRow[],
  { doubtful, doubted, lashAsked }: Doubted,
  known: readonly SetUpKnown[],
): Compared {
  const every = armLots(evidence, rows, known, new Set());
  const lots = armLots(evidence, rows, known, doubted);
  const lobes = lobesRead(evidence, rows, known);
  const ofSetUps = lobesOfSetUps(known);
  const made = [
    ...SIDES.flatMap((side) => swapsOf(evidence, { lots, every }, [side], lobes)),
    ...swapsAcross(evidence, { lots, every }, lobes),
  ];
  const { swaps, questions } = positionsOf(made, evidence.answers);
  const sides = springsOf(rows, ofSetUps).flatMap((spring) =>
    SIDES.map((side) =>
      sideOf(evidence, rows, { side, spring }, { doubtful, lashAsked, swaps, lots, ofSetUps }),
    ),
  );
  return { sides, swaps, ofPositions: questions };
}
