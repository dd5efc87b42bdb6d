import type { PushrodTaken } from '../../../../shared/schemas/words.ts';
import { toolWithin } from '../../identify/tools.ts';
import { saidLength } from '../../kit/said.ts';
import { IN } from '../../kit/si.ts';
import { EFFECTIVE_SHORTER } from '../../setting/setting-table.ts';
import type { AssessedQuantity, Headline } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import { bareInches, inches } from '../common/said.ts';
import type { Evidence, Side } from '../evidence.ts';

type Pushrods = NonNullable<Evidence['pushrods']>;

const TOOLS = ['caliper', 'micrometer', 'rule', 'guess'] as const;
type Tool = (typeof TOOLS)[number];
const toolOf = (taken: PushrodTaken | undefined): Tool | undefined => TOOLS.find((tool) => tool === taken);

const BY: Readonly<Record<PushrodTaken, string>> = {
  caliper: 'by caliper',
  micrometer: 'by micrometer',
  rule: 'by a rule',
  guess: 'guessed',
  stamped: 'by its stamp',
  told: 'as it was told',
};
const OVER = { ends: 'over its ends', gauge: 'to a gauge' } as const;

/** What has to be known before it is ordered by. */
function lacksOf({ over, taken }: Pushrods): string[] {
  return [
    ...(over === undefined
      ? [
          `whether it is over the ends or to a gauge: the two are about ${saidLength(EFFECTIVE_SHORTER.by)} apart`,
        ]
      : []),
    ...(taken === undefined ? ['how it was taken'] : []),
    ...(taken === 'stamped' || taken === 'told' || taken === 'guess'
      ? ['a reading with a caliper: nobody has measured it']
      : []),
  ];
}

function quantityOf(side: Side, value: number, pushrods: Pushrods): AssessedQuantity {
  const { over, taken } = pushrods;
  const tool = toolOf(taken);
  const half = tool === undefined ? undefined : toolWithin('pushrod-length', tool) * IN;
  return {
    id: `pushrod-length:${side}`,
    name: 'Pushrod length',
    about: { of: 'side', valve: side },
    dimension: 'length',
    value,
    ...(half === undefined ? {} : { low: value - half, high: value + half }),
    basis: tool === undefined || tool === 'guess' ? 'stated' : 'measured',
    conditions: [...(over === undefined ? [] : [OVER[over]]), ...(taken === undefined ? [] : [BY[taken]])],
    lacks: lacksOf(pushrods),
    restsOn: [],
  };
}

function headlineOf(
  { about, id, value = 0, high, conditions, lacks }: AssessedQuantity,
  side: Side,
): Headline {
  const within = high === undefined ? '' : ` ± ${bareInches(high - value)}`;
  const how = conditions.length === 0 ? '' : `, ${conditions.join(', ')}`;
  const [first] = lacks;
  return {
    id: `headline:pushrod-length:${side}`,
    about,
    step: 'build',
    sentence: `The ${side} pushrod is ${inches(value)}${within}${how}.${first === undefined ? '' : ` Before one is ordered by it: ${first}.`}`,
    quantityId: id,
  };
}

/**
 * Pushrods as they were measured or told, each with how.
 *
 * Source: half-widths of tools in seeds/part-tools.json; that the two ways of telling a length are apart by a cam
 * maker’s questions and answers.
 */
export function pushrodsPart({ engine, pushrods = {} }: Evidence): PartSaid<undefined> {
  const hasThem = (engine.gear ?? 'pushrod') === 'pushrod';
  const found = (['intake', 'exhaust'] as const).flatMap((side) => {
    const value = pushrods[side];
    return value === undefined || !hasThem ? [] : [{ side, quantity: quantityOf(side, value, pushrods) }];
  });
  return {
    quantities: found.map(({ quantity }) => quantity),
    judgements: [],
    questions: [],
    stop: [],
    headlines: found.map(({ side, quantity }) => headlineOf(quantity, side)),
    detail: undefined,
  };
}
