import { defined } from '../../../../../shared/defined.ts';
import { isHydraulicLifter, isSolidLifter } from '../../../../../shared/lifters.ts';
import type { Evidence, LifterState, Spring, ValvePlace } from '../../evidence.ts';
import type { SetUpKnown } from '../../ratio/compared/known.ts';
import { liftHalf } from '../../ratio/read/dial.ts';
import { meanOf } from '../../ratio/read/passes.ts';
import type { SheetRow } from './rows.ts';

/** What was read of one valve with one arm, on the sheet or in a set-up of its own, taken in one way. */
export interface ArmLot extends ValvePlace {
  readonly armId?: string;
  readonly soldAsThen?: number;
  readonly comesOff?: true;
  readonly spring: Spring;
  /** Readings taken the same way alone are set against each other: `light|firm|out`. */
  readonly method: string;
  /** The lash was said to be out: of a sheet as was answered of all of it. */
  readonly lashOut: boolean;
  /** Nothing of it is known to have been read with the lash out, where there is lash: what it is short by may be that. */
  readonly lashOpen: boolean;
  /** Left out where the passes do not go together. */
  readonly value?: number;
  readonly half: number;
  readonly passes: number;
  readonly restsOn: readonly string[];
}

/** A lifter that does not sink is one kind, whichever it is; one that was not said is the engine's. */
function lifterOf({ engine }: Evidence, lifters: readonly LifterState[]): string {
  const solid = isSolidLifter(engine.lifter);
  const kinds = lifters.map((lifter) =>
    lifter === 'locked' || lifter === 'solid' || (lifter === 'not-said' && solid) ? 'firm' : lifter,
  );
  const [only = 'not-said'] = kinds;
  return new Set(kinds).size === 1 ? only : 'mixed';
}

/** A hydraulic lifter takes it up. */
const hasLash = ({ engine }: Evidence): boolean => !isHydraulicLifter(engine.lifter);

function ofSheet(evidence: Evidence, row: SheetRow): ArmLot[] {
  const counted = row.everyLift.filter(({ aside }) => aside !== true);
  return counted.map(({ spring, armId, soldAsThen, comesOff, readings, lash, figure }) => ({
    cylinder: row.cylinder,
    valve: row.valve,
    spring,
    // Where nobody said how the lash was, it is read like the set-ups that have it out.
    method: [
      spring,
      lifterOf(
        evidence,
        readings.map(({ lifter }) => lifter),
      ),
      lash === 'set' ? 'set not said' : 'out',
    ].join('|'),
    lashOut: lash === 'zero',
    lashOpen: hasLash(evidence) && readings.every((each) => each.lash !== 'zero'),
    half: liftHalf(evidence, readings),
    passes: figure.passes - figure.apart.length,
    restsOn: readings.map(({ id }) => id),
    ...defined({ armId, soldAsThen, comesOff, value: figure.value }),
  }));
}

/** What was read in a set-up, where nothing doubts it; with the lash left in it is a way of reading of its own. */
function ofSetUp(evidence: Evidence, { read, doubts, differs, besideSheet }: SetUpKnown): ArmLot[] {
  const { setUp, valve } = read;
  if (valve.used.length === 0 || doubts.length > 0) return [];
  if (differs?.now === 'aside' || besideSheet === 'aside') return [];
  const lash = setUp.lash === 'set' ? `set ${setUp.lashSetting ?? 'not said'}` : 'out';
  return [
    {
      cylinder: setUp.cylinder,
      valve: setUp.valve,
      spring: setUp.spring,
      method: [setUp.spring, lifterOf(evidence, [setUp.lifter]), lash].join('|'),
      lashOut: setUp.lash === 'zero',
      lashOpen: hasLash(evidence) && setUp.lash !== 'zero',
      half: setUp.errorLimit,
      passes: valve.used.length,
      restsOn: valve.used.map(({ id }) => id),
      ...(valve.lacks.length > 0 ? {} : { value: meanOf(valve.used) }),
      ...defined({ armId: setUp.armId, soldAsThen: setUp.soldAsThen, comesOff: setUp.comesOff }),
    },
  ];
}

/** Lots of every valve and arm; those with a reading in doubt are left out. */
export function armLots(
  evidence: Evidence,
  rows: readonly SheetRow[],
  known: readonly SetUpKnown[],
  doubted: ReadonlySet<string>,
): ArmLot[] {
  return [
    ...rows
      .flatMap((row) => ofSheet(evidence, row))
      .filter(({ restsOn }) => !restsOn.some((id) => doubted.has(id))),
    ...known.flatMap((each) => ofSetUp(evidence, each)),
  ];
}
