import { defined } from '../../../shared/defined.ts';
import type { BuildSpec, Lobe } from '../../../shared/schemas/build-spec.ts';
import { siIf, siOf } from '../../../shared/schemas/entered.ts';
import type { Evidence, LobeCard, TakenOnEngine } from '../../mechanics/assessment/evidence.ts';
import { asOneSpring, type OneSpring } from '../../mechanics/springs/nested.ts';

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

type SpringSaid = Pick<
  NonNullable<BuildSpec['springs']>,
  'installedHeight' | 'seatLoad' | 'rate' | 'solidHeight'
>;

const oneSpring = (said: SpringSaid | undefined): OneSpring =>
  defined({
    installedHeight: siIf(said?.installedHeight),
    seatLoad: siIf(said?.seatLoad),
    rate: siIf(said?.rate),
    solidHeight: siIf(said?.solidHeight),
  });

/** One spring, or the two of a nest with what they come to together. */
function springsOf(said: BuildSpec['springs']): Evidence['springs'] {
  const [outer, inner] = [oneSpring(said), oneSpring(said?.inner)];
  if (Object.keys(inner).length === 0) return outer;
  return { ...asOneSpring({ outer, inner }), nest: { outer, inner } };
}

const pushrodsOf = ({ intake, exhaust, over, taken }: NonNullable<BuildSpec['pushrods']>) =>
  defined({ intake: siIf(intake), exhaust: siIf(exhaust), over, taken });

/** Engine, card, springs, rockers and the gaps taken on the engine, as the newest revision has them. */
export function specEvidence({
  engine,
  cam,
  springs,
  rockers,
  clearances,
  pushrods,
}: BuildSpec): Pick<Evidence, 'engine' | 'card' | 'springs' | 'rockers' | 'taken' | 'pushrods'> {
  return {
    ...(pushrods === undefined ? {} : { pushrods: pushrodsOf(pushrods) }),
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
    springs: {
      ...springsOf(springs),
      ...defined({ retainerToSeal: siIf(springs?.retainerToSeal) }),
    },
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
