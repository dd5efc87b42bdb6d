import type {
  ArmEvidence,
  PassEvidence,
  PassKind,
  SetUpEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { IN, MM } from '../../../../server/mechanics/kit/si.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { Chance } from '../../explain-readings/random.ts';
import { known, maybe, RATIOS, type TrueEngine, thou } from './random-engine.ts';

const STAMPS = ['', '16', '60', 'RACE'] as const;

export function armsOf(chance: Chance, { careful, nominal }: TrueEngine): ArmEvidence[] {
  const count = chance.pick([0, 1, 2, 3]);
  return Array.from({ length: count }, (_, index) => ({
    id: `arm-${index + 1}`,
    name: 'ABC'.charAt(index),
    ratioStamp: chance.happens(0.5) ? String(careful ? nominal : chance.pick(RATIOS)) : chance.pick(STAMPS),
    otherNumber: chance.happens(0.3) ? '4471' : '',
    boxLabel: '',
  }));
}

/** How it is read: of a careful caller everything is said, and only the spring may be the running one. */
function stateOf(
  chance: Chance,
  careful: boolean,
): Pick<SetUpEvidence, 'spring' | 'lifter' | 'lash' | 'alignment'> {
  if (careful)
    return {
      spring: chance.pick(['light', 'light', 'light', 'running'] as const),
      lifter: chance.pick(['solid', 'solid', 'locked'] as const),
      lash: chance.happens(0.1) ? 'set' : 'zero',
      alignment: 'parallel',
    };
  return {
    spring: chance.pick(['light', 'light', 'running', 'not-said'] as const),
    lifter: chance.pick(['solid', 'solid', 'locked', 'hydraulic', 'not-said'] as const),
    lash: chance.pick(['zero', 'zero', 'zero', 'set', 'not-said'] as const),
    alignment: chance.pick(['parallel', 'parallel', 'leaning', 'not-said'] as const),
  };
}

export function setUpOf(
  chance: Chance,
  number: number,
  arms: readonly ArmEvidence[],
  { careful }: TrueEngine,
): SetUpEvidence {
  const state = stateOf(chance, careful);
  const metric = chance.happens(0.1);
  return {
    id: `set-up-${number}`,
    number,
    cylinder: chance.pick([1, 1, 1, 2]),
    valve: chance.pick(['intake', 'intake', 'exhaust'] as const),
    ...state,
    restsOn: chance.pick(['retainer-flat', 'retainer-edge', 'valve-tip', 'not-said'] as const),
    graduation: metric ? 0.01 * MM : 0.001 * IN,
    perTurn: metric ? 1 * MM : chance.pick([0.1, 0.1, 0.1, 0.05]) * IN,
    errorLimit: chance.pick([0.0015, 0.0025, 0.0035]) * IN,
    lobeSource: chance.pick(['card', 'indicator', 'indicator', 'caliper'] as const),
    lobeErrorLimit: 0.002 * IN,
    ...known<SetUpEvidence>({
      armId: maybe(chance, 0.7, () => (arms.length === 0 ? undefined : chance.pick(arms).id)),
      lashSetting:
        state.lash === 'set' ? maybe(chance, 0.6, () => thou(chance.between(0.008, 0.026))) : undefined,
      travel: maybe(chance, 0.5, () => 1 * IN),
      pushedIn: maybe(chance, 0.4, () =>
        thou(careful ? chance.between(0.78, 0.9) : chance.between(0.3, 0.9)),
      ),
    }),
  };
}

/** What is wrong with a set-up's reading, in inches; most are right. */
function faultOf(chance: Chance, setUp: SetUpEvidence, careful: boolean): { add: number; times: number } {
  const turn = setUp.perTurn / IN;
  const none = { add: 0, times: 1 };
  if (careful && chance.happens(0.85)) return none;
  return chance.pick([
    none,
    none,
    none,
    none,
    none,
    { add: -turn, times: 1 },
    { add: turn, times: 1 },
    { add: 0, times: 1 / Math.cos(0.2) },
    { add: 0, times: 25.4 },
    { add: 0, times: 0.1 },
    { add: chance.between(-0.03, 0.03), times: 1 },
  ]);
}

interface Kind {
  readonly kind: PassKind;
  readonly lift: number;
  readonly atLobeLift?: number;
}

const HIGHEST = 50;

/** Passes of one kind: noise, a slip or a turn in single ones, a lifter that sinks, zeros that don't return. */
function passesOf(
  chance: Chance,
  setUp: SetUpEvidence,
  { kind, lift, atLobeLift }: Kind,
  count: number,
  careful: boolean,
): PassEvidence[] {
  const sink = setUp.lifter === 'hydraulic' && kind === 'valve-lift' ? chance.between(0, 0.008) : 0;
  const fault = kind === 'valve-lift' ? faultOf(chance, setUp, careful) : { add: 0, times: 1 };
  return Array.from({ length: count }, (_, index) => {
    const slip = chance.happens(careful ? 0.01 : 0.05) ? chance.pick([0.1, -0.1, 0.01, 0.027]) : 0;
    const noise = chance.normal(careful ? 0.0006 : 0.0012);
    const value = (lift + noise + slip - sink * index) * fault.times + fault.add;
    return {
      id: `${setUp.id}-${kind}-${index + 1}${atLobeLift === undefined ? '' : `-${Math.round(atLobeLift * 1e6)}`}`,
      line: 0,
      standing: !chance.happens(0.07),
      setUpId: setUp.id,
      kind,
      pass: index + 1,
      value: thou(Math.min(HIGHEST, Math.max(0.001, value))),
      counted: chance.happens(0.3),
      readAs: `${value.toFixed(3)} in`,
      ...(atLobeLift === undefined ? {} : { atLobeLift }),
      ...known<PassEvidence>({
        zeroReturn: maybe(chance, 0.4, () =>
          thou(chance.happens(careful ? 0.01 : 0.1) ? 0.005 : chance.normal(0.0006)),
        ),
      }),
    };
  });
}

/** Everything that was read in one set-up. */
export function readingsOf(chance: Chance, setUp: SetUpEvidence, engine: TrueEngine): PassEvidence[] {
  const lobe = engine.lobe[sideOfValve(setUp.valve)];
  const flex = setUp.spring === 'light' ? 0.0005 : chance.between(0.005, 0.03);
  const lash = setUp.lash === 'zero' ? 0 : chance.between(0, 0.024);
  const full = lobe * engine.ratio - flex - lash;
  const at = (station: number): Kind => ({
    kind: 'valve-lift-at',
    lift: Math.max(0.01, station * engine.ratio - flex * 0.6 - lash),
    atLobeLift: thou(station),
  });
  const many = chance.happens(0.03) ? 15 : 0;
  const kinds: readonly (readonly [Kind, number])[] = [
    [
      { kind: 'valve-lift', lift: full },
      chance.pick(engine.careful ? [1, 2, 3, 3] : [0, 1, 2, 3, 3, 3]) + many,
    ],
    [
      { kind: 'lobe-lift', lift: setUp.lobeSource === 'caliper' ? lobe * 0.96 : lobe },
      setUp.lobeSource === 'card' ? 0 : chance.pick(engine.careful ? [1, 3, 3] : [0, 1, 3, 3]) + many,
    ],
    [at(0.1), chance.happens(0.15) ? 1 : 0],
    [at(0.2), chance.happens(0.2) ? 1 : 0],
    [{ kind: 'stated-valve-lift', lift: full + chance.between(-0.02, 0.02) }, chance.happens(0.1) ? 1 : 0],
    [{ kind: 'stated-lobe-lift', lift: lobe }, chance.happens(0.05) ? 1 : 0],
  ];
  return kinds.flatMap(([kind, count]) => passesOf(chance, setUp, kind, count, engine.careful));
}
