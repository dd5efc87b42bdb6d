import {
  ALIGNMENTS,
  LASH_STATES,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
} from '../../../shared/schemas/words.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';

const LIMIT_SOURCE = 'as entered; the default is common practice, no published source';

/** A set-up as the title block of its readings. */
export function setUpFacts(context: CallContext, setUp: SetUp): Fact[] {
  const { method } = setUp;
  const arm = context.arms.find((each) => each.id === setUp.armId);
  return [
    { label: 'Set-up', value: `${setUp.number}` },
    { label: 'Valve', value: valveName(setUp) },
    { label: 'Arm', value: arm?.name ?? 'not on record' },
    { label: 'Spring', value: SPRINGS[method.spring] },
    { label: 'Lifter', value: LIFTERS[method.lifter] },
    {
      label: 'Lash',
      value: LASH_STATES[method.lash],
      ...(method.lashSetting === undefined ? {} : { note: method.lashSetting.readAs }),
    },
    { label: 'Tip rests on', value: RESTS_ON[method.restsOn] },
    { label: 'Plunger', value: ALIGNMENTS[method.alignment] },
    {
      label: 'Dial',
      value: `${method.graduation.readAs} a division, ${method.perTurn.readAs} a turn`,
    },
    {
      label: 'Travel, pushed in',
      value: `${method.travel?.readAs ?? 'not said'}, ${method.pushedIn?.readAs ?? 'not said'}`,
    },
    { label: 'Error limit, reading', value: `± ${method.errorLimit.readAs}`, note: LIMIT_SOURCE },
    {
      label: 'Lobe lift from',
      value: LOBE_SOURCES[method.lobeSource],
      note: `± ${method.lobeErrorLimit.readAs}`,
    },
    { label: 'Build revision', value: String(setUp.revision) },
  ];
}
