import type {
  ArmEvidence,
  Evidence,
  PassEvidence,
  SetUpEvidence,
  Side,
} from '../../../server/mechanics/assessment/evidence.ts';

export const IN = 0.0254;

/** A build of which nothing is known but that a call is about it. */
export const nothingKnown: Evidence = {
  call: { goal: 'verify-ratio', contact: 'none', engineState: 'apart', closed: false },
  engine: {},
  card: { intake: {}, exhaust: {} },
  springs: {},
  rockers: {},
  taken: { intake: {}, exhaust: {} },
  arms: [],
  seats: [],
  setUps: [],
  statements: [],
  passes: [],
  sheet: [],
  lash: [],
  tipMarks: [],
  part: [],
  answers: [],
  workings: [],
  notes: [],
  catalogueRatios: [],
  limits: {},
};

/** A set-up with nothing wrong: light spring, solid lifter, zero lash, plunger parallel, lobe from the card. */
export const cleanSetUp: SetUpEvidence = {
  id: 'set-up-1',
  number: 1,
  cylinder: 1,
  valve: 'intake',
  armId: 'arm-a',
  spring: 'light',
  lifter: 'solid',
  lash: 'zero',
  restsOn: 'retainer-flat',
  alignment: 'parallel',
  graduation: 0.001 * IN,
  perTurn: 0.1 * IN,
  travel: 1 * IN,
  pushedIn: 0.8 * IN,
  errorLimit: 0.0025 * IN,
  lobeSource: 'card',
  lobeErrorLimit: 0.0025 * IN,
};

export const stamped = (ratioStamp: string, id = 'arm-a'): ArmEvidence => ({
  id,
  name: id.replace('arm-', '').toUpperCase(),
  ratioStamp,
  otherNumber: '',
  boxLabel: '',
});

/** Passes of one kind in a set-up, in inches as they were read. */
export function passesOf(
  kind: PassEvidence['kind'],
  inches: readonly number[],
  more: Partial<PassEvidence> = {},
): PassEvidence[] {
  const setUpId = more.setUpId ?? cleanSetUp.id;
  return inches.map((value, index) => ({
    id: `${setUpId}-${kind}-${index + 1}`,
    line: index + 1,
    standing: true,
    setUpId,
    kind,
    pass: index + 1,
    value: value * IN,
    counted: false,
    readAs: `${value} in`,
    ...more,
  }));
}

/** The card of one side in inches. */
export const lobe = (lobeLift: number, more: { lash?: number; valveLift?: number } = {}) => ({
  lobeLift: lobeLift * IN,
  ...(more.lash === undefined ? {} : { lash: more.lash * IN }),
  ...(more.valveLift === undefined ? {} : { valveLift: more.valveLift * IN }),
});

/** One clean set-up on 1 intake with these lifts, the arm stamped 1.6, the card's lobes .348 and .339. */
export function buildOf(lifts: readonly number[], more: Partial<Evidence> = {}): Evidence {
  return {
    ...nothingKnown,
    card: { assumedRatio: 1.6, intake: lobe(0.348), exhaust: lobe(0.339) },
    arms: [stamped('1.6')],
    seats: [{ cylinder: 1, valve: 'intake', armId: 'arm-a' }],
    setUps: [cleanSetUp],
    passes: passesOf('valve-lift', lifts),
    ...more,
  };
}

export const other = (valve: Side): Side => (valve === 'intake' ? 'exhaust' : 'intake');
