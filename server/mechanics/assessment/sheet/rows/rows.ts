import { defined } from '../../../../../shared/defined.ts';
import { figureOf, type LotFigure } from '../../common/lot.ts';
import { byId, byPlace, placeOf } from '../../common/said.ts';
import { valveNames } from '../../common/valve-names.ts';
import type { Evidence, SheetEvidence, SheetKindName, Spring, ValvePlace } from '../../evidence.ts';
import { perTurnOf } from '../../ratio/read/dial.ts';

/** Lifts at one valve with one arm on one spring. */
export interface LiftLot {
  readonly spring: Spring;
  readonly armId?: string;
  /** What the arms were sold as when it was read, where those that are on are another set. */
  readonly soldAsThen?: number;
  /** Of an arm that nobody named, and that came off for the one on record. */
  readonly comesOff?: true;
  readonly readings: readonly SheetEvidence[];
  /** How the lash was, where that was said: left in where it was in any of them, out where it was in none. */
  readonly lash?: SheetEvidence['lash'];
  readonly figure: LotFigure;
  /** Readings that set-ups of the valve speak against, or that wait for others: they stay on record, in no figure. */
  readonly leftOut?: readonly string[];
  /** All of them: a set-up holds, and what is here speaks of nothing. */
  readonly aside?: true;
}

type LiftLotKey = Pick<LiftLot, 'spring' | 'armId' | 'soldAsThen' | 'comesOff'>;

/** Read with an arm of a set that is off since. */
export const isOfSetBefore = ({ soldAsThen, comesOff }: Pick<LiftLot, 'soldAsThen' | 'comesOff'>): boolean =>
  soldAsThen !== undefined || comesOff === true;

/** Those of the arms that are on, where there are any; else those of a set that is off since. */
export function ofNowElseAll<Each extends Pick<LiftLot, 'soldAsThen' | 'comesOff'>>(
  all: readonly Each[],
): readonly Each[] {
  const ofNow = all.filter((each) => !isOfSetBefore(each));
  return ofNow.length > 0 ? ofNow : all;
}

/** What was read of one valve, put in order; nothing is judged yet. */
export interface SheetRow extends ValvePlace {
  readonly armId?: string;
  readonly lobes: readonly SheetEvidence[];
  readonly lobe?: LotFigure;
  /** The lots of the arm that sits there now, one for each spring. */
  readonly lifts: readonly LiftLot[];
  /** The lots of every arm that has sat there, for swap tests. */
  readonly everyLift: readonly LiftLot[];
  readonly others: readonly SheetEvidence[];
}

function lashOf(readings: readonly SheetEvidence[]): LiftLot['lash'] {
  if (readings.some(({ lash }) => lash === 'set')) return 'set';
  return readings.length > 0 && readings.every(({ lash }) => lash === 'zero') ? 'zero' : undefined;
}

/** The readings that count: standing, and with the arms the sheet is about. By id, so that entry order says nothing. */
const countedOf = (evidence: Evidence): SheetEvidence[] =>
  evidence.sheet.filter(({ standing, arms }) => standing && arms === 'these').toSorted(byId);

/** Valves of the engine, and any that were read beyond them. */
function placesOf(evidence: Evidence, counted: readonly SheetEvidence[]): ValvePlace[] {
  if (counted.length === 0) return [];
  const most = Math.max(evidence.engine.cylinders ?? 0, ...counted.map(({ cylinder }) => cylinder));
  const ofEngine = Array.from({ length: most }, (_, index) => index + 1).flatMap((cylinder) =>
    valveNames(evidence).map((valve): ValvePlace => ({ cylinder, valve })),
  );
  const beyond = counted.map(({ cylinder, valve }): ValvePlace => ({ cylinder, valve }));
  return [...new Map([...ofEngine, ...beyond].map((place) => [placeOf(place), place])).values()].sort(
    byPlace,
  );
}

/**
 * The arm of a reading: as kept with it; where none was, the one that sits there, if no other was ever named on that
 * valve. An arm that was named late is then known of the readings before.
 */
