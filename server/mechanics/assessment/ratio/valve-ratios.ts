import { defined } from '../../../../shared/defined.ts';
import type { ValveRatio, WithheldRatio } from '../change/input.ts';
import type { Spring } from '../evidence.ts';
import { LASH_KNOWN_IN } from './conditions.ts';
import type { GroupExplained } from './explain.ts';
import type { SetUpKnown } from './known.ts';
import { lacksOfGroup, restingOn } from './lacking.ts';
import { isDoubted } from './word.ts';

function ofSetUp({ read, result, lacks }: SetUpKnown): ValveRatio[] {
  const { setUp, lobe, valve } = read;
  if (result === undefined || lobe.value === undefined || setUp.spring === 'not-said') return [];
  const putBack = setUp.lash === 'set';
  return [
    {
      cylinder: setUp.cylinder,
      valve: setUp.valve,
      setUpId: setUp.id,
      ...defined({ armId: setUp.armId }),
      value: result.ratio,
      low: result.interval95[0],
      high: result.interval95[1],
      spring: setUp.spring,
      basis: putBack ? 'calculated' : 'measured',
      lashIn: putBack ? 'put-back' : 'none',
      lobeLift: lobe.value,
      lacks,
      restsOn: [...valve.used, ...lobe.passes.used].map(({ id }) => id).sort(),
    },
  ];
}

/** Nothing is lacking but that the lash was in it, and how much is known: it is put back, and no word stands on it. */
const isGround = ({ lacks, read: { setUp } }: SetUpKnown): boolean =>
  lacks.length === 0 || (setUp.lashSetting !== undefined && lacks.every((lack) => lack === LASH_KNOWN_IN));

/** The newest on this spring that may be calculated with. */
const believedOn = (spring: Spring, known: readonly SetUpKnown[]): SetUpKnown | undefined =>
  known.findLast((each) => each.read.setUp.spring === spring && isGround(each));

function believedLight(explained: GroupExplained): SetUpKnown | undefined {
  const light = restingOn(explained);
  return light !== undefined && isGround(light) ? light : undefined;
}

/**
 * Ratios that may be calculated with: of each arm on a valve the one that is told of it, and one on the running spring.
 * One whose word is withheld (lash left in, a plunger that leans, passes apart), or that is doubted, is no ground for a
 * figure.
 */
export const valveRatios = (explained: readonly GroupExplained[]): ValveRatio[] =>
  explained.flatMap((each) => {
    if (isDoubted(each)) return [];
    const light = believedLight(each);
    const running = believedOn('running', each.known);
    return [light, running].flatMap((known) => (known === undefined ? [] : ofSetUp(known)));
  });

const DOUBTED = 'why the lift is so far off what the arm is stamped or sold as';

/** What must be known before the ratio that was read on a valve may be calculated with, where one was read. */
export function ratiosWithheld(explained: readonly GroupExplained[]): WithheldRatio[] {
  return explained.flatMap((each) => {
    if (each.given === undefined || valveRatios([each]).length > 0) return [];
    const { cylinder, valve, armId } = each.group;
    const lacks = lacksOfGroup(each);
    return [{ cylinder, valve, ...defined({ armId }), lacks: lacks.length > 0 ? lacks : [DOUBTED] }];
  });
}
