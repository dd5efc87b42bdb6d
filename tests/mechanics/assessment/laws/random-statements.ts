import type {
  ArmEvidence,
  SetUpEvidence,
  SetUpFact,
  SetUpStatementEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { lobeWithin } from '../../../../server/mechanics/kit/lift-tools.ts';
import type { Chance } from '../../explain-readings/random.ts';
import { known, thou } from './random-engine.ts';

type Facts = Pick<SetUpEvidence, SetUpFact>;

/** Where the lobe lift comes from, with the limit that comes along where none is entered. */
const lobeFrom = (lobeSource: Facts['lobeSource']): Partial<Facts> => ({
  lobeSource,
  lobeErrorLimit: lobeWithin(lobeSource),
});

/** What is learnt of a set-up late, or was said wrongly at first. */
function oneFact(chance: Chance, arms: readonly ArmEvidence[]): Partial<Facts> {
  const says: readonly (() => Partial<Facts>)[] = [
    () => ({ spring: chance.pick(['light', 'light', 'running', 'not-said'] as const) }),
    () => ({ lifter: chance.pick(['solid', 'locked', 'hydraulic', 'not-said'] as const) }),
    () => ({ lash: chance.pick(['zero', 'not-said'] as const) }),
    () => ({ lash: 'set' }),
    () => ({ lash: 'set', lashSetting: thou(chance.between(0.008, 0.026)) }),
    () => ({ alignment: chance.pick(['parallel', 'leaning', 'not-said'] as const) }),
    () => ({ restsOn: chance.pick(['retainer-flat', 'valve-tip', 'not-said'] as const) }),
    () => ({ perTurn: thou(chance.pick([0.1, 0.05, 0.2])) }),
    () => ({ errorLimit: thou(chance.pick([0.001, 0.004])) }),
    () => ({ travel: thou(1), pushedIn: thou(chance.between(0.3, 0.9)) }),
    () => lobeFrom(chance.pick(['card', 'indicator', 'caliper'] as const)),
    () => ({ cylinder: chance.pick([1, 2]), valve: chance.pick(['intake', 'exhaust'] as const) }),
    () => known<Facts>({ armId: arms.length === 0 ? undefined : chance.pick(arms).id }),
  ];
  return chance.pick(says)();
}

/** Of some set-ups more is said later, now and then twice about one fact; lines among the answers, in any order. */
export function statementsOf(
  chance: Chance,
  setUps: readonly SetUpEvidence[],
  arms: readonly ArmEvidence[],
): SetUpStatementEvidence[] {
  return setUps.flatMap(({ id }) => {
    if (chance.happens(0.6)) return [];
    return Array.from({ length: chance.pick([1, 1, 2, 4]) }, (_, index) => ({
      id: `${id}-statement-${index + 1}`,
      line: chance.between(0, 8),
      setUpId: id,
      says: oneFact(chance, arms),
      notKnown: chance.happens(0.1)
        ? [chance.pick(['armId', 'lashSetting', 'travel', 'pushedIn'] as const)]
        : [],
    }));
  });
}
