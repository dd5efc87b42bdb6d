import { defined } from '../../../shared/defined.ts';
import type { BuildSpec, Lobe } from '../../../shared/schemas/build-spec.ts';
import { siIf, siOf } from '../../../shared/schemas/entered.ts';
import type { Evidence, LobeCard, TakenOnEngine } from '../../mechanics/assessment/evidence.ts';

const lobeCard = (lobe: Lobe | undefined): LobeCard =>
  defined({
    lobeLift: siIf(lobe?.lobeLift),
    valveLift: siIf(lobe?.cardValveLift),
    centreline: siIf(lobe?.centreline),
    lash: siIf(lobe?.lash),
    durations: lobe?.durations?.map(({ atLift, duration }) => ({
      atLift: siOf(atLift),
      duration: siOf(duration),
    })),
  });

type Clearances = NonNullable<BuildSpec['clearances']>['intake'];

const takenOn = (gaps: Clearances): TakenOnEngine =>
  defined({
    closedGapAtTdc: siIf(gaps?.closedGapAtTdc),
    pistonFloor: gaps?.pistonFloor,
    lobeLiftAtClosest: siIf(gaps?.lobeLiftAtClosest),
    pushrodToHead: siIf(gaps?.pushrodToHead),
  });

/** Engine, card, springs, rockers and the gaps taken on the engine, as the newest revision has them. */
export function specEvidence({
  engine,
  cam,
  springs,
  rockers,
  clearances,
}: BuildSpec): Pick<Evidence, 'engine' | 'card' | 'springs' | 'rockers' | 'taken'> {
  return {
    engine: defined({
      cylinders: engine?.cylinders,
      intakeValves: engine?.intakeValves,
      exhaustValves: engine?.exhaustValves,
      gear: engine?.valveGear,
      lifter: engine?.lifter,
      mounting: engine?.rockerMounting,
      coverBolting: engine?.coverBolting,
      use: engine?.use,
      rodMaterial: engine?.rodMaterial,
      studSize: engine?.studSize,
      shimStock: engine?.shimStock?.map(siOf),
      stroke: siIf(engine?.stroke),
      rodLength: siIf(engine?.rodLength),
      pinOffset: siIf(engine?.pinOffset),
      valveAngle: siIf(engine?.valveAngle),
      firingOrder: engine?.firingOrder,
      bankOrder: engine?.bankOrder,
    }),
    card: {
      ...defined({ assumedRatio: cam?.assumedRatio, lashAt: cam?.lashAt }),
      intake: lobeCard(cam?.intake),
      exhaust: lobeCard(cam?.exhaust),
    },
    springs: defined({
      installedHeight: siIf(springs?.installedHeight),
      seatLoad: siIf(springs?.seatLoad),
      rate: siIf(springs?.rate),
      solidHeight: siIf(springs?.solidHeight),
      retainerToSeal: siIf(springs?.retainerToSeal),
    }),
    rockers: defined({
      soldAs: rockers?.nominalRatio,
      planned: rockers?.plannedRatio,
      plannedExhaust: rockers?.plannedExhaustRatio,
      alsoPlanned: rockers?.alsoPlanned,
      pivotToTip: siIf(rockers?.pivotToTip),
    }),
    taken: { intake: takenOn(clearances?.intake), exhaust: takenOn(clearances?.exhaust) },
  };
}
