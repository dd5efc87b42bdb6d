import {
  ALIGNMENTS,
  LASH_STATES,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
} from '../../../shared/schemas/words.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import { valveName } from '../../call/context.ts';
import type { ShownSetUp } from '../../call/shown-set-up.ts';

const LIMIT_SOURCE = 'as entered; the default is common practice, no published source';

/** A state as it is known now; where an answer has changed it, how it was entered. */
function stateFact<Word extends string>(
  label: string,
  words: Readonly<Record<Word, string>>,
  entered: Word,
  now: Word,
): Fact {
  const value = words[now];
  return entered === now ? { label, value } : { label, value, note: `entered as: ${words[entered]}` };
}

function armFact({ detail: { armName, armTaken } }: ShownSetUp): Fact {
  if (armName === undefined) return { label: 'Arm', value: 'not on record' };
  return {
    label: 'Arm',
    value: armName,
    ...(armTaken ? { note: 'not named for this set-up; no other was named on this valve' } : {}),
  };
}

/** How the readings of a set-up are taken. */
export function methodFacts(found: ShownSetUp): Fact[] {
  const { method } = found.setUp;
  const now = found.detail.setUp;
  const lash = stateFact('Lash', LASH_STATES, method.lash, now.lash);
  const setting = method.lashSetting?.readAs;
  return [
    armFact(found),
    stateFact('Spring', SPRINGS, method.spring, now.spring),
    stateFact('Lifter', LIFTERS, method.lifter, now.lifter),
    setting === undefined
      ? lash
      : { ...lash, note: [setting, lash.note].filter((each) => each !== undefined).join(', ') },
    { label: 'Tip rests on', value: RESTS_ON[method.restsOn] },
    stateFact('Plunger', ALIGNMENTS, method.alignment, now.alignment),
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
  ];
}

/** A set-up as the title block of its readings. */
export const setUpFacts = (found: ShownSetUp): Fact[] => [
  { label: 'Set-up', value: `${found.setUp.number}` },
  { label: 'Valve', value: valveName(found.setUp) },
  ...methodFacts(found),
  { label: 'Build revision', value: String(found.setUp.revision) },
];