function armOf(
  reading: SheetEvidence,
  seat: string | undefined,
  named: ReadonlySet<string>,
): string | undefined {
  if (reading.armId !== undefined || reading.comesOff === true) return reading.armId;
  const [only] = named;
  return named.size === 1 && seat === only ? only : undefined;
}

function liftLots(evidence: Evidence, lifts: readonly SheetEvidence[], seat: string | undefined): LiftLot[] {
  const named = new Set([
    ...lifts.flatMap(({ armId }) => armId ?? []),
    ...(seat === undefined ? [] : [seat]),
  ]);
  const keyed = lifts.map((reading) => ({ reading, armId: armOf(reading, seat, named) }));
  // By what the arm is called: its id says when it was named.
  const nameOf = (id: string | undefined) => evidence.arms.find((arm) => arm.id === id)?.name ?? '';
  const setOf = ({ soldAsThen, comesOff }: SheetEvidence) => `${soldAsThen ?? ''}\n${comesOff ?? ''}`;
  const keyOf = ({ reading, armId }: (typeof keyed)[number]) =>
    `${reading.spring}\n${armId ?? ''}\n${setOf(reading)}`;
  const keys = [
    ...new Map(
      keyed
        .map(
          (each) => [`${each.reading.spring}\n${nameOf(each.armId)}\n${keyOf(each)}`, keyOf(each)] as const,
        )
        .toSorted(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)),
    ).values(),
  ];
  return keys.map((key) => {
    const own = keyed.filter((each) => keyOf(each) === key);
    const readings = own.map(({ reading }) => reading);
    const [first] = own;
    return {
      spring: first?.reading.spring ?? 'not-said',
      ...defined({
        armId: first?.armId,
        soldAsThen: first?.reading.soldAsThen,
        comesOff: first?.reading.comesOff,
        lash: lashOf(readings),
      }),
      readings,
      figure: figureOf(readings, perTurnOf(evidence, readings)),
    };
  });
}

/** After a swap only what was read with the arm that sits there now is the valve's own figure. */
function ownLots(lots: readonly LiftLot[], seat: string | undefined): LiftLot[] {
  const springs = [...new Set(lots.map(({ spring }) => spring))];
  return springs.flatMap((spring) => {
    const all = lots.filter((lot) => lot.spring === spring);
    const here = ofNowElseAll(all);
    const [only] = here;
    const own = here.find(({ armId }) => armId !== undefined && armId === seat);
    const unnamed = here.find(({ armId }) => armId === undefined);
    // What was read with an arm that has moved on is not the valve's own figure any more.
    const kept = only?.armId === undefined || seat === undefined || only.armId === seat;
    const found = own ?? unnamed ?? (here.length === 1 && kept ? only : undefined);
    return found === undefined ? [] : [found];
  });
}

/** The rows of the sheet, in the engine's own numbering. */
export function rowsOf(evidence: Evidence): SheetRow[] {
  const counted = countedOf(evidence);
  return placesOf(evidence, counted).map((place) => {
    const here = counted.filter((each) => placeOf(each) === placeOf(place));
    const of = (kind: SheetKindName) => here.filter((each) => each.kind === kind);
    const armId = evidence.seats.find((seat) => placeOf(seat) === placeOf(place))?.armId;
    const lobes = of('lobe-lift');
    const everyLift = liftLots(evidence, of('valve-lift'), armId);
    return {
      ...place,
      ...defined({ armId }),
      lobes,
      ...(lobes.length === 0 ? {} : { lobe: figureOf(lobes, perTurnOf(evidence, lobes)) }),
      lifts: ownLots(everyLift, armId),
      everyLift,
      others: here.filter(({ kind }) => kind !== 'lobe-lift' && kind !== 'valve-lift'),
    };
  });
}

/** What tells the doubts of a lot from those of another; one that was read before the arms were changed keeps its own. */
export function amongLots({ everyLift }: Pick<SheetRow, 'everyLift'>, lot: LiftLotKey): string {
  const among = lot.armId === undefined ? lot.spring : `${lot.spring}-${lot.armId}`;
  const isBeside =
    !isOfSetBefore(lot) &&
    everyLift.some(
      (other) => isOfSetBefore(other) && other.spring === lot.spring && other.armId === lot.armId,
    );
  return isBeside ? `${among}-on-now` : among;
}
