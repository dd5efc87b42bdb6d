import type { Evidence, LobeCard, TakenOnEngine } from '../../../server/mechanics/assessment/evidence.ts';
import type { OneSpring } from '../../../server/mechanics/springs/nested.ts';
import type { BuildSpec, Lobe } from '../../../shared/schemas/build-spec.ts';
import { ifKnown, inches, typed, without } from './stored.ts';

const lobe = (card: LobeCard): Lobe =>
  without({
    lobeLift: ifKnown(card.lobeLift),
    cardValveLift: ifKnown(card.valveLift),
    centreline: ifKnown(card.centreline, 'deg'),
    lash: ifKnown(card.lash),
    durations: card.durations?.map(({ atLift, duration }) => ({
      atLift: inches(atLift),
      duration: typed(duration, 'deg'),
    })),
  });

const taken = (given: TakenOnEngine) =>
  without({
    closedGapAtTdc: ifKnown(given.closedGapAtTdc),
    pistonFloor: given.pistonFloor,
    lobeLiftAtClosest: ifKnown(given.lobeLiftAtClosest),
    pushrodToHead: ifKnown(given.pushrodToHead),
  });

const spring = (given: OneSpring) =>
  without({
    installedHeight: ifKnown(given.installedHeight),
    seatLoad: ifKnown(given.seatLoad, 'lbf'),
    rate: ifKnown(given.rate, 'lbf/in'),
    solidHeight: ifKnown(given.solidHeight),
  });

export function specOf({ engine, card, springs, rockers, pushrods, taken: gaps }: Evidence): BuildSpec {
  return {
    ...(pushrods === undefined
      ? {}
      : {
          pushrods: without({
            intake: ifKnown(pushrods.intake),
            exhaust: ifKnown(pushrods.exhaust),
            over: pushrods.over,
            taken: pushrods.taken,
          }),
        }),
    engine: without({
      cylinders: engine.cylinders,
      intakeValves: engine.intakeValves,
      exhaustValves: engine.exhaustValves,
      firingOrder: engine.firingOrder,
      bankOrder: engine.bankOrder,
      stroke: ifKnown(engine.stroke),
      rodLength: ifKnown(engine.rodLength),
      pinOffset: ifKnown(engine.pinOffset),
      valveAngle: ifKnown(engine.valveAngle, 'deg'),
      lifter: engine.lifter,
      rockerMounting: engine.mounting,
      coverBolting: engine.coverBolting,
      use: engine.use,
      rodMaterial: engine.rodMaterial,
      studSize: engine.studSize,
      valveGear: engine.gear,
      shimStock: engine.shimStock?.map((shim) => typed(shim, 'mm')),
    }),
    cam: without({
      lashAt: card.lashAt,
      assumedRatio: card.assumedRatio,
      intake: lobe(card.intake),
      exhaust: lobe(card.exhaust),
    }),
    springs: without({
      ...spring(springs.nest?.outer ?? springs),
      inner: springs.nest && spring(springs.nest.inner),
      retainerToSeal: ifKnown(springs.retainerToSeal),
    }),
    rockers: without({
      nominalRatio: rockers.soldAs,
      plannedRatio: rockers.planned,
      plannedExhaustRatio: rockers.plannedExhaust,
      alsoPlanned: rockers.alsoPlanned === undefined ? undefined : [...rockers.alsoPlanned],
      family: rockers.family?.name,
      pivotToTip: ifKnown(rockers.pivotToTip),
    }),
    clearances: { intake: taken(gaps.intake), exhaust: taken(gaps.exhaust) },
  };
}
