import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { IN } from '../../../kit/si.ts';
import type { Pass, QuestionInput } from '../../../questions/types.ts';
import { medianKnown } from '../../../valve-sheet/siblings.ts';
import type { Evidence, LifterState, SheetEvidence, Side, ValvePlace } from '../../evidence.ts';
import { madeIn } from '../../ratio/claims/nominals.ts';
import { perTurnOf } from '../../ratio/read/dial.ts';
import type { LiftLot, SheetRow } from '../rows/rows.ts';

/** What a row can be set against where the card or the box says nothing: the middle of its siblings. */
interface SideMiddle {
  readonly lobeLift?: number;
  readonly ratio?: number;
}

const lotRatio = (row: SheetRow, lot: LiftLot): number | undefined =>
  lot.figure.value === undefined || row.lobe?.value === undefined
    ? undefined
    : lot.figure.value / row.lobe.value;

/** The middles of one side: three rows at the least, else one odd row is its own measure. */
export function middlesOfSide(rows: readonly SheetRow[], side: Side): SideMiddle {
  const own = rows.filter(({ valve }) => sideOfValve(valve) === side);
  const lobes = own.flatMap(({ lobe }) => lobe?.value ?? []);
  const ratios = own.flatMap((row) => row.lifts.flatMap((lot) => lotRatio(row, lot) ?? []));
  const [lobeLift, ratio] = [medianKnown(lobes), medianKnown(ratios)];
  return {
    ...(lobeLift === undefined || lobes.length < 3 ? {} : { lobeLift }),
    ...(ratio === undefined || ratios.length < 3 ? {} : { ratio }),
  };
}

const passes = (readings: readonly SheetEvidence[]): Pass[] =>
  readings.flatMap(({ id, reading }) =>
    reading.value === undefined || reading.value <= 0 ? [] : [{ id, lift: reading.value / IN }],
  );

function lifterOf(readings: readonly SheetEvidence[]): LifterState {
  const said = new Set(readings.map(({ lifter }) => lifter));
  const [only = 'not-said'] = said;
  return said.size === 1 ? only : 'not-said';
}

const other = (side: Side): Side => (side === 'intake' ? 'exhaust' : 'intake');

interface Beside {
  readonly own: SideMiddle;
  readonly other: SideMiddle;
  /** Lifts of the other valves of this side on the same spring [m]. */
  readonly peaks: readonly number[];
}

const positive = (si: number | undefined): number | undefined =>
  si === undefined || si <= 0 ? undefined : si / IN;

/** What the questions are asked from, for one lot of lifts of one row; inches, as the questions have them. */
export function questionInput(
  evidence: Evidence,
  row: ValvePlace & Pick<SheetRow, 'lobes'>,
  lot: Pick<LiftLot, 'spring' | 'readings' | 'lash' | 'soldAsThen'>,
  beside: Beside,
): QuestionInput {
  const { card, rockers } = evidence;
  const own = card[sideOfValve(row.valve)];
  const caliper = row.lobes.length > 0 && row.lobes.every(({ tool }) => tool === 'caliper');
  return {
    valvePasses: passes(lot.readings),
    lobePasses: passes(row.lobes),
    spring: lot.spring,
    lifter: lifterOf(lot.readings),
    // What the lash may have left in is asked once of the sheet, not on every row.
    lash: lot.lash === 'zero' ? 'zero' : 'not-said',
    restsOn: 'not-said',
    alignment: 'not-said',
    perTurn: perTurnOf(evidence, [...lot.readings, ...row.lobes]) / IN,
    inMillimetres: lot.readings.length > 0 && lot.readings.every(({ readAs }) => readAs.endsWith(' mm')),
    graduation: 0.001,
    lobeSource: row.lobes.length === 0 ? 'card' : caliper ? 'caliper' : 'indicator',
    lobesBySiblings: own.lobeLift === undefined || card[other(sideOfValve(row.valve))].lobeLift === undefined,
    cardLobeLift: positive(own.lobeLift ?? beside.own.lobeLift),
    otherCardLobeLift: positive(card[other(sideOfValve(row.valve))].lobeLift ?? beside.other.lobeLift),
    cardValveLift: positive(own.valveLift),
    cardRatio: card.assumedRatio,
    nominalRatio:
      lot.soldAsThen ?? rockers.soldAs ?? (card.assumedRatio === undefined ? beside.own.ratio : undefined),
    madeIn: madeIn(evidence),
    otherPeaks: beside.peaks.filter((peak) => peak > 0).map((peak) => peak / IN),
  };
}
