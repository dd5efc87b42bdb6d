import { allowance } from '../../../kit/allowances.ts';
import type { LobeSource } from '../../../kit/lift-tools.ts';
import type { AssessedQuantity, Basis } from '../../assessment.ts';
import { RATIO_NAMES } from '../../common/said.ts';
import { conditionsSaid } from '../asked/conditions-said.ts';
import type { SetUpKnown } from '../compared/known.ts';
import { halfWidthOf } from '../read/intervals.ts';
import type { RatioLack } from '../read/lack.ts';
import { lackSaid } from '../read/lack-said.ts';
import { setUpSubject } from '../read/set-ups.ts';

/** How far a lash may be from its setting: locking it alone shifts about .001 in, the feeler as much. */
const lashWithin = (): number => allowance('repeat');

export const ratioQuantityId = ({ read: { setUp } }: SetUpKnown): string => `set-up-ratio:${setUp.id}`;

function ratioOf(known: SetUpKnown): AssessedQuantity {
  const { read, result, lacks } = known;
  const { setUp } = read;
  const calculated = setUp.lash === 'set' && setUp.lashSetting !== undefined;
  const used = [...read.valve.used, ...read.lobe.passes.used].map(({ id }) => id);
  return {
    id: ratioQuantityId(known),
    name: RATIO_NAMES[setUp.spring],
    about: setUpSubject(setUp),
    dimension: 'ratio',
    ...(result === undefined
      ? {}
      : { value: result.ratio, low: result.interval95[0], high: result.interval95[1] }),
    basis: calculated ? 'calculated' : 'measured',
    conditions: conditionsSaid(setUp),
    lacks: lacks.map(lackSaid),
    restsOn: used.sort(),
  };
}

function lengthOf(
  known: SetUpKnown,
  code: string,
  name: string,
  given: {
    value: number;
    half: number;
    basis: Basis;
    restsOn: readonly string[];
    conditions: readonly string[];
  },
  lacks: readonly RatioLack[],
): AssessedQuantity {
  const { value, half, basis, restsOn, conditions } = given;
  return {
    id: `${code}:${known.read.setUp.id}`,
    name,
    about: setUpSubject(known.read.setUp),
    dimension: 'length',
    value,
    low: value - half,
    high: value + half,
    basis,
    conditions,
    lacks: lacks.map(lackSaid),
    restsOn: [...restsOn].sort(),
  };
}

/** The lift as read, the gross lift and the net lift: each says what is in it, and the lash is counted once. */
function liftsOf(known: SetUpKnown): AssessedQuantity[] {
  const { lift, setUp, valve } = known.read;
  if (lift === undefined) return [];
  const restsOn = valve.used.map(({ id }) => id);
  const conditions = conditionsSaid(setUp);
  const read = halfWidthOf(valve.used, setUp);
  const withLash = halfWidthOf(valve.used, setUp, lashWithin());
  const make = (code: string, name: string, value: number, half: number, basis: Basis) =>
    lengthOf(known, code, name, { value, half, basis, restsOn, conditions }, valve.lacks);
  const { gross, net } = lift;
  return [
    make('valve-lift', 'Valve lift as read', lift.read, read, 'measured'),
    ...(gross === undefined
      ? []
      : [
          make(
            'gross-lift',
            'Gross lift',
            gross.value,
            gross.basis === 'measured' ? read : withLash,
            gross.basis,
          ),
        ]),
    ...(net === undefined
      ? []
      : [
          make('net-lift-read', 'Net lift', net.value, net.basis === 'measured' ? read : withLash, net.basis),
        ]),
  ];
}

const LOBE_SAID: Readonly<Record<LobeSource, string>> = {
  card: 'from the cam card',
  indicator: 'at the lifter',
  caliper: 'by caliper',
  'depth-bar': 'by depth bar at the lifter',
  feeler: 'by feeler stack at the lifter',
  rule: 'by rule at the lifter',
  guess: 'guessed',
};

function lobeOf(known: SetUpKnown): AssessedQuantity[] {
  const { lobe, setUp } = known.read;
  if (lobe.value === undefined) return [];
  const card = lobe.source === 'card';
  const half = card
    ? setUp.lobeErrorLimit
    : halfWidthOf(lobe.passes.used, { graduation: setUp.graduation, errorLimit: setUp.lobeErrorLimit });
  const how = LOBE_SAID[lobe.source];
  const basis: Basis = card ? 'stated' : 'measured';
  const given = { value: lobe.value, half, basis, restsOn: lobe.entryIds, conditions: [how] };
  return [lengthOf(known, 'lobe-lift', 'Lobe lift', given, lobe.lacks)];
}

/** Everything that was read in a set-up, under its own name. */
export const setUpQuantities = (known: SetUpKnown): AssessedQuantity[] => [
  ratioOf(known),
  ...liftsOf(known),
  ...lobeOf(known),
];
